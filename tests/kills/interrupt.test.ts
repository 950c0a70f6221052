/** Ctrl-C and a request to end leave the book as it was or whole, and nothing beside it. */
import { once } from 'node:events';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startGroup } from './kill.js';

const INPUT = 'workbooks/one-engine.xlsx';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.skipIf(process.platform === 'win32').each([
  ['SIGINT', 60],
  ['SIGTERM', 200],
] as const)('%s after %i ms', async (signal, milliseconds) => {
  const book = join(folder, `${signal}.xlsx`);
  copyFileSync(INPUT, book);
  const child = startGroup(['dist/src/commands/main.js', 'check', book, '--in-place']);
  child.stdout!.resume();
  const ended = once(child, 'exit');
  await wait(milliseconds);
  // As a terminal does: to the program and to all that it started.
  process.kill(-child.pid!, signal);
  const [code, by] = await ended;
  expect([code, by]).toEqual([null, signal]);
  expect(readFileSync(book).equals(readFileSync(INPUT))).toBe(true);
  expect(readdirSync(folder).filter((name) => name.endsWith('.tmp'))).toEqual([]);
});
