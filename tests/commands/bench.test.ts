/** `oilgap bench` as a user runs it, with readings from a file. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import JSZip from 'jszip';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { table } from '../engine/book-of.js';
import { benchPiped, cellsOf, logged, typeUntilKilled } from './at-bench.js';
import { oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
let blank: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-bench-'));
  blank = join(folder, 'blank.xlsx');
  oilgap('sheet', '--out', blank, '--cylinders', '1', '--mains', 'none', '--journal-gauge', 'M1=0.002');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function copyOf(name: string): string {
  const path = join(folder, `${name}.xlsx`);
  copyFileSync(blank, path);
  return path;
}

/** Journal, bore, upper and lower wall of one big end: 45.0125 − 1.4875 − 1.4885 − 42.0015 = 0.035 mm. */
const ENGINE = [
  ...Array(4).fill('42.0015'),
  ...Array(6).fill('45.0125'),
  '1.4875',
  '1.4875',
  '1.4885',
  '1.4885',
];

test('fills a whole engine, and check then computes it; the sheets stay protected', async () => {
  const path = copyOf('whole');
  const { status, stdout, stderr } = benchPiped(`${ENGINE.join('\n')}\n`, path);
  expect([status, stderr]).toEqual([0, '']);
  expect(stdout).toContain('E1 big end 1: clearance 0.035 mm, 0.035 to 0.035 mm; no limits');
  expect(stdout).toContain('everything that was asked for is measured');
  expect((await cellsOf(path, 'Journals')).P1).toMatchObject({ 'A 0': 42.0015, 'B 90': 42.0015 });
  const [book] = JSON.parse(oilgap('check', path, '--json').stdout).books;
  expect(book.fits[0].clearance).toBe(0.035);
  expect(existsSync(`${path}.lock`)).toBe(false);
  expect(logged(path)).toHaveLength(14);
});

test('leaves what is left out or skipped for the next time, and ends with 1', async () => {
  const path = copyOf('part');
  const first = benchPiped('42.0015\nx\n42.5015\ns\n45.0125\nq\n45\n', path);
  expect(first.status).toBe(1);
  expect(first.stderr).toContain('line 2: Journals P1 A 90: found the text "x"');
  expect(first.stderr).toContain(
    'line 3: Journals P1 B 0: 42.5015 mm is doubtful: 0.5 mm away from the other spots',
  );
  expect(first.stdout).toContain('still to measure: 12: Journals P1 A 90, Journals P1 B 0, Journals P1 B 90');
  expect((await cellsOf(path, 'Rods')).R1).toMatchObject({ 'A 0': 45.0125, 'A 45': undefined });
  const rest = [...ENGINE.slice(1, 4), ...ENGINE.slice(5)];
  expect(benchPiped(rest.join('\r'), path).status).toBe(0);
});

