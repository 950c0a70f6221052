import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { UserError } from '../../../src/engine/user-error.js';
import { readCsvFolder } from '../../../src/io/csv/read-folder.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'oilgap-'));
});
afterEach(() => rm(folder, { recursive: true }));

async function read(files: Record<string, string | Uint8Array>) {
  for (const [name, content] of Object.entries(files)) await writeFile(join(folder, name), content);
  return readCsvFolder(folder, 'stock');
}

test('makes a sheet of every .csv file, by name', async () => {
  await mkdir(join(folder, 'Old.csv'));
  const model = await read({
    'Shells.CSV': 'Part,Half\nS1,upper',
    'Journals.csv': Buffer.from('\ufeffPart\tA 0\nP1\t42,003', 'utf16le'),
    'New shells.csv': '',
    '._Journals.csv': 'hidden',
    'readme.txt': 'no sheet',
  });
  const text = (value: string) => ({ content: { kind: 'text', value } });
  expect(model).toEqual({
    file: 'stock',
    sheets: [
      {
        name: 'Journals',
        rows: [
          [text('Part'), text('A 0')],
          [text('P1'), text('42,003')],
        ],
      },
      { name: 'New shells', rows: [] },
      {
        name: 'Shells',
        rows: [
          [text('Part'), text('Half')],
          [text('S1'), text('upper')],
        ],
      },
    ],
  });
});

test.each([
  [
    'a folder without a .csv file',
    { 'readme.txt': 'x' },
    /^stock: found a folder without a \.csv file; expected/,
  ],
  [
    'two files of one sheet',
    { 'Rods.csv': 'Part', 'Rods .csv': 'Part' },
    /^stock: found Rods \.csv and Rods\.csv, which/,
  ],
  [
    'bytes that are no text',
    { 'Rods.csv': 'PK\0' },
    /^stock.Rods\.csv: found bytes that are no text; expected/,
  ],
  ['an open quote', { 'Rods.csv': 'Part\n"P1' }, /^stock.Rods\.csv: found an opening quote/],
])('refuses %s', async (_, files, message) => {
  const reading = read(files);
  await expect(reading).rejects.toThrow(UserError);
  await expect(reading).rejects.toThrow(message);
});

test('refuses a folder that is not there', async () => {
  await expect(readCsvFolder(join(folder, 'none'), 'none')).rejects.toThrow(/^none: found no file or folder/);
});
