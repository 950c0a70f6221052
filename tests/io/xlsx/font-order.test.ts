import { expect, test } from 'vitest';
import { appendStyles } from '../../../src/io/xlsx/append-styles.js';
import { orderedFont, withOrderedFonts } from '../../../src/io/xlsx/font-order.js';
import { newWorkbookPackage } from '../../../src/io/xlsx/new-package.js';
import { modelOf } from '../../engine/book-of.js';
import { MAIN, partText } from './hand-made.js';

/** As ExcelJS writes it. */
const MIXED =
  '<font><b/><color theme="1"/><family val="2"/><scheme val="minor"/><sz val="11"/><name val="Calibri"/></font>';
const ORDERED =
  '<font><b/><sz val="11"/><color theme="1"/><name val="Calibri"/><family val="2"/><scheme val="minor"/></font>';

test.each([
  ['a mixed font', MIXED, ORDERED],
  ['an ordered one', ORDERED, ORDERED],
  [
    'with spaces and a prefix',
    '<x:font ><x:name val="A"/> <x:sz val="9"/></x:font>',
    '<x:font ><x:sz val="9"/><x:name val="A"/></x:font>',
  ],
  ['with what is not known', '<font><new/><u/><i/></font>', '<font><i/><u/><new/></font>'],
  ['an empty one', '<font/>', '<font/>'],
])('orders %s', (_, font, ordered) => {
  expect(orderedFont(font)).toBe(ordered);
});

test('orders all fonts of a part and leaves the rest', () => {
  const part = (font: string) => `<styleSheet><fonts count="2">${font}<font/></fonts><fills/></styleSheet>`;
  expect(withOrderedFonts(part(MIXED))).toBe(part(ORDERED));
});

test('a new workbook has ordered fonts', async () => {
  const bytes = await newWorkbookPackage(modelOf({ Journals: [['Part'], ['J1']] }));
  const styles = await partText(bytes, 'xl/styles.xml');
  expect(styles).toContain('<fonts');
  expect(withOrderedFonts(styles)).toBe(styles);
});

test('a bold font made of a mixed one is ordered, and found again however it is ordered', () => {
  const part = (...fonts: string[]) =>
    `<styleSheet xmlns="${MAIN}"><fonts count="${fonts.length}">${fonts.join('')}</fonts></styleSheet>`;
  const plain = MIXED.replace('<b/>', '');
  const { xml } = appendStyles(part(plain), new Set(['header']));
  expect(xml).toContain(ORDERED);
  const { xml: again } = appendStyles(part(plain, MIXED), new Set(['header']));
  expect(again).not.toContain(ORDERED);
});