test('a line of a million signs, control characters, markup and formulas cost their spot only', async () => {
  const path = copyOf('hostile');
  const lines = [
    '4'.repeat(1_000_000),
    '\u001b]0;title\u0007',
    '<script>',
    'n =HYPERLINK("x")&"<b>"\u0000',
    'n <b>=1+1',
    '42.0015',
  ];
  const { status, stdout, stderr } = benchPiped(lines.join('\n'), path);
  expect(status).toBe(1);
  expect(`${stdout}${stderr}`.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  expect(stderr.length).toBeLessThan(2_000);
  expect(stderr.match(/was left out/g)).toHaveLength(4);
  expect((await cellsOf(path, 'Rods')).R1).toMatchObject({ 'A 0': 42.0015, Note: '<b>=1+1' });
});

test("a gauge's log of a thousand lines", async () => {
  const path = join(folder, 'thousand.xlsx');
  oilgap('sheet', '--out', path, '--big-ends', '1-25', '--mains', 'none', '--repeats', '2', '--walls', '6');
  const journals = Array.from({ length: 200 }, (_, place) => (42 + (place % 7) / 1000).toFixed(3));
  const bores = Array.from({ length: 300 }, (_, place) => (45.01 + (place % 5) / 1000).toFixed(3));
  const walls = Array.from({ length: 600 }, (_, place) => (1.487 + (place % 3) / 1000).toFixed(3));
  const readings = [...journals, ...bores, ...walls].slice(0, 1_000);
  const { status, stderr, stdout } = benchPiped(readings.map((line) => `${line} mm\r\n`).join(''), path);
  expect([status, stderr]).toEqual([1, '']);
  expect(stdout).toContain('still to measure: 100:');
  expect(logged(path).map(Number)).toEqual(readings.map(Number));
  const filled = ['Journals', 'Rods', 'Shells'].map(async (sheet) =>
    Object.values(await cellsOf(path, sheet)).flatMap((row) =>
      Object.entries(row).filter(([header, value]) => /\d/.test(header) && value !== undefined),
    ),
  );
  expect((await Promise.all(filled)).map(({ length }) => length)).toEqual([200, 300, 500]);
});

test('a second reading goes into a new column, unlocked as the others are', async () => {
  const path = copyOf('second');
  const { status, stderr } = benchPiped('42.0015\nr\n42.0025\nq\n', path);
  expect([status, stderr]).toEqual([1, '']);
  expect((await cellsOf(path, 'Journals')).P1).toMatchObject({ 'A 0': 42.0015, 'A 0 #2': 42.0025 });
  const xml = await (await JSZip.loadAsync(readFileSync(path)))
    .file('xl/worksheets/sheet5.xml')!
    .async('string');
  const styleOf = (address: string) => new RegExp(`<c r="${address}" s="(\\d+)"`).exec(xml)?.[1];
  expect(styleOf('I2')).toBeDefined();
  expect(styleOf('O2')).toBe(styleOf('I2'));
  expect(styleOf('O1')).toBe(styleOf('I1'));
  // One that is asked for and not read leaves no empty column behind.
  benchPiped('42.0015\nr\nq\n', path);
  expect(Object.keys((await cellsOf(path, 'Journals')).P1!)).not.toContain('A 90 #2');
});

describe('nothing is lost', () => {
  test('in a few kills: every reading that was answered is in the log, and in the book at the end', async () => {
    const path = copyOf('killed');
    let taken: string[] = [];
    for (const kill of [
      { answered: 3, milliseconds: 0 },
      { answered: 0, milliseconds: 250 },
      { answered: 4, milliseconds: 3 },
    ]) {
      taken = [...taken, ...(await typeUntilKilled(path, ENGINE.slice(taken.length), kill))];
      const kept = logged(path).map(Number);
      // One more may have been on the disk when the answer was not yet out.
      expect(kept.slice(0, taken.length)).toEqual(taken.map(Number));
      expect(kept.length - taken.length).toBeLessThanOrEqual(1);
      taken = kept.map(String);
    }
    const rest = ENGINE.slice(taken.length);
    const { status, stderr } = benchPiped(rest.join('\n'), path);
    expect(stderr.replace(/.*taken up\.\n/, '')).toBe('');
    expect(status).toBe(0);
    expect(
      Object.values((await cellsOf(path, 'Rods')).R1!).filter((value) => value === 45.0125),
    ).toHaveLength(6);
    expect((await cellsOf(path, 'Shells')).P1L).toMatchObject({ 'Wall 1': 1.4885, 'Wall 2': 1.4885 });
  });

  test('where the book cannot be written: the log has it, and the next start takes it up', async () => {
    const path = copyOf('moved');
    const child = spawn(process.execPath, ['dist/src/commands/main.js', 'bench', path]);
    const ended = once(child, 'exit');
    let stderr = '';
    child.stderr.on('data', (chunk) => {
      stderr += chunk;
    });
    child.stdin.write('42.0015\n');
    await once(child.stdout, 'data');
    // Meanwhile the book is saved elsewhere with other columns.
    const other = join(folder, 'other.xlsx');
    oilgap('sheet', '--out', other, '--cylinders', '1', '--mains', 'none', '--journal-angles', '30,90');
    copyFileSync(other, path);
    child.stdin.end();
    expect((await ended)[0]).toBe(2);
    expect(stderr).toContain('Journals!I2 is no longer the cell that it was');
    expect(stderr).toContain('go into the book at the next start');
    copyFileSync(blank, path);
    const { stderr: next } = benchPiped('', path);
    expect(next).toContain('1 readings of the log were not in the book yet');
    expect((await cellsOf(path, 'Journals')).P1).toMatchObject({ 'A 0': 42.0015 });
  });

  test('a second bench on the book is refused, by whatever name', async () => {
    const path = copyOf('twice');
    const link = join(folder, 'link.xlsx');
    symlinkSync(path, link);
    const child = spawn(process.execPath, ['dist/src/commands/main.js', 'bench', path]);
    const ended = once(child, 'exit');
    child.stdin.write('42.0015\n');
    await once(child.stdout, 'data');
    for (const name of [path, link]) {
      const { status, stderr } = benchPiped('42.0015\n', name);
      expect(status).toBe(2);
      expect(stderr).toContain('another bench has this book');
    }
    child.stdin.end();
    await ended;
    expect(logged(path)).toEqual(['42.0015']);
  });

  test('a signal ends the sitting as q does', async () => {
    const path = copyOf('signal');
    const child = spawn(process.execPath, ['dist/src/commands/main.js', 'bench', path]);
    const ended = once(child, 'exit');
    child.stdin.write('42.0015\n');
    await once(child.stdout, 'data');
    child.kill('SIGTERM');
    expect((await ended)[0]).toBe(1);
    expect((await cellsOf(path, 'Journals')).P1).toMatchObject({ 'A 0': 42.0015 });
  });
});

test('a checked book gets its results anew with its readings', async () => {
  const sheets = sheetsWith({ 'A 90': undefined }, {});
  const path = await writeBook(folder, 'results.xlsx', sheets);
  expect(oilgap('check', path).status).toBe(0);
  const checked = join(folder, 'results.checked.xlsx');
  const { status, stderr } = benchPiped('42.0035\n', checked);
  expect([status, stderr]).toEqual([0, '']);
  expect((await cellsOf(checked, 'Journals')).J1).toMatchObject({
    'A 90': 42.0035,
    Size: 42.0025,
    Largest: 42.0035,
  });
  expect(Object.keys(await cellsOf(checked, 'Summary'))).toContain('Caution');
});

test('--again repeats readings whose fit is undecided, in new columns', async () => {
  const gauges = {
    Gauges: table({ Gauge: 'M1', 'Max error': 0.0005, Resolution: 0.001, Repeatability: 0.004 }),
  };
  const near = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.034, 'Clearance max': 0.05 };
  const path = await writeBook(
    folder,
    'repeats.xlsx',
    sheetsWith({ Gauge: 'M1' }, { Limits: table(near), ...gauges }),
  );
  const { stdout, stderr } = benchPiped('42.0015\n', path, '--again');
  expect(stderr).toBe('');
  expect(stdout).toContain('Journals J1 A 0 #2: 42.0015 mm');
  expect((await cellsOf(path, 'Journals')).J1).toMatchObject({ 'A 0': 42.0015, 'A 0 #2': 42.0015 });
});

