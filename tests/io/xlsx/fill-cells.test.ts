/** Filling cells: values in, look and protection kept, all else byte for byte. */
import JSZip from 'jszip';
import { expect, test } from 'vitest';
import { blankBook } from '../../../src/engine/blank/blank-book.js';
import { describeEngine } from '../../../src/engine/blank/describe-engine.js';
import { standardTexts } from '../../../src/engine/blank/description-items.js';
import { blankPackage } from '../../../src/io/xlsx/blank-package.js';
import { fillCells } from '../../../src/io/xlsx/fill-cells.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';

const JOURNALS = 'xl/worksheets/sheet5.xml';

const blank = () =>
  blankPackage(blankBook(describeEngine({ ...standardTexts(), cylinders: '1', mains: 'none' })));
const partsOf = async (bytes: Uint8Array) => (await JSZip.loadAsync(bytes)).files;
const textOf = async (bytes: Uint8Array, part: string) => (await partsOf(bytes))[part]!.async('string');
const styleOf = (xml: string, address: string) => new RegExp(`<c r="${address}" s="(\\d+)"`).exec(xml)?.[1];

test('values go in, styles stay, no other part changes', async () => {
  const bytes = await blank();
  const { bytes: filled, refused } = await fillCells(
    bytes,
    [
      { sheet: 'Journals', row: 1, column: 8, value: 42.003 },
      { sheet: 'Journals', row: 1, column: 9, value: '1.6536 in' },
      { sheet: 'journals', row: 1, column: 13, value: '=1+1' },
    ],
    'engine.xlsx',
  );
  expect(refused).toEqual([]);
  const cells = (await readWorkbookPackage(filled, 'engine.xlsx')).sheets.find(
    ({ name }) => name === 'Journals',
  )!;
  expect(cells.rows[1]![8]).toEqual({ content: { kind: 'number', value: 42.003 } });
  expect(cells.rows[1]![9]).toEqual({ content: { kind: 'text', value: '1.6536 in' } });
  expect(cells.rows[1]![13]).toEqual({ content: { kind: 'text', value: '=1+1' } });
  const [before, after] = [await textOf(bytes, JOURNALS), await textOf(filled, JOURNALS)];
  for (const address of ['I2', 'J2', 'N2']) {
    expect(styleOf(before, address)).toBeDefined();
    expect(styleOf(after, address)).toBe(styleOf(before, address));
  }
  expect(after.slice(after.indexOf('</sheetData>'))).toBe(before.slice(before.indexOf('</sheetData>')));
  for (const part of Object.keys(await partsOf(bytes))) {
    if (part !== JOURNALS) expect(await textOf(filled, part), part).toBe(await textOf(bytes, part));
  }
});

test('a cell emptied again is as it was', async () => {
  const bytes = await blank();
  const place = { sheet: 'Journals', row: 1, column: 8 };
  const filled = await fillCells(bytes, [{ ...place, value: 42 }], 'engine.xlsx');
  const emptied = await fillCells(filled.bytes, [{ ...place, value: '' }], 'engine.xlsx');
  expect(await textOf(emptied.bytes, JOURNALS)).toBe(await textOf(bytes, JOURNALS));
});

test('a new column takes the look of another', async () => {
  const bytes = await blank();
  const filling = { sheet: 'Journals', row: 1, column: 20, value: 42, like: 8 };
  const { bytes: filled } = await fillCells(bytes, [filling], 'engine.xlsx');
  const xml = await textOf(filled, JOURNALS);
  expect(styleOf(xml, 'U2')).toBe(styleOf(xml, 'I2'));
});

test('a sheet that is not there is named', async () => {
  const { refused } = await fillCells(
    await blank(),
    [{ sheet: 'Valves', row: 1, column: 1, value: 1 }],
    'engine.xlsx',
  );
  expect(refused).toEqual([{ sheet: 'Valves', reason: 'the workbook has no worksheet of this name.' }]);
});
