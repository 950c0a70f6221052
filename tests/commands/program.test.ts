/** The built program as a user runs it: stdout, stderr, exit code, and what is written. */
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import JSZip from 'jszip';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CAUTION } from '../../src/engine/caution.js';
import type { WorkbookModel } from '../../src/engine/workbook-model.js';
import { newWorkbookPackage } from '../../src/io/xlsx/new-package.js';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { modelOf, type Sheets, table } from '../engine/book-of.js';
import { AT_1, oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const bookAt = (name: string, book: Sheets) => writeBook(folder, name, book);

const digest = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex');

async function modelAt(path: string): Promise<WorkbookModel> {
  return readWorkbookPackage(readFileSync(path), path);
}

/** A row of a sheet by its headers; of two equal headers the last. */
function rowOf(model: WorkbookModel, sheet: string, row: number) {
  const { rows } = model.sheets.find(({ name }) => name === sheet)!;
  const cells = Array.from(
    rows[0]!,
    (header, column) => [header?.content?.value, rows[row]?.[column]] as const,
  );
  return Object.fromEntries(cells.map(([header, cell]) => [String(header), cell]));
}

describe('check', () => {
  test('writes a copy beside the book, live, and leaves all else byte for byte', async () => {
    const path = await bookAt('good.xlsx', sheetsWith({}, { Notes: [['mine']] }));
    const before = digest(path);
    const { status, stdout, stderr } = oilgap('check', path);
    expect(status).toBe(0);
    expect(stdout).toContain('engine E1, big end: 1 fit: 1 in range');
    expect(stderr).toBe('');
    expect(digest(path)).toBe(before);

    const written = join(folder, 'good.checked.xlsx');
    const fit = rowOf(await modelAt(written), 'Fits', 1);
    expect(fit.Clearance).toMatchObject({
      content: { value: 0.035 },
      formula: expect.stringContaining('ROUND('),
    });
    expect(fit.Status).toMatchObject({
      content: { value: 'in range' },
      formula: expect.stringContaining('IF('),
    });

    const [input, output] = await Promise.all(
      [path, written].map((file) => JSZip.loadAsync(readFileSync(file))),
    );
    const notes = 'xl/worksheets/sheet5.xml';
    expect(await output!.file(notes)!.async('string')).toBe(await input!.file(notes)!.async('string'));
    expect(await output!.file('xl/theme/theme1.xml')?.async('string')).toBe(
      await input!.file('xl/theme/theme1.xml')?.async('string'),
    );
  });

  test('gives the same file when run again on what it wrote', async () => {
    const path = await bookAt('again.xlsx', sheetsWith());
    oilgap('check', path);
    const written = join(folder, 'again.checked.xlsx');
    const refused = oilgap('check', written);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain('--in-place');
    const before = digest(written);
    expect(oilgap('check', written, '--in-place').status).toBe(0);
    expect(digest(written)).toBe(before);
  });

  test('makes all plain with --values', async () => {
    const path = await bookAt('plain.xlsx', sheetsWith());
    oilgap('check', path, '--values', '--out', join(folder, 'values'));
    const { sheets } = await modelAt(join(folder, 'values', 'plain.checked.xlsx'));
    const formulas = sheets.flatMap(({ rows }) => rows.flat().filter((cell) => cell?.formula !== undefined));
    expect(formulas).toEqual([]);
  });

  test("keeps a user's own columns and sheets of the same names", async () => {
    const sheets = sheetsWith({ Status: 'polished' }, { Summary: [['my own summary']] });
    const path = await bookAt('own.xlsx', sheets);
    expect(oilgap('check', path).status).toBe(0);
    const model = await modelAt(join(folder, 'own.checked.xlsx'));
    const headers = model.sheets
      .find(({ name }) => name === 'Journals')!
      .rows[0]!.map((cell) => cell?.content?.value);
    expect(headers.filter((header) => header === 'Status')).toHaveLength(2);
    expect(rowOf(model, 'Summary', 0)).toHaveProperty('my own summary');
    expect(model.sheets.map(({ name }) => name)).toContain('Summary (oilgap)');
  });

  test('ends with 1 where a journal is beyond a limit whose header has unit and punctuation', async () => {
    const { Limits, ...others } = sheetsWith();
    const withMost = (most: number) =>
      Limits!.map((cells, row) => [...cells, row === 0 ? 'Journal max [µm]:' : most]);
    const within = await bookAt('within.xlsx', { ...others, Limits: withMost(42_005) });
    expect(oilgap('check', within).status).toBe(0);
    const beyond = await bookAt('beyond.xlsx', { ...others, Limits: withMost(42_001) });
    const { status, stdout } = oilgap('check', beyond, '--json');
    expect(status).toBe(1);
    expect(JSON.parse(stdout).books[0].parts).toContainEqual(
      expect.objectContaining({ part: 'J1', status: 'beyond limits' }),
    );
  });

  test('names a bad cell, computes the rest and ends with 1', async () => {
    const sheets = sheetsWith({}, {});
    const path = await bookAt('bad.xlsx', {
      ...sheets,
      Journals: table(
        { Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': 42.0015 },
        { Part: 'J2', Engine: 'E2', Position: 1, Fit: 'big end', 'A 0': 'worn' },
      ),
    });
    const { status, stderr, stdout } = oilgap('check', path, '--json');
    expect(status).toBe(1);
    expect(stderr).toMatch(
      /bad\.xlsx: Journals!E3 \(A 0\): found the text "worn"; expected a length above 0 \(mm, in or µm\); .+\./,
    );
    const [book] = JSON.parse(stdout).books;
    expect(book.fits.map((fit: { status: string }) => fit.status)).toEqual(['in range', 'bad reading']);
    expect(book.fits[0].clearance).toBe(0.035);
  });

  test('goes on after a book that cannot be run, and ends with 2', async () => {
    const path = await bookAt('after.xlsx', sheetsWith());
    const { status, stderr } = oilgap('check', join(folder, 'missing.xlsx'), path);
    expect(status).toBe(2);
    expect(stderr).toContain('missing.xlsx');
    expect(existsSync(join(folder, 'after.checked.xlsx'))).toBe(true);
  });

  test('gives a formula of our functions its value and keeps the formula', async () => {
    const model = modelOf(sheetsWith());
    const journals = model.sheets.find(({ name }) => name === 'Journals')!;
    journals.rows[0]![8] = { content: { kind: 'text', value: 'Mine' } };
    journals.rows[1]![8] = { content: undefined, formula: 'SHELL_CLEARANCE(45.0125,1.4875,1.4885,42.0015)' };
    const path = join(folder, 'custom.xlsx');
    writeFileSync(path, await newWorkbookPackage(model));
    expect(oilgap('check', path).status).toBe(0);
    const written = await modelAt(join(folder, 'custom.checked.xlsx'));
    expect(rowOf(written, 'Journals', 1).Mine).toEqual({
      content: { kind: 'number', value: 0.035 },
      formula: 'SHELL_CLEARANCE(45.0125,1.4875,1.4885,42.0015)',
    });
  });

  test('makes its Fits sheet anew and keeps the strip readings', async () => {
    const sheets = sheetsWith({}, { Rods: table({ Part: 'R1', ...AT_1, Mark: 'B' }) });
    const path = await bookAt('strip.xlsx', sheets);
    oilgap('check', path);
    const written = join(folder, 'strip.checked.xlsx');
    const model = await modelAt(written);
    const fits = model.sheets.find(({ name }) => name === 'Fits')!;
    fits.rows[1]![7] = { content: { kind: 'number', value: 0.035 } };
    const edited = join(folder, 'edited.xlsx');
    writeFileSync(edited, await newWorkbookPackage(model));
    oilgap('check', edited);
    const fit = rowOf(await modelAt(join(folder, 'edited.checked.xlsx')), 'Fits', 1);
    expect(fit['Strip reading']?.content?.value).toBe(0.035);
    expect(fit.Clearance?.content?.value).toBe(0.035);
    // Twice 25 µm/√12, on the grain; inside 20 and 50 µm by more than 11.9 µm.
    expect(fit['Clearance U']?.content?.value).toBe(0.014434);
    expect(fit.Status?.content?.value).toBe('in range');
  });
});

describe('match', () => {
  test('takes books as one stock and tells equal names apart', async () => {
    const one = await bookAt('one.xlsx', sheetsWith());
    const two = join(folder, 'two.xlsx');
    copyFileSync(one, two);
    const sets = join(folder, 'sets.xlsx');
    const { status, stdout } = oilgap('match', one, two, '--out', sets, '--json');
    expect(status).toBe(0);
    const [{ matching, parts }] = JSON.parse(stdout).books;
    expect(matching.completeEngines.sort()).toEqual(['one E1', 'two E1']);
    expect(parts.map(({ part }: { part: string }) => part)).toContain('two J1');
    expect(matching.sets).toHaveLength(2);
    expect(matching.stages.every(({ gap }: { gap: number }) => gap === 0)).toBe(true);
    const model = await modelAt(sets);
    const row = rowOf(model, 'Matched sets', 1);
    expect(row.Clearance?.content?.value).toBe(0.035);
    const names = model.sheets.map(({ name }) => name);
    for (const sheet of ['Not matched', 'Pick list', 'To buy', 'Left over']) expect(names).toContain(sheet);
  });
});

describe('calc, functions, help', () => {
  test('calc prints the value alone', () => {
    const { status, stdout } = oilgap('calc', '=SHELL_CLEARANCE(45.0125,1.4875,1.4885,42.0015)=0.035');
    expect([status, stdout]).toEqual([0, 'true\n']);
  });

  test('calc names the argument that is wrong', () => {
    const { status, stdout, stderr } = oilgap('calc', '=SHELL_CLEARANCE(45,"x",1.5,42)');
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain('wall_upper');
  });

  test('functions explains one and refuses a name that it does not know', () => {
    expect(oilgap('functions', 'fit_grade').stdout).toContain('FIT_GRADE(');
    const { status, stderr } = oilgap('functions', 'NO_SUCH');
    expect(status).toBe(2);
    expect(stderr).toContain('NO_SUCH');
  });

  test('--help shows the caution within 80 columns, bad options end with 2', () => {
    const { status, stdout } = oilgap('--help');
    expect(status).toBe(0);
    const text = stdout.replaceAll(/\s+/g, ' ');
    for (const sentence of CAUTION) expect(text).toContain(sentence);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(oilgap('check').status).toBe(2);
    expect(oilgap('check', 'x.xlsx', '--no-such-option').status).toBe(2);
  });
});
