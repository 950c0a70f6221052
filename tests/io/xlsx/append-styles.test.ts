import { expect, test } from 'vitest';
import { appendStyles } from '../../../src/io/xlsx/append-styles.js';

const LINE_BELOW = '<border><left/><right/><top/><bottom style="thin"/><diagonal/></border>';
const MM = (id: number) =>
  `<xf numFmtId="${id}" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyAlignment="1"><alignment horizontal="right" indent="1"/></xf>`;
const HEADER = (font: number, border: number) =>
  `<xf numFmtId="0" fontId="${font}" fillId="0" borderId="${border}" xfId="0" applyFont="1" applyBorder="1" applyAlignment="1"><alignment wrapText="1"/></xf>`;

test.each([
  [
    'what is missing goes to the end, bold in the default font',
    '<styleSheet><fonts count="1" x:k="1"><font><name val="Arial"/></font></fonts><borders count="1"><border/></borders> <cellXfs count="2"><xf/><xf/></cellXfs><dxfs/></styleSheet>',
    `<styleSheet><numFmts count="1"><numFmt numFmtId="164" formatCode="0.00000"/></numFmts><fonts count="2" x:k="1"><font><name val="Arial"/></font><font><b/><name val="Arial"/></font></fonts><borders count="2"><border/>${LINE_BELOW}</borders> <cellXfs count="4"><xf/><xf/>${HEADER(1, 1)}${MM(164)}</cellXfs><dxfs/></styleSheet>`,
    [3, 2],
  ],
  [
    'what is there in other spelling is used',
    `<styleSheet><numFmts><numFmt formatCode='0.00000' numFmtId='199'/></numFmts><fonts><font><name val="Arial"/></font><font/><font> <b></b><name  val='Arial'/></font></fonts><borders><border/><border>\n<left/><right></right><top/><bottom style='thin'/> <diagonal/></border></borders><cellXfs><xf/><xf xfId='0' applyFont="1" fillId="0" borderId="1" fontId="2" numFmtId="0" applyAlignment="1" applyBorder="1"><alignment wrapText="1"></alignment></xf>${MM(199)}</cellXfs></styleSheet>`,
    undefined,
    [2, 1],
  ],
  [
    'number formats get ids that are free; an empty list is opened; prefixes are those of the part',
    '<s:styleSheet xmlns:s="m"><s:numFmts count="1"><s:numFmt numFmtId="300" formatCode="0"/></s:numFmts><s:fonts><s:font/></s:fonts><s:borders/><s:cellXfs count="0"/></s:styleSheet>',
    `<s:styleSheet xmlns:s="m"><s:numFmts count="2"><s:numFmt numFmtId="300" formatCode="0"/><s:numFmt numFmtId="301" formatCode="0.00000"/></s:numFmts><s:fonts count="2"><s:font/><s:font><s:b/></s:font></s:fonts><s:borders count="1">${LINE_BELOW}</s:borders><s:cellXfs count="2">${HEADER(1, 0)}${MM(301)}</s:cellXfs></s:styleSheet>`.replace(
      /<(\/?)(xf|alignment|border|left|right|top|bottom|diagonal)(?=[ />])/g,
      '<$1s:$2',
    ),
    [1, 0],
  ],
])('%s', (_, user, expected, indices) => {
  const { xml, indexOf } = appendStyles(user, new Set(['mm', 'header']));
  expect(xml).toBe(expected ?? user);
  expect([indexOf.get('mm'), indexOf.get('header')]).toEqual(indices);
  expect(appendStyles(xml, new Set(['header', 'mm']))).toEqual({ xml, indexOf });
});

test("the plain format is the user's own", () => {
  const user = '<styleSheet><cellXfs><xf/></cellXfs></styleSheet>';
  expect(appendStyles(user, new Set(['plain']))).toEqual({ xml: user, indexOf: new Map([['plain', 0]]) });
});

test('a count has a number format that every workbook has', () => {
  const user = '<styleSheet><cellXfs><xf/></cellXfs></styleSheet>';
  const { xml } = appendStyles(user, new Set(['whole']));
  // ISO 29500-1, 18.8.30: the code 0 has the number 1.
  expect(xml).toContain('<xf numFmtId="1" ');
  expect(xml).not.toContain('numFmts');
});
