/** Writes a file whole or not at all: whoever reads it sees the old bytes or the new ones. */
import {
  access,
  constants,
  type FileHandle,
  lstat,
  mkdir,
  open,
  readlink,
  realpath,
  rename,
  rm,
  stat,
} from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { UserError } from '../engine/user-error.js';
import { holds, keepPrevious } from './keep-previous.js';
import { forgetTemporary, noteTemporary } from './temporaries.js';
import { clearTemporaries, temporaryPath } from './temporary-names.js';

/** As many links as systems themselves follow. */
const MOST_LINKS = 40;

const NO_PERMISSION = [
  'no permission to write it, or another program that holds it',
  'close it elsewhere, or choose another place',
] as const;

/** What was found and what to do, by the system's code. */
const REFUSALS: Readonly<Record<string, readonly [string, string]>> = {
  ENOENT: ['no such folder', 'make the folder first, or choose another'],
  ENOTDIR: ['a file where a folder of the path was meant', 'choose another folder'],
  EEXIST: ['a file where a folder was meant', 'choose another folder'],
  EISDIR: ['a folder of that name', 'choose another name'],
  EACCES: NO_PERMISSION,
  EPERM: NO_PERMISSION,
  EBUSY: NO_PERMISSION,
  EROFS: ['a disk that is read-only', 'choose another folder'],
  ENOSPC: ['a full disk', 'free some space, or choose another disk'],
  EDQUOT: ['that your share of the disk is used up', 'free some space, or choose another disk'],
  EFBIG: ['that the disk takes no file of this size', 'choose another disk'],
  ELOOP: ['symbolic links that lead in a circle', 'choose another name'],
  ENAMETOOLONG: ['a name that is too long', 'choose a shorter one'],
};

/**
 * Writes a temporary file beside the target, flushes it to the disk and renames it. A symbolic link stays and its
 * target is written; a file that was there before keeps its permissions, and where wanted is kept beside it. The bytes
 * may come in pieces, one behind the other. Temporary files that killed runs left in the folder are removed first.
 *
 * Throws a UserError where the system refuses; the target is then as it was, and the temporary file is gone.
 */
export async function writeFileWhole(
  path: string,
  bytes: Uint8Array | readonly Uint8Array[],
  { isPreviousKept = false } = {},
): Promise<void> {
  try {
    const target = await linkTarget(path);
    await clearTemporaries(dirname(target));
    const mode = await modeOfFormer(target, path);
    const isKept = isPreviousKept && mode !== undefined;
    const pieces = bytes instanceof Uint8Array ? [bytes] : bytes;
    // The same again is no reason to lose the one before.
    if (isKept && (await holds(target, pieces))) return;
    await replaceFile(target, pieces, mode, isKept);
  } catch (error) {
    throw refusal(error, path);
  }
}

/** Makes a folder and those above it, if they are not there. */
export async function makeFolder(path: string): Promise<void> {
  try {
    await mkdir(path, { recursive: true });
  } catch (error) {
    throw refusal(error, path);
  }
}

/** Where the path's links lead, also where nothing is there yet. */
async function linkTarget(path: string): Promise<string> {
  let target = path;
  for (let links = 0; links <= MOST_LINKS; links += 1) {
    const stats = await orAbsent(lstat(target));
    if (!stats?.isSymbolicLink()) return target;
    target = resolve(await realpath(dirname(target)), await readlink(target));
  }
  throw Object.assign(new Error('too many links'), { code: 'ELOOP' });
}

/** The permissions of the file that is to be replaced. A file that is write-protected is meant to stay. */
async function modeOfFormer(target: string, path: string): Promise<number | undefined> {
  const stats = await orAbsent(stat(target));
  if (!stats) return undefined;
  if (stats.isDirectory()) throw Object.assign(new Error('a folder'), { code: 'EISDIR' });
  if (!stats.isFile()) {
    throw new UserError(
      `${path}: found a device or pipe; expected a place for a file; choose another name. Nothing was written.`,
    );
  }
  await access(target, constants.W_OK);
  await refuseHeld(target, path);
  return stats.mode & 0o777;
}

/** Whoever has it open elsewhere would later save the old content over the new. */
async function refuseHeld(target: string, path: string): Promise<void> {
  for (const lock of [`.~lock.${basename(target)}#`, `~$${basename(target)}`]) {
    if (!(await orAbsent(lstat(join(dirname(target), lock))))) continue;
    throw new UserError(
      `${path}: found that a spreadsheet program has it open (the file ${lock} says so); expected a closed workbook; close it there, or delete that file if it was left behind. Nothing was written.`,
    );
  }
}

async function replaceFile(
  target: string,
  pieces: readonly Uint8Array[],
  mode: number | undefined,
  isPreviousKept: boolean,
): Promise<void> {
  const folder = dirname(target);
  const temporary = temporaryPath(folder);
  await noteTemporary(temporary);
  try {
    const handle = await open(temporary, 'wx');
    await fill(handle, pieces, mode);
    if (isPreviousKept) await keepPrevious(target);
    await rename(temporary, target);
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => undefined);
    throw error;
  } finally {
    forgetTemporary(temporary);
  }
  await flushFolder(folder);
}

async function fill(
  handle: FileHandle,
  pieces: readonly Uint8Array[],
  mode: number | undefined,
): Promise<void> {
  try {
    // Each goes behind the one before.
    for (const piece of pieces) await handle.writeFile(piece);
    if (mode !== undefined) await handle.chmod(mode);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Makes the new name last. Systems that cannot flush a folder keep it anyway. */
async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined);
  await handle?.sync().catch(() => undefined);
  await handle?.close().catch(() => undefined);
}

async function orAbsent<Value>(looking: Promise<Value>): Promise<Value | undefined> {
  try {
    return await looking;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

function refusal(error: unknown, path: string): unknown {
  const code = (error as NodeJS.ErrnoException).code;
  if (error instanceof UserError || code === undefined) return error;
  const [found, remedy] = REFUSALS[code] ?? [`that the system refused (${code})`, 'choose another place'];
  return new UserError(
    `${path}: found ${found}; expected a place where the file can be written; ${remedy}. Nothing was written.`,
    { cause: error },
  );
}
