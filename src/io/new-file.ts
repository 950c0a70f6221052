/** A file that is made and never replaces another. */
import { lstat } from 'node:fs/promises';
import { UserError } from '../engine/user-error.js';
import { writeFileWhole } from './write-file.js';

/** @throws UserError where something of that name is already there. */
export async function refuseExistingFile(path: string): Promise<void> {
  const isThere = await lstat(path).then(
    () => true,
    () => false,
  );
  if (isThere) {
    throw new UserError(`${path} is already there; choose another name.`);
  }
}

/** @throws UserError where something of that name is already there, or the system refuses. */
export async function writeNewFile(path: string, bytes: Uint8Array): Promise<void> {
  await refuseExistingFile(path);
  await writeFileWhole(path, bytes);
}
