import ExcelJS from 'exceljs';
import { describe, expect, test } from 'vitest';
import { UserError } from '../../../src/engine/user-error.js';
import type { WorkbookEdit } from '../../../src/engine/workbook-model.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../../../src/io/xlsx/write-package.js';
import { handMadePackage, MAIN, unzip } from './hand-made.js';
import { FIRST, NOTHING, outputSheet, statusEdit } from './sample-edits.js';
import { SAMPLES } from './sample-packages.js';

/** Values, formulas and styles of all cells, as the other library reads them. */
async function excelJsCells(bytes: Uint8Array) {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(Buffer.from(bytes) as unknown as Parameters<typeof workbook.xlsx.load>[0]);
  const found: Record<string, unknown> = {};
  for (const sheet of workbook.worksheets) {
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        found[`${sheet.name}!${cell.address}`] = {
          value: cell.value,
          result: cell.result,
          style: cell.style,
        };
      });
    });
  }
  return found;
}

describe.each(SAMPLES)('a workbook with $name', (sample) => {
  const edit: WorkbookEdit = {
    edits: [statusEdit(sample.sheet)],
    sheets: [outputSheet('Summary'), outputSheet("Rod's list", { headerRows: 0, landscape: false })],
    remove: ['Pick list'],
  };

  test('every part that is not written stays byte for byte, in its place', async () => {
    const input = await sample.make();
    const { bytes, refused } = await editWorkbookPackage(input, edit);
    expect(refused).toEqual([]);
    const before = await unzip(input);
    const after = await unzip(bytes);
    expect([...after.keys()].slice(0, before.size)).toEqual([...before.keys()]);
    const changed = [...before.keys()].filter((part) => !before.get(part)!.equals(after.get(part)!));
    const hasStyles = before.has('xl/styles.xml');
    expect(changed.sort()).toEqual(
      [
        '[Content_Types].xml',
        'xl/_rels/workbook.xml.rels',
        'xl/workbook.xml',
        sample.part,
        ...(hasStyles ? ['xl/styles.xml'] : []),
      ].sort(),
    );
    expect([...after.keys()].slice(before.size).length).toBe(hasStyles ? 2 : 3);
  });

  test("the user's cells keep value, formula and style, and ours are there", async () => {
    const input = await sample.make();
    const { bytes } = await editWorkbookPackage(input, edit);
    const before = await readWorkbookPackage(input, 'book');
    const after = await readWorkbookPackage(bytes, 'book');
    expect(after.sheets.map((s) => s.name)).toEqual([
      ...before.sheets.map((s) => s.name),
      'Summary',
      "Rod's list",
    ]);
    let compared = 0;
    before.sheets.forEach((sheet, s) => {
      sheet.rows.forEach((row, r) => {
        row.forEach((cell, c) => {
          expect(after.sheets[s]!.rows[r]![c]).toEqual(cell);
          compared++;
        });
      });
    });
    expect(compared).toBeGreaterThan(2);
    const written = after.sheets[0]!.rows;
    expect(written[0]![FIRST]).toEqual({ content: { kind: 'text', value: 'Size' } });
    expect(written[1]![FIRST]).toEqual({
      content: { kind: 'number', value: 42.003 },
      formula: 'ROUND(B2,5)',
    });
    expect(written[1]![FIRST + 2]).toEqual({ content: { kind: 'text', value: '=not a formula' } });
    expect(written[6]![FIRST + 1]).toEqual({ content: { kind: 'text', value: 'not measured' } });
    expect(after.sheets.at(-2)!.rows[2]).toEqual([
      { content: { kind: 'text', value: '-1 & <2>' } },
      { content: { kind: 'number', value: 0.25 } },
      { content: { kind: 'number', value: 0.04125 }, formula: 'ROUND(0.041251,5)' },
      { content: { kind: 'text', value: '' }, formula: 'IF(1=1,"","x")' },
      { content: { kind: 'number', value: 3 } },
      { content: { kind: 'boolean', value: false }, formula: '1=2' },
    ]);
  });

  test.runIf(sample.isReadByExcelJs)('another library finds the same', async () => {
    const input = await sample.make();
    const { bytes } = await editWorkbookPackage(input, edit);
    const before = await excelJsCells(input);
    const after = await excelJsCells(bytes);
    expect(Object.keys(before).length).toBeGreaterThan(2);
    expect(after).toMatchObject(before);
    const size = after['Journals!E2'] as { value: { formula: string }; style: ExcelJS.Style };
    expect(size.value.formula).toBe('ROUND(B2,5)');
    expect(size.style.numFmt).toBe('0.00000');
    const header = after['Summary!A2'] as { style: ExcelJS.Style };
    expect(header.style.font?.bold).toBe(true);
    expect(header.style.border?.bottom?.style).toBe('thin');
    expect(header.style.fill ?? { pattern: 'none' }).toMatchObject({ pattern: 'none' });
  });

  test('the same edit again changes no byte', async () => {
    const once = await editWorkbookPackage(await sample.make(), edit);
    const twice = await editWorkbookPackage(once.bytes, edit);
    expect(await unzip(twice.bytes)).toEqual(await unzip(once.bytes));
    expect(Buffer.compare(twice.bytes, once.bytes)).toBe(0);
  });

  test('an edit of nothing changes no part', async () => {
    const input = await sample.make();
    const { bytes } = await editWorkbookPackage(input, NOTHING);
    expect(await unzip(bytes)).toEqual(await unzip(input));
  });
});

