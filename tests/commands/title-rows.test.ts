/** Books whose sheets have title rows above their headers, and headers of two names: the results are those of plain books. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import type { Plain, Sheets } from '../engine/book-of.js';
import { oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-titles-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const TWO_NAMES: Readonly<Record<string, string>> = {
  Part: 'Part / Teil',
  Engine: 'Motor\nEngine',
  'A 0': 'A 0 / vorne 0 (mm)',
  'Wall 1': 'Wand 1/Wall 1',
};
const TITLE = [
  'Green engine, measured by hand',
  undefined,
  undefined,
  undefined,
  undefined,
  undefined,
  'sheet 1 of 4',
];

/** The sheets below two rows of titles, their headers in two languages. */
function titled(sheets: Sheets): Sheets {
  const below = ([headers = [], ...rows]: readonly (readonly Plain[])[]) => [
    TITLE,
    [],
    headers.map((header) => TWO_NAMES[String(header)] ?? header),
    ...rows,
  ];
  return Object.fromEntries(Object.entries(sheets).map(([name, rows]) => [name, below(rows)]));
}

async function sheetsOf(path: string): Promise<Map<string, unknown[][]>> {
  const { sheets } = await readWorkbookPackage(readFileSync(path), path);
  return new Map(
    sheets.map(({ name, rows }) => [
      name,
      Array.from(rows, (cells) => Array.from(cells ?? [], (cell) => cell?.content?.value ?? '')),
    ]),
  );
}

/** What is computed, without the rows that it stands in. */
function fitsOf(...args: string[]) {
  const { fits, parts } = JSON.parse(oilgap(...args, '--json').stdout).books[0];
  const withoutRows = (list: Record<string, unknown>[]) => list.map(({ row: _, ...rest }) => rest);
  return { fits: withoutRows(fits), parts: withoutRows(parts) };
}

test('results stand in the row of the headers and below it, and once however often the book is checked', async () => {
  const path = await writeBook(folder, 'titled.xlsx', titled(sheetsWith()));
  expect(oilgap('check', path, '--in-place').status).toBe(0);
  const first = await sheetsOf(path);
  const journals = first.get('Journals')!;
  expect(journals[0]).toEqual(TITLE.map((cell) => cell ?? ''));
  expect(journals[1]).toEqual([]);
  const size = journals[2]!.indexOf('Size');
  expect(size).toBe(5);
  expect(journals[3]![size]).toBe(42.0015);
  expect(oilgap('check', path, '--in-place').status).toBe(0);
  expect(await sheetsOf(path)).toEqual(first);
});

test('fits are those of a plain book: checked, matched, from .csv files', async () => {
  const plain = await writeBook(folder, 'plain.xlsx', sheetsWith());
  const path = await writeBook(folder, 'two-names.xlsx', titled(sheetsWith()));
  const wanted = fitsOf('check', plain, '--out', folder);
  expect(wanted.fits[0]!.clearance).toBe(0.035);
  expect(fitsOf('check', path, '--out', folder)).toEqual(wanted);
  const out = join(folder, 'sets.xlsx');
  expect(fitsOf('match', path, '--out', out)).toEqual(fitsOf('match', plain, '--out', out));

  const shelf = join(folder, 'shelf');
  mkdirSync(shelf);
  for (const [name, rows] of Object.entries(titled(sheetsWith()))) {
    const line = (row: readonly Plain[]) => row.map((cell) => `"${cell ?? ''}"`.replace('.', ',')).join(';');
    writeFileSync(join(shelf, `${name}.csv`), rows.map(line).join('\r\n'));
  }
  expect(fitsOf('check', shelf, '--out', folder).fits).toEqual(wanted.fits);
});

test('a sheet without its headers is named, and the others are read', async () => {
  const { Rods, ...others } = sheetsWith();
  const path = await writeBook(folder, 'no-headers.xlsx', {
    ...others,
    Rods: [['Rods of the green engine'], ['R1', 'E1', 1, 45.0125]],
  });
  const { status, stderr } = oilgap('check', path, '--out', folder);
  expect(status).toBe(1);
  expect(stderr).toContain('sheet Rods: found no column "Part" in its first five rows');
  expect(stderr).toContain('until then the sheet is not read');
});
