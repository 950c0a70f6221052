/** The bytes of a file of the user's. */
import { readFile, stat } from 'node:fs/promises';
import { UserError } from '../../engine/user-error.js';
import { LIMITS, megabytes } from '../gate/limits.js';

const FOUND: Readonly<Record<string, string>> = {
  ENOENT: 'no file or folder of that name',
  ENOTDIR: 'a file where a folder of the path was meant',
  EACCES: 'no permission to read it',
  EPERM: 'no permission to read it',
  EBUSY: 'that another program holds it',
  EISDIR: 'a folder',
  ELOOP: 'symbolic links that lead in a circle',
  ENAMETOOLONG: 'a name that is too long',
  ERR_FS_FILE_TOO_LARGE: 'more than 2 GiB',
};

const EXPECTED =
  'expected a workbook or folder that can be read; check its name and its permissions, then run again.';

/** Throws a UserError where the file cannot be read or is too large. */
export async function readBytes(path: string, label: string): Promise<Uint8Array> {
  const { size } = await orUnreadable(stat(path), label);
  if (size > LIMITS.fileBytes) {
    throw new UserError(
      `${label}: found a file of ${megabytes(size)}; expected at most ${megabytes(LIMITS.fileBytes)}; split it or take out what is not needed, and run again.`,
    );
  }
  return orUnreadable(readFile(path), label);
}

/** The promise's value; where the system refused, a UserError that says why. */
export async function orUnreadable<Value>(reading: Promise<Value>, label: string): Promise<Value> {
  try {
    return await reading;
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    throw new UserError(`${label}: found ${FOUND[code] ?? `that it cannot be read (${code})`}; ${EXPECTED}`, {
      cause: error,
    });
  }
}
