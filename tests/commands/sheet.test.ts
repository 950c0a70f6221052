/** `oilgap sheet`: the blank workbook that the program itself can check, blank and filled. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import JSZip from 'jszip';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { oilgap } from './books.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-sheet-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('check on the blank sheet runs, everything not measured', () => {
  const path = join(folder, 'blank.xlsx');
  const made = oilgap('sheet', '--out', path, '--journal-gauge', 'M1=0.002');
  expect([made.status, made.stderr]).toEqual([0, '']);
  expect(made.stdout).toContain('rows to measure: Journals 9, Rods 4, Cases 5, Shells 18');
  const { status, stdout, stderr } = oilgap('check', path, '--json');
  expect([status, stderr]).toEqual([1, '']);
  const [book] = JSON.parse(stdout).books;
  expect(book.parts).toHaveLength(36);
  const statuses = [...book.parts, ...book.fits].map(({ status: verdict }: { status: string }) => verdict);
  expect(new Set(statuses)).toEqual(new Set(['not measured']));
  expect(book.refused).toEqual([]);
  expect(book.notices).toEqual([]);
});

test('check leaves the sheets protected and their cells unlocked', async () => {
  const path = join(folder, 'kept.xlsx');
  oilgap('sheet', '--out', path, '--cylinders', '1', '--mains', 'none');
  oilgap('check', path);
  const sheetXml = async (file: string) =>
    (await JSZip.loadAsync(readFileSync(file))).file('xl/worksheets/sheet5.xml')!.async('string');
  const [blank, checked] = [await sheetXml(path), await sheetXml(join(folder, 'kept.checked.xlsx'))];
  const protection = /<sheetProtection[^>]*>/.exec(blank)![0];
  expect(protection).toContain('sheet="1"');
  expect(checked).toContain(protection);
  const styleOf = (xml: string) => /<c r="I2" s="(\d+)"/.exec(xml)![1];
  expect(styleOf(checked)).toBe(styleOf(blank));
});

test('never goes over a file that is there', () => {
  const path = join(folder, 'mine.xlsx');
  writeFileSync(path, 'mine');
  const { status, stderr } = oilgap('sheet', '--out', path);
  expect(status).toBe(2);
  expect(stderr).toContain('mine.xlsx is already there; choose another name.');
  expect(readFileSync(path, 'utf8')).toBe('mine');
});

test.each([
  [['--out', 'engine.csv'], 'found no name of an .xlsx file'],
  [['--stations', 'AB'], '--stations: found "AB"'],
])('%j is refused with 2, and nothing is written', (args, words) => {
  const path = join(folder, 'refused.xlsx');
  const { status, stderr } = oilgap('sheet', '--out', path, ...args);
  expect(status).toBe(2);
  expect(stderr).toContain(words);
  expect(existsSync(path)).toBe(false);
});

test('warns of a bore angle on the parting line', () => {
  const { status, stderr } = oilgap('sheet', '--out', join(folder, 'near.xlsx'), '--bore-angles', '0,90');
  expect(status).toBe(0);
  expect(stderr).toContain('--bore-angles: found 90');
});