test('one edit gives one file, whenever it is made', async () => {
  const input = await SAMPLES[0]!.make();
  const edit = { ...NOTHING, sheets: [outputSheet('Summary')] };
  const one = await editWorkbookPackage(input, edit);
  await new Promise((resolve) => setTimeout(resolve, 2100));
  const two = await editWorkbookPackage(input, edit);
  expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
});

test('a part in UTF-16 stays in UTF-16', async () => {
  const xml = `<?xml version="1.0" encoding="UTF-16"?><worksheet xmlns="${MAIN}"><sheetData/></worksheet>`;
  const input = await handMadePackage({
    sheets: [{ name: 'A', xml: '' }],
    parts: { 'xl/worksheets/sheet1.xml': Buffer.from(`\ufeff${xml}`, 'utf16le') },
  });
  const { bytes } = await editWorkbookPackage(input, { ...NOTHING, edits: [statusEdit('A')] });
  const part = (await unzip(bytes)).get('xl/worksheets/sheet1.xml')!;
  expect(part.subarray(0, 2)).toEqual(Buffer.from([0xff, 0xfe]));
  expect((await readWorkbookPackage(bytes, 'book')).sheets[0]!.rows[0]![FIRST]).toEqual({
    content: { kind: 'text', value: 'Size' },
  });
});

test.each([
  ['no zip', async () => Buffer.from('Part;A 0'), 'no zip file'],
  [
    'a damaged sheet',
    () => handMadePackage({ sheets: [{ name: 'A', xml: '<sheetData><row><c></row></sheetData>' }] }),
    'damaged',
  ],
])('%s is refused', async (_, make, message) => {
  const writing = editWorkbookPackage(await make(), { ...NOTHING, edits: [statusEdit('A')] }, 'mine.xlsx');
  await expect(writing).rejects.toThrow(UserError);
  await expect(writing).rejects.toThrow(message);
});

test('a book that could not be read again with the results in it is refused', async () => {
  const sheets = Array.from({ length: 1000 }, (_, i) => ({ name: `s${i}`, xml: '<sheetData/>' }));
  const input = await handMadePackage({ sheets });
  const edit = (name: string) =>
    editWorkbookPackage(input, { ...NOTHING, sheets: [outputSheet(name)] }, 'bench/book.xlsx');
  expect((await edit('s7')).refused).toEqual([]);
  const adding = edit('Summary');
  await expect(adding).rejects.toThrow(UserError);
  await expect(adding).rejects.toThrow(
    /^bench\/book\.xlsx: with the results in it, the book could not be read again, and nothing was written: found 1001 sheets; expected at most 1000\./,
  );
});
