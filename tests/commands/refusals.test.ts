/** What the program says to books and settings that it cannot use, and what it does all the same. */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { table } from '../engine/book-of.js';
import { AT_1, oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function cellsOf(path: string, name: string): Promise<string[][]> {
  const { sheets } = await readWorkbookPackage(readFileSync(path), path);
  const sheet = sheets.find((own) => own.name === name)!;
  return sheet.rows.map((row) => row.map((cell) => String(cell?.content?.value ?? '')));
}

test('a book without a known sheet is refused, with what to do', async () => {
  const book = await writeBook(folder, 'other.xlsx', { Tappets: [['Name'], ['one']] });
  const { status, stdout, stderr } = oilgap('check', book);
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toContain(
    `${book}: found no sheet that oilgap knows; expected Journals, Rods, Cases, Cylinders, Pistons`,
  );
  expect(existsSync(join(folder, 'other.checked.xlsx'))).toBe(false);
});

test('of two books of one name, --out takes the first and names the second', async () => {
  const [one, two] = ['one', 'two'].map((name) => join(folder, name));
  for (const own of [one!, two!]) mkdirSync(own);
  const books = [
    await writeBook(one!, 'engine.xlsx', sheetsWith()),
    await writeBook(two!, 'engine.xlsx', sheetsWith({ Part: 'J2' })),
  ];
  const out = join(folder, 'out');
  const { status, stderr } = oilgap('check', ...books, '--out', out);
  expect(status).toBe(2);
  expect(stderr).toContain(`${books[1]}: found another book of this run at `);
  const journals = await cellsOf(join(out, 'engine.checked.xlsx'), 'Journals');
  expect(journals[1]![0]).toBe('J1');
});

test('gauges that differ under one name keep their own errors in a stock of both books', async () => {
  const withGauge = (name: string, error: number) =>
    sheetsWith(
      { Part: name, Engine: name, Gauge: 'M1' },
      { Gauges: table({ Gauge: 'M1', 'Max error': error }) },
    );
  const books = [
    await writeBook(folder, 'north.xlsx', withGauge('J1', 0.001)),
    await writeBook(folder, 'south.xlsx', withGauge('J2', 0.004)),
  ];
  const out = join(folder, 'gauges.xlsx');
  const { stdout } = oilgap('match', ...books, '--out', out, '--json');
  const { parts } = JSON.parse(stdout).books[0];
  const sizeU = (name: string) => parts.find(({ part }: { part: string }) => part === name).sizeU;
  // U = 2·√((a/√3)² + (0.5 K · 11.5e-6/K · 42.0015 mm)²), JCGM 100: 1.25 µm and 4.64 µm.
  expect(sizeU('J1')).toBeCloseTo(0.00125, 5);
  expect(sizeU('J2')).toBeCloseTo(0.00464, 5);
  const gauges = await cellsOf(out, 'Gauges');
  expect(gauges.slice(1).map(([name]) => name)).toEqual(['north M1', 'south M1']);
});

test('a setting that only matching needs costs only the sets, and is named', async () => {
  const setup = (Value: string) => ({
    Setup: [
      ['Item', 'Value'],
      ['Prefer', Value],
    ],
  });
  const good = oilgap(
    'check',
    await writeBook(folder, 'good.xlsx', sheetsWith({}, setup('closest'))),
    '--json',
  );
  expect(good.status).toBe(0);
  expect(JSON.parse(good.stdout).books[0].matching.completeEngines).toEqual(['E1']);
  const bad = oilgap('check', await writeBook(folder, 'bad.xlsx', sheetsWith({}, setup('cheap'))), '--json');
  expect(bad.status).toBe(1);
  expect(bad.stderr).toContain('Setup!B2 (Prefer): found the text "cheap"; expected kept pairs or closest; ');
  const [{ fits, matching }] = JSON.parse(bad.stdout).books;
  expect([fits[0].status, matching]).toEqual(['in range', null]);
  const summary = (await cellsOf(join(folder, 'bad.checked.xlsx'), 'Summary')).flat();
  expect(summary).toContainEqual(expect.stringMatching(/^Matched sets: not made\. Setup!B2 \(Prefer\)/));
});

test('the counts of Summary are plain where a live one would miss a name typed with spaces around it', async () => {
  const fits = (Engine: string) => ({ Fits: table({ ...AT_1, Engine, Fit: 'big end' }) });
  for (const [name, engine, isLive] of [
    ['plain', 'E1', true],
    ['spaces', ' E1', false],
  ] as const) {
    oilgap('check', await writeBook(folder, `${name}.xlsx`, sheetsWith({}, fits(engine))));
    const path = join(folder, `${name}.checked.xlsx`);
    const { sheets } = await readWorkbookPackage(readFileSync(path), path);
    const inRange = sheets.find((own) => own.name === 'Summary')!.rows[1]![3]!;
    expect(inRange.content).toEqual({ kind: 'number', value: 1 });
    expect(inRange.formula !== undefined).toBe(isLive);
  }
});
