/** A file that the bench keeps beside a book is a plain file of its own: nothing is written through it to another place. */
import type { Stats } from 'node:fs';
import { lstat } from 'node:fs/promises';

/** What stands at a path in place of a plain file, in words; undefined where nothing stands there, or such a file. */
export async function foreignKindAt(path: string): Promise<string | undefined> {
  try {
    return foreignKind(await lstat(path));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

export function foreignKind(stats: Stats): string | undefined {
  if (stats.isSymbolicLink()) return 'a link to another place';
  if (stats.isDirectory()) return 'a folder';
  if (stats.isFIFO()) return 'a pipe';
  return stats.isFile() ? undefined : 'a device';
}
