/** What a run must never do to a user's books, and what it must not leave unsaid. */
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { modelOf, table } from '../engine/book-of.js';
import { AT_1, oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const digest = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex');

test('match never writes over a book that it reads, by whatever path', async () => {
  const book = await writeBook(folder, 'input.xlsx', sheetsWith());
  const link = join(folder, 'link.xlsx');
  symlinkSync(book, link);
  const before = digest(book);
  for (const out of [book, join(folder, '..', folder.split('/').at(-1)!, 'input.xlsx'), link]) {
    const { status, stdout, stderr } = oilgap('match', book, '--out', out);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain('found one of the books that are to be read');
  }
  expect(digest(book)).toBe(before);
});

test('check never writes over another book that it is given, as a second run over all files would', async () => {
  const book = await writeBook(folder, 'twice.xlsx', sheetsWith());
  expect(oilgap('check', book).status).toBe(0);
  const written = join(folder, 'twice.checked.xlsx');
  await writeBook(folder, 'twice.checked.xlsx', sheetsWith({ Note: 'mine since' }));
  const before = digest(written);
  const { status, stderr } = oilgap('check', book, written);
  expect(status).toBe(2);
  expect(stderr).toContain('twice.xlsx: its result would go over');
  expect(digest(written)).toBe(before);
  expect(oilgap('check', book, written, '--in-place').status).toBe(0);
});

test('match --json lists the books that could not be read, also where none could', async () => {
  const book = await writeBook(folder, 'whole.xlsx', sheetsWith());
  const missing = join(folder, 'missing.xlsx');
  const some = oilgap('match', book, missing, '--out', join(folder, 'some.xlsx'), '--json');
  expect(some.status).toBe(2);
  expect(JSON.parse(some.stdout).books[0]).toMatchObject({
    file: missing,
    error: expect.stringContaining(missing),
  });
  expect(JSON.parse(some.stdout).books[1].matching.completeEngines).toEqual(['E1']);
  const none = oilgap('match', missing, '--out', join(folder, 'none.xlsx'), '--json');
  expect(none.status).toBe(2);
  expect(JSON.parse(none.stdout).books).toMatchObject([{ file: missing }]);
});

test('--in-place and --out exclude each other, and nothing is written', async () => {
  const book = await writeBook(folder, 'either.xlsx', sheetsWith());
  const before = digest(book);
  const { status, stderr } = oilgap('check', book, '--in-place', '--out', folder);
  expect(status).toBe(2);
  expect(stderr).toContain('--in-place');
  expect(digest(book)).toBe(before);
});

test('a book in mm without Setup stays in mm beside one in inches, in either order', async () => {
  // 45.0125 mm, 1.4875 mm and so on, as inches that are exact: 1 in = 25.4 mm (international inch of 1959).
  const inches = {
    Setup: [
      ['Item', 'Value'],
      ['Length unit', 'in'],
    ],
    Journals: table({
      Part: 'J9',
      Engine: 'E9',
      Position: 1,
      Fit: 'big end',
      'Engine type': 'X',
      'A 0': 1.65,
    }),
  };
  const mm = await writeBook(folder, 'mm.xlsx', sheetsWith());
  const inch = await writeBook(folder, 'inch.xlsx', inches);
  for (const books of [
    [mm, inch],
    [inch, mm],
  ]) {
    const { stdout } = oilgap('match', ...books, '--out', join(folder, 'units.xlsx'), '--json');
    const [{ parts, matching }] = JSON.parse(stdout).books;
    const sizeOf = (name: string) => parts.find(({ part }: { part: string }) => part === name).size;
    expect([sizeOf('J1'), sizeOf('J9')]).toEqual([42.0015, 41.91]);
    expect(matching.sets.map(({ clearance }: { clearance: number }) => clearance)).toEqual([0.035]);
  }
});

test('an inch book gives its JSON in mm', async () => {
  const sheets = {
    Setup: [
      ['Item', 'Value'],
      ['Length unit', 'in'],
    ],
    Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': 1.65 }),
  };
  const { stdout } = oilgap('check', await writeBook(folder, 'in.xlsx', sheets), '--json');
  expect(JSON.parse(stdout).books[0].parts[0].size).toBe(41.91);
});

test('a folder of .csv files with decimal commas is checked, live', async () => {
  const csv = join(folder, 'commas');
  mkdirSync(csv);
  writeFileSync(
    join(csv, 'Journals.csv'),
    'Part;Engine;Fit;Position;A 0;A 90\nJ1;E1;big end;1;42,001;42,003\n',
  );
  const { stderr } = oilgap('check', csv);
  expect(stderr).toBe('');
  const { sheets } = await readWorkbookPackage(readFileSync(join(folder, 'commas.checked.xlsx')), 'commas');
  const size = sheets.find(({ name }) => name === 'Journals')!.rows[1]![6];
  expect(size).toMatchObject({ content: { value: 42.002 }, formula: expect.stringContaining('ROUND(') });
});

test('a Fits sheet without the marker is the user’s: its cells stay, and rule', async () => {
  const book = await writeBook(folder, 'fits.xlsx', sheetsWith());
  oilgap('check', book);
  const model = await readWorkbookPackage(readFileSync(join(folder, 'fits.checked.xlsx')), 'fits');
  const fits = model.sheets.find(({ name }) => name === 'Fits')!;
  const marker = fits.rows[0]!.findIndex((cell) => cell?.content?.value === 'Made by oilgap');
  delete fits.rows[0]![marker];
  fits.rows[1]![4] = { content: { kind: 'text', value: 'R7' } };
  const mine = await writeBook(folder, 'mine.xlsx', model);
  const { stdout } = oilgap('check', mine, '--json');
  expect(JSON.parse(stdout).books[0].fits[0]).toMatchObject({
    status: 'unclear',
    why: ['Bore names R7, which no row of Rods has'],
  });
  const written = await readWorkbookPackage(readFileSync(join(folder, 'mine.checked.xlsx')), 'mine');
  const kept = written.sheets.find(({ name }) => name === 'Fits')!.rows;
  expect(kept[1]![4]?.content?.value).toBe('R7');
  expect(kept[0]!.some((cell) => cell?.content?.value === 'Made by oilgap')).toBe(false);
});

test('one stock gives the same five sheets, whatever the order of its rows', async () => {
  const parts = (reversed: boolean) => {
    const rows = <Row>(list: Row[]) => (reversed ? list.reverse() : list);
    return sheetsWith(
      {},
      {
        Journals: table(
          ...rows(
            [1, 2, 3].map((at) => ({
              Part: `J${at}`,
              Engine: 'E1',
              Position: at,
              Fit: 'big end',
              'A 0': 42.0015,
            })),
          ),
        ),
        Rods: table(
          ...rows([1, 2, 3, 4].map((at) => ({ Part: `R${at}`, 'A 0': 45.01 + at / 1000, Bin: `B${at}` }))),
        ),
        Shells: table(
          ...rows(
            [1, 2, 3, 4].map((at) => ({
              Part: `S${at}`,
              Half: 'either',
              Quantity: 2,
              'Wall 1': 1.487 + at / 1000,
            })),
          ),
        ),
      },
    );
  };
  const sheetsOf = async (reversed: boolean) => {
    const book = await writeBook(folder, `stock-${reversed}.xlsx`, modelOf(parts(reversed)));
    const out = join(folder, `sets-${reversed}.xlsx`);
    oilgap('match', book, '--out', out);
    const { sheets } = await readWorkbookPackage(readFileSync(out), 'sets');
    return ['Matched sets', 'Not matched', 'Pick list', 'To buy', 'Left over'].map((name) =>
      sheets
        .find((sheet) => sheet.name === name)!
        .rows.map((row) => row.map((cell) => String(cell?.content?.value ?? '')).join('|'))
        .sort(),
    );
  };
  const sheets = await sheetsOf(false);
  expect(await sheetsOf(true)).toEqual(sheets);
  expect(sheets[0]).toHaveLength(4);
});

test('control characters of a name never reach the terminal', async () => {
  const name = 'E\u001b[31m1';
  const sheets = { Journals: table({ Part: 'J1', Engine: name, Position: 1, Fit: 'big end', 'A 0': 42 }) };
  const csv = join(folder, 'control');
  mkdirSync(csv);
  const [header, row] = sheets.Journals.map((cells) => cells.join(';'));
  writeFileSync(join(csv, 'Journals.csv'), `${header}\n${row}\n`);
  const { stdout, stderr } = oilgap('check', csv);
  expect(stdout).toContain('engine E [31m1');
  expect(stdout + stderr).not.toContain('\u001b');
});
