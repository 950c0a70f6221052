/** `oilgap report` as a user runs it. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readPage } from '../io/report/read-page.js';
import { oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const version = JSON.parse(readFileSync('package.json', 'utf8')).version;

test('writes a page beside the book, which stays as it was, and names its digest and the version', async () => {
  const book = await writeBook(folder, 'engine.xlsx', sheetsWith());
  const digest = createHash('sha256').update(readFileSync(book)).digest('hex');
  const { status, stdout, stderr } = oilgap('report', book);
  const written = join(folder, 'engine.report.html');
  expect([status, stdout, stderr]).toEqual([0, `${book}\n  written: ${written}\n`, '']);
  const { text } = readPage(readFileSync(written, 'utf8'));
  expect(text).toContain(`oilgap ${version}`);
  expect(text).toContain(digest);
  expect(createHash('sha256').update(readFileSync(book)).digest('hex')).toBe(digest);
});

test('makes the same page again, and ends with 1 where something is not good', async () => {
  const book = await writeBook(folder, 'tight.xlsx', sheetsWith({ 'A 0': 42.03 }));
  expect(oilgap('report', book, '--out', join(folder, 'a')).status).toBe(1);
  expect(oilgap('report', book, '--out', join(folder, 'b')).status).toBe(1);
  const [a, b] = ['a', 'b'].map((out) => readFileSync(join(folder, out, 'tight.report.html'), 'utf8'));
  expect(a).toBe(b);
});

test('a folder of .csv files has a digest for each file', () => {
  const { status } = oilgap('report', 'workbooks/decimal-commas', '--out', folder);
  expect(status).toBe(0);
  const { tables } = readPage(readFileSync(join(folder, 'decimal-commas.report.html'), 'utf8'));
  const input = tables.find(({ caption }) => caption.startsWith('Input'));
  const files = readdirSync('workbooks/decimal-commas').filter((name) => name.endsWith('.csv'));
  expect(input?.rows).toEqual(
    files.sort().map((name) => [
      name,
      createHash('sha256')
        .update(readFileSync(join('workbooks/decimal-commas', name)))
        .digest('hex'),
    ]),
  );
});

test('a bad book never stops the others, and two of one name do not share a page', async () => {
  const good = await writeBook(folder, 'good.xlsx', sheetsWith());
  mkdirSync(join(folder, 'other'));
  const namesake = await writeBook(join(folder, 'other'), 'good.xlsx', sheetsWith());
  const out = join(folder, 'pages');
  const missing = join(folder, 'missing.xlsx');
  const { status, stderr } = oilgap('report', missing, good, namesake, '--out', out);
  expect(status).toBe(2);
  expect(stderr).toContain(missing);
  expect(stderr).toContain(`${namesake}: found another book of this run whose page is`);
  expect(readdirSync(out)).toEqual(['good.report.html']);
});

test('--pdf without a Chromium says so and writes nothing', async () => {
  const book = await writeBook(folder, 'alone.xlsx', sheetsWith());
  process.env.OILGAP_CHROMIUM = join(folder, 'none');
  const { status, stdout, stderr } = oilgap('report', book, '--pdf');
  delete process.env.OILGAP_CHROMIUM;
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toContain('--pdf: found no program at');
  expect(existsSync(join(folder, 'alone.report.html'))).toBe(false);
});

test('--paper takes the papers that there are', () => {
  const { status, stderr } = oilgap('report', 'x.xlsx', '--paper', 'a9');
  expect(status).toBe(2);
  expect(stderr).toContain('a4, letter');
});

test('check tells every fit in a table, and with --quiet nothing but what its messages and exit code tell', async () => {
  const book = await writeBook(folder, 'told.xlsx', sheetsWith({ 'A 0': 42.03 }));
  const told = oilgap('check', book, '--out', folder);
  expect(told.status).toBe(1);
  expect(told.stdout).toMatch(
    /\n {4}1 +0\.00650 {2}0\.02 to 0\.05 {2}tight\n {8}tightest is 0\.0135 mm under/,
  );
  expect(oilgap('check', book, '--out', folder, '--quiet')).toEqual({ status: 1, stdout: '', stderr: '' });
  const json = oilgap('check', book, '--out', folder, '--quiet', '--json');
  expect(JSON.parse(json.stdout).books).toHaveLength(1);
});
