import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { UserError } from '../../src/engine/user-error.js';
import { openFile } from '../../src/io/open-file.js';
import { newWorkbookPackage } from '../../src/io/xlsx/new-package.js';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'oilgap-'));
  const book = await newWorkbookPackage({
    file: 'new',
    sheets: [{ name: 'Rods', rows: [[{ content: { kind: 'text', value: 'Part' } }]] }],
  });
  const files = {
    'book.xlsx': book,
    'BOOK.XLSM': book,
    'empty.xlsx': '',
    'text.xlsx': 'Part;A 0',
    'Rods.csv': 'Part;A 0',
    'book.ods': 'x',
    book: 'x',
  };
  for (const [name, content] of Object.entries(files)) await writeFile(join(folder, name), content);
  await mkdir(join(folder, 'bare'));
});
afterAll(() => rm(folder, { recursive: true }));

test.each(['book.xlsx', 'BOOK.XLSM'])('opens the workbook %s and keeps its bytes', async (name) => {
  const path = join(folder, name);
  const { model, kind, bytes } = await openFile(path);
  expect(kind).toBe('package');
  expect(model.file).toBe(path);
  expect(model.sheets.map((sheet) => sheet.name)).toEqual(['Rods']);
  expect(Buffer.from(bytes!)).toEqual(await readFile(path));
});

test('opens a folder', async () => {
  const { model, kind, bytes } = await openFile(folder);
  expect(kind).toBe('folder');
  expect(model.file).toBe(folder);
  expect(model.sheets.map((sheet) => sheet.name)).toEqual(['Rods']);
  expect(bytes).toBeUndefined();
});

test.each([
  ['none.xlsx', 'found no file or folder of that name; expected'],
  ['book/inner.xlsx', 'found a file where a folder of the path was meant; expected'],
  [`${'a'.repeat(300)}.xlsx`, 'found a name that is too long; expected'],
  ['empty.xlsx', 'found an empty file; expected an .xlsx'],
  ['text.xlsx', 'this is not a workbook'],
  ['Rods.csv', 'found a single .csv file; expected the folder'],
  ['book.ods', 'found a file with the ending .ods; expected an .xlsx'],
  ['book', 'found a file without an ending; expected an .xlsx'],
  ['bare', 'found a folder without a .csv file; expected'],
])('refuses %s', async (name, words) => {
  const path = join(folder, name);
  const opening = openFile(path);
  await expect(opening).rejects.toThrow(UserError);
  await expect(opening).rejects.toThrow(`${path}: ${words}`);
});

test.skipIf(process.platform === 'win32')('refuses a device', async () => {
  await expect(openFile('/dev/null')).rejects.toThrow('/dev/null: found neither a file nor a folder');
});
