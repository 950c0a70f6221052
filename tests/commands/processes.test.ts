/** Each book has a process of its own: what becomes of it concerns no other, and what it says comes in the order asked. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { HOSTILE_SHAPES } from '../hostile/shapes.js';
import { oilgap, sheetsWith, writeBook } from './books.js';

let folder: string;
let small: string;
let huge: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
  small = await writeBook(folder, 'small.xlsx', sheetsWith());
  const shape = HOSTILE_SHAPES.find(
    ({ name }) => name === 'a formula over a sheet that reaches the last row',
  );
  huge = await shape!.make(folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a book that takes all memory is one error, and the next one is checked', () => {
  const { status, stdout, stderr } = oilgap('check', huge, small, '--memory', '50', '--jobs', '1');
  expect(status).toBe(2);
  expect(stderr).toBe(
    `${huge}: found that it takes more memory than 50 MB; expected less; split the book, take out formulas that are not needed, or allow more with --memory. Nothing was written for it.\n`,
  );
  expect(stdout).toContain('1 fit: 1 in range');
  expect(existsSync(join(folder, 'small.checked.xlsx'))).toBe(true);
  expect(existsSync(join(folder, 'book.checked.xlsx'))).toBe(false);
});

test('a book that takes too long is one error', () => {
  const { status, stdout, stderr } = oilgap('check', small, '--timeout', '0.001');
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toContain('small.xlsx: found that it takes longer than 0.001 s; expected less;');
});

test('results and messages come in the order asked, whichever book is ready first', async () => {
  const bad = await writeBook(folder, 'bad.xlsx', sheetsWith({ 'A 0': 'about 42' }));
  const names = ['missing.xlsx', huge, bad, small].map((name) =>
    name.startsWith('/') ? name : join(folder, name),
  );
  const { status, stdout, stderr } = oilgap('check', ...names, '--jobs', '4', '--json');
  expect(status).toBe(2);
  expect(JSON.parse(stdout).books.map(({ file }: { file: string }) => file)).toEqual(names);
  expect(
    stderr
      .trim()
      .split('\n')
      .map((line) => line.split(': ')[0]),
    // Of the huge one, that its formula is not computed.
  ).toEqual([names[0], huge, bad]);
});

test.each(['0', '1.5', 'many'])('--jobs %s is refused', (jobs) => {
  const { status, stderr } = oilgap('check', small, '--jobs', jobs);
  expect(status).toBe(2);
  expect(stderr).toContain('expected a whole number from 1');
});

test('no temporary file stays', () => {
  expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  expect(readFileSync(small).length).toBeGreaterThan(0);
});
