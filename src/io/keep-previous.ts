/** Keeps the file that is about to be replaced, as `NAME.previous.xlsx` beside it. */
import { copyFile, link, open, readFile, rename, rm } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { forgetTemporary, noteTemporary } from './temporaries.js';
import { temporaryPath } from './temporary-names.js';

/** `bench/engine.previous.xlsx` for `bench/engine.xlsx`. */
export function previousPath(path: string): string {
  const ending = extname(path);
  return join(dirname(path), `${basename(path, ending)}.previous${ending}`);
}

/** Whether a book has the name of one that an earlier run kept. */
export function isPreviousName(path: string): boolean {
  return /\.previous\.xls[xm]$/i.test(path);
}

/** Whether a file holds just these bytes already. */
export async function holds(path: string, pieces: readonly Uint8Array[]): Promise<boolean> {
  return readFile(path).then(
    (old) => old.equals(Buffer.concat(pieces)),
    () => false,
  );
}

/**
 * Gives the file a second name, which stays where the first one gets another content. A previous file of an earlier
 * run is replaced, whole or not at all. Throws what the system throws.
 */
export async function keepPrevious(path: string): Promise<void> {
  const temporary = temporaryPath(dirname(path));
  await noteTemporary(temporary);
  try {
    await link(path, temporary).catch(() => copyWhole(path, temporary));
    await rename(temporary, previousPath(path));
    // Where both names were of one file already, renaming leaves both (POSIX rename).
    await rm(temporary, { force: true });
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => undefined);
    throw error;
  } finally {
    forgetTemporary(temporary);
  }
}

/** For disks without second names. */
async function copyWhole(from: string, to: string): Promise<void> {
  await copyFile(from, to);
  const handle = await open(to, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
