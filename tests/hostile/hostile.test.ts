/** Every hostile shape that is quick to make gets one clear sentence, or is read without harm. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readBook } from '../../src/engine/run-book.js';
import { UserError } from '../../src/engine/user-error.js';
import { openFile } from '../../src/io/open-file.js';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { writtenOf } from '../validator/written-of.js';
import { HOSTILE_SHAPES } from './shapes.js';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'oilgap-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const read = async (path: string) => readBook((await openFile(path)).model);

test.each(HOSTILE_SHAPES.filter(({ isLarge }) => !isLarge))('$name', async ({ make, says }) => {
  const path = await make(await mkdtemp(join(folder, 'shape-')));
  if (!says) {
    expect((await read(path)).parts.of('Journals').map(({ name }) => name)).toEqual(['1']);
    // What is written of it is read again.
    if (path.endsWith('.xlsx')) {
      const after = await writtenOf(await readFile(path), path);
      const again = readBook(await readWorkbookPackage(after, path, { withMadeCells: false }));
      expect(again.parts.of('Journals').map(({ name }) => name)).toEqual(['1']);
    }
    return;
  }
  const error = await read(path).then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(UserError);
  const { message } = error as UserError;
  expect(message).toMatch(says);
  expect(message.startsWith(path)).toBe(true);
  expect(message).not.toContain('\n');
});
