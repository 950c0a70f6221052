/** Which bytes a result was made from, so that it can be traced to its readings. */
import { createHash } from 'node:crypto';
import { basename, join } from 'node:path';
import { readBytes } from './csv/read-bytes.js';
import { csvFiles } from './csv/read-folder.js';
import type { OpenedFile } from './open-file.js';

/** A file of the input and the SHA-256 of its bytes, as `sha256sum` prints it. */
export interface InputFile {
  readonly name: string;
  readonly sha256: string;
}

/** One entry for a workbook, one a sheet for a folder of .csv files. */
export async function inputFiles(path: string, { bytes }: OpenedFile): Promise<InputFile[]> {
  if (bytes) return [{ name: basename(path), sha256: sha256(bytes) }];
  const files = await csvFiles(path, path);
  return Promise.all(
    files.map(async (name) => {
      const file = join(path, name);
      return { name, sha256: sha256(await readBytes(file, file)) };
    }),
  );
}

function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
