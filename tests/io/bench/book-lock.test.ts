import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { lockBook, lockPath } from '../../../src/io/bench/book-lock.js';

let folder: string;
let book: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-lock-'));
  book = join(folder, 'engine.xlsx');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function leaveDead(path: string): void {
  const { pid } = spawnSync(process.execPath, ['--eval', '']);
  writeFileSync(path, JSON.stringify({ token: 't', host: hostname(), pid, began: '', since: 'then' }));
}

test('a second bench is refused, by name of the first; one after it is not', async () => {
  const lock = await lockBook(book);
  await expect(lockBook(book)).rejects.toThrow(`another bench has this book (process ${process.pid}`);
  await lock.verify();
  await lock.release();
  await (await lockBook(book)).release();
  expect(readdirSync(folder)).toEqual([]);
});

test('a killed bench leaves a file that the next one takes over', async () => {
  leaveDead(lockPath(book));
  await (await lockBook(book)).release();
});

test('a process that has the number of a killed one is not taken for it', async () => {
  const other = spawn(process.execPath, ['--eval', 'setTimeout(() => {}, 60_000)']);
  await once(other, 'spawn');
  try {
    const owner = { token: 't', host: hostname(), pid: other.pid, began: 'another boot 1', since: 'then' };
    writeFileSync(lockPath(book), JSON.stringify(owner));
    await (await lockBook(book)).release();
  } finally {
    other.kill();
  }
});

test.each([
  ['of another machine', JSON.stringify({ token: 't', host: 'another', pid: 1, began: '', since: 'then' })],
  ['that nobody can read', 'mine'],
])('a file %s is left, and named', async (_, text) => {
  writeFileSync(lockPath(book), text);
  await expect(lockBook(book)).rejects.toThrow(`remove ${lockPath(book)} if no bench is running`);
  expect(readFileSync(lockPath(book), 'utf8')).toBe(text);
});

test.each<[string, string, (path: string) => unknown]>([
  [
    'other content',
    'a file with other content than the lock of a bench',
    (path) => writeFileSync(path, 'mine'),
  ],
  ['nothing in it', 'a file with other content', (path) => writeFileSync(path, '')],
  ['a JSON of another program', 'a file with other content', (path) => writeFileSync(path, '{"pid":1}')],
  ['far too long', 'a file with other content', (path) => writeFileSync(path, ' '.repeat(1_000_000))],
  ['a folder', 'a folder', (path) => mkdirSync(path)],
  ['a link', 'a link to another place', (path) => symlinkSync(join(folder, 'elsewhere'), path)],
  ['a pipe', 'a pipe', (path) => spawnSync('mkfifo', [path])],
])('a lock file that is none (%s) is named as such, and left', async (_, found, make) => {
  make(lockPath(book));
  const error: Error = await lockBook(book).then(
    () => new Error('locked'),
    (reason) => reason,
  );
  expect(error.message).toContain(`${book}: found ${lockPath(book)}, ${found}`);
  expect(error.message).not.toContain('another bench');
  expect(readdirSync(folder)).toEqual(['engine.xlsx.lock']);
});

test('of many at once over a dead owner exactly one gets the book', async () => {
  for (let round = 0; round < 25; round++) {
    leaveDead(lockPath(book));
    const tries = await Promise.allSettled(Array.from({ length: 20 }, () => lockBook(book)));
    const [first, ...more] = tries.flatMap((tried) => (tried.status === 'fulfilled' ? [tried.value] : []));
    expect(more).toEqual([]);
    expect(first).toBeDefined();
    await first?.verify();
    await first?.release();
    expect(readdirSync(folder)).toEqual([]);
  }
});

test('a bench killed while it cleared a dead owner away is taken over too', async () => {
  leaveDead(lockPath(book));
  leaveDead(`${lockPath(book)}.clearing`);
  await (await lockBook(book)).release();
  expect(readdirSync(folder)).toEqual([]);
});

test('a lock that was taken away is noticed, and not given back', async () => {
  const lock = await lockBook(book);
  writeFileSync(lockPath(book), 'another');
  await expect(lock.verify()).rejects.toThrow('another bench');
  await lock.release();
  expect(readFileSync(lockPath(book), 'utf8')).toBe('another');
});
