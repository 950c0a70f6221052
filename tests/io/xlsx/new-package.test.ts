import ExcelJS from 'exceljs';
import { expect, test } from 'vitest';
import { UserError } from '../../../src/engine/user-error.js';
import type { Cell, WorkbookModel } from '../../../src/engine/workbook-model.js';
import { newWorkbookPackage } from '../../../src/io/xlsx/new-package.js';
import { readWorkbookPackage } from '../../../src/io/xlsx/read-package.js';

const text = (value: string): Cell => ({ content: { kind: 'text', value } });
const number = (value: number, formula?: string): Cell =>
  formula === undefined
    ? { content: { kind: 'number', value } }
    : { content: { kind: 'number', value }, formula };

const MODEL: WorkbookModel = {
  file: 'readings',
  sheets: [
    {
      name: 'Journals',
      rows: [
        [text('Part'), text('A 0'), text('A long header that has to be wrapped')],
        [text('007'), number(42.003), number(0, 'B2-B2')],
        [text('=1+1'), number(1e-7), { content: { kind: 'text', value: '' }, formula: '""' }],
        [text(' a\r\n_x0041_\u0001 '), undefined, { content: { kind: 'boolean', value: false } }],
        [],
        [
          { content: { kind: 'error', value: '#N/A' } },
          { content: { kind: 'date', value: 45000.5 } },
          { content: undefined, formula: 'B2*2' },
        ],
      ],
    },
    { name: 'Empty', rows: [] },
  ],
};

test('what is written is what is read', async () => {
  const model = await readWorkbookPackage(await newWorkbookPackage(MODEL), 'readings');
  expect(model.sheets.map((s) => s.name)).toEqual(['Journals', 'Empty']);
  MODEL.sheets[0]!.rows.forEach((row, r) => {
    row.forEach((cell, c) => {
      expect(model.sheets[0]!.rows[r]?.[c]).toEqual(cell);
    });
  });
});

test('the first row is bold and stays in view, the columns are wide enough', async () => {
  const workbook = new ExcelJS.Workbook();
  const bytes = Buffer.from(await newWorkbookPackage(MODEL));
  await workbook.xlsx.load(bytes as unknown as Parameters<typeof workbook.xlsx.load>[0]);
  const sheet = workbook.getWorksheet('Journals')!;
  expect(sheet.views[0]).toMatchObject({ state: 'frozen', ySplit: 1 });
  expect(sheet.getCell('B1').font.bold).toBe(true);
  expect(sheet.getCell('B2').font?.bold ?? false).toBe(false);
  expect([1, 2, 3].map((c) => sheet.getColumn(c).width)).toEqual([11, 9.01, 16]);
});

test('one model gives the same bytes at any time', async () => {
  const one = await newWorkbookPackage(MODEL);
  await new Promise((resolve) => setTimeout(resolve, 2100));
  expect(Buffer.compare(one, await newWorkbookPackage(MODEL))).toBe(0);
});

test.each([
  ['a name that is too long', ['a'.repeat(32)], /1 to 31 characters/],
  ['no name', [''], /1 to 31 characters/],
  ['a name with a slash', ['A/B'], /"A\/B" cannot be the name/],
  ['one name twice', ['Rods', 'rods'], /two sheets have the name "rods"/],
])('%s is refused', async (_, names, message) => {
  const writing = newWorkbookPackage({ file: 'folder', sheets: names.map((name) => ({ name, rows: [] })) });
  await expect(writing).rejects.toThrow(UserError);
  await expect(writing).rejects.toThrow(message);
});