test('--again asks for what Re-measure names, the one that decides most first', async () => {
  const path = await writeBook(folder, 'again.xlsx', sheetsWith({ 'A 90': 'worn', 'A 0 #2': undefined }));
  const { status, stdout } = benchPiped('42.0015\n', path, '--again');
  expect(stdout).toContain('Journals J1 A 90: 42.0015 mm');
  expect(status).toBe(0);
  expect((await cellsOf(path, 'Journals')).J1).toMatchObject({ 'A 90': 42.0015, 'A 0 #2': undefined });
});

test.each([
  ['missing.xlsx', 'missing.xlsx'],
  ['.', 'expected an .xlsx workbook'],
])('%s is refused with 2', (name, words) => {
  const { status, stderr } = benchPiped('', name === '.' ? 'workbooks/decimal-commas' : join(folder, name));
  expect(status).toBe(2);
  expect(stderr).toContain(words);
});

test('a log that cannot be kept stops the bench before the first reading', async () => {
  const path = copyOf('unlogged');
  mkdirSync(`${path}.log`);
  const { status, stderr } = benchPiped('42.0015\n', path);
  expect([status, stderr]).toEqual([2, expect.stringContaining('the bench was not begun')]);
  expect((await cellsOf(path, 'Journals')).P1).toMatchObject({ 'A 0': undefined });
  expect(existsSync(`${path}.lock`)).toBe(false);
});
