import { expect, test } from 'vitest';
import { mergeStyles } from '../../../src/io/xlsx/merge-styles.js';

const SOURCE =
  '<styleSheet><numFmts count="1"><numFmt numFmtId="164" formatCode="0.00000"/></numFmts>' +
  '<fonts><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts>' +
  '<borders><border/><border><bottom style="thin"/></border></borders>' +
  '<cellXfs><xf numFmtId="0" fontId="0"/>' +
  '<xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>' +
  '<xf numFmtId="1" fontId="1" fillId="0" borderId="1" xfId="0"><alignment wrapText="1"/></xf></cellXfs></styleSheet>';

const MM = (id: number) =>
  `<xf numFmtId="${id}" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>`;
const HEADER = (font: number, border: number) =>
  `<xf numFmtId="1" fontId="${font}" fillId="0" borderId="${border}" xfId="0"><alignment wrapText="1"/></xf>`;

test.each([
  [
    'what is missing goes to the end, bold in the default font',
    '<styleSheet><fonts count="1" x:k="1"><font><name val="Arial"/></font></fonts><borders count="1"><border/></borders> <cellXfs count="2"><xf/><xf/></cellXfs><dxfs/></styleSheet>',
    `<styleSheet><numFmts count="1"><numFmt numFmtId="164" formatCode="0.00000"/></numFmts><fonts count="2" x:k="1"><font><name val="Arial"/></font><font><b/><name val="Arial"/></font></fonts><borders count="2"><border/><border><bottom style="thin"/></border></borders> <cellXfs count="4"><xf/><xf/>${MM(164)}${HEADER(1, 1)}</cellXfs><dxfs/></styleSheet>`,
    [2, 3],
  ],
  [
    'what is there in other spelling is used',
    `<styleSheet><numFmts><numFmt formatCode='0.00000' numFmtId='199'/></numFmts><fonts><font><name val="Arial"/></font><font/><font> <b></b><name  val='Arial'/></font></fonts><borders><border/><border>\n<bottom style="thin"/></border></borders><cellXfs><xf/><xf xfId='0' fillId="0" borderId="1" fontId="2" numFmtId="1"><alignment wrapText="1"></alignment></xf>${MM(199)}</cellXfs></styleSheet>`,
    undefined,
    [2, 1],
  ],
  [
    'number formats get ids that are free; an empty list is opened; prefixes are those of the part',
    '<s:styleSheet xmlns:s="m"><s:numFmts count="1"><s:numFmt numFmtId="300" formatCode="0"/></s:numFmts><s:fonts><s:font/></s:fonts><s:borders/><s:cellXfs count="0"/></s:styleSheet>',
    `<s:styleSheet xmlns:s="m"><s:numFmts count="2"><s:numFmt numFmtId="300" formatCode="0"/><s:numFmt numFmtId="301" formatCode="0.00000"/></s:numFmts><s:fonts count="2"><s:font/><s:font><s:b/></s:font></s:fonts><s:borders count="1"><s:border><s:bottom style="thin"/></s:border></s:borders><s:cellXfs count="2">${MM(301)}${HEADER(1, 0)}</s:cellXfs></s:styleSheet>`.replace(
      /<(\/?)(xf|alignment)/g,
      '<$1s:$2',
    ),
    [0, 1],
  ],
])('%s', (_, user, expected, indices) => {
  const { xml, indexOf } = mergeStyles(user, SOURCE, [1, 2]);
  expect(xml).toBe(expected ?? user);
  expect([indexOf.get(1), indexOf.get(2)]).toEqual(indices);
  expect(mergeStyles(xml, SOURCE, [2, 1])).toEqual({ xml, indexOf });
});

test("the plain format is the user's own", () => {
  const user = '<styleSheet><cellXfs><xf/></cellXfs></styleSheet>';
  expect(mergeStyles(user, SOURCE, [0])).toEqual({ xml: user, indexOf: new Map([[0, 0]]) });
});
