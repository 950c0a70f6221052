/** A file that is made and never replaces another. */
import { lstat } from 'node:fs/promises';
import { UserError } from '../engine/user-error.js';
import { writeFileWhole } from './write-file.js';

/** Throws a UserError where something of that name is there already, or the system refuses. */
export async function writeNewFile(path: string, bytes: Uint8Array): Promise<void> {
  const isThere = await lstat(path).then(
    () => true,
    () => false,
  );
  if (isThere) {
    throw new UserError(
      `${path}: found a file of that name already; expected a new one, since it may hold readings; choose another name.`,
    );
  }
  await writeFileWhole(path, bytes);
}
