import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { LOG_HEADER, type LogEntry } from '../../../src/engine/bench/log-line.js';
import { logPath, ReadingLog } from '../../../src/io/bench/reading-log.js';

const entry = (typed: string): LogEntry => ({
  time: '2026-01-01T00:00:00.000Z',
  kind: 'reading',
  sheet: 'Journals',
  part: 'J1',
  spot: 'A 0',
  typed,
  mm: typed,
  gauge: '',
  temperature: '',
  before: '',
  reason: '',
});

let folder: string;
let book: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-log-'));
  book = join(folder, 'engine.xlsx');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function sitting(...typed: readonly string[]): Promise<ReadingLog> {
  const log = await ReadingLog.open(book);
  await log.add(typed.map(entry));
  await log.close();
  return log;
}

test('grows from sitting to sitting, beside the book, and nothing of it changes', async () => {
  await sitting('42.001');
  const before = readFileSync(logPath(book), 'utf8');
  await sitting('42.002', '42.003');
  const after = readFileSync(logPath(book), 'utf8');
  expect(after.startsWith(before)).toBe(true);
  const { entries, damaged } = await sitting();
  expect(entries.map(({ typed }) => typed)).toEqual(['42.001', '42.002', '42.003']);
  expect(damaged).toEqual([]);
});

test('a last line that was cut short is named, and closed before the next', async () => {
  await sitting('42.001');
  appendFileSync(logPath(book), 'half a li');
  const { entries, damaged } = await sitting('42.002');
  expect(entries).toHaveLength(1);
  expect(damaged[0]).toContain('line 3 is damaged or was cut short');
  expect((await sitting()).entries.map(({ typed }) => typed)).toEqual(['42.001', '42.002']);
});

test('zero bytes, which a dead battery leaves, cost only their line', async () => {
  await sitting('42.001');
  appendFileSync(logPath(book), `${'\0'.repeat(512)}\n`);
  await sitting('42.002');
  const { entries, damaged } = await sitting();
  expect(entries).toHaveLength(2);
  expect(damaged).toHaveLength(1);
});

test('an empty file gets its header', async () => {
  writeFileSync(logPath(book), '');
  await sitting();
  expect(readFileSync(logPath(book), 'utf8')).toBe(LOG_HEADER);
});

test('is refused in words where it cannot be kept', async () => {
  book = join(folder, 'missing', 'engine.xlsx');
  await expect(ReadingLog.open(book)).rejects.toThrow('the bench was not begun');
});

/** Nothing is written through a log to where the user keeps something else. */
test.each<[string, (path: string, other: string) => unknown]>([
  ['a folder', (path) => mkdirSync(path)],
  ['a pipe', (path) => spawnSync('mkfifo', [path])],
  ['a link to another place', (path, other) => symlinkSync(other, path)],
  ['a link to another place', (path, other) => symlinkSync(`${other}.none`, path)],
  ['a file that has a second name elsewhere', (path, other) => linkSync(other, path)],
])('a log that is %s is refused by name', async (found, make) => {
  const other = join(folder, 'other.txt');
  writeFileSync(other, 'mine');
  make(logPath(book), other);
  await expect(ReadingLog.open(book)).rejects.toThrow(
    `${logPath(book)}: found ${found} where the log of the bench`,
  );
  expect(readFileSync(other, 'utf8')).toBe('mine');
  expect(readdirSync(folder).sort()).toEqual(['engine.xlsx.log', 'other.txt']);
});
