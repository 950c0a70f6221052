/** Opens what a user names as a book: an .xlsx or .xlsm file, or a folder of .csv files. */
import { stat } from 'node:fs/promises';
import { extname } from 'node:path';
import { UserError } from '../engine/user-error.js';
import type { WorkbookModel } from '../engine/workbook-model.js';
import { orUnreadable, readBytes } from './csv/read-bytes.js';
import { readCsvFolder } from './csv/read-folder.js';
import { readWorkbookPackage } from './xlsx/read-package.js';

export interface OpenedFile {
  readonly model: WorkbookModel;
  readonly kind: 'package' | 'folder';
  /** The file's own bytes; undefined for a folder. */
  readonly bytes: Uint8Array | undefined;
}

const EXPECTED = 'expected an .xlsx or .xlsm workbook or a folder of .csv files';

/** Throws a UserError where the path leads to no book that can be read. */
export async function openFile(path: string): Promise<OpenedFile> {
  const stats = await orUnreadable(stat(path), path);
  if (stats.isDirectory()) {
    return { model: await readCsvFolder(path, path), kind: 'folder', bytes: undefined };
  }
  if (!stats.isFile()) {
    throw new UserError(`${path}: found neither a file nor a folder; ${EXPECTED}; give the path of one.`);
  }
  if (stats.size === 0) {
    throw new UserError(`${path}: found an empty file; ${EXPECTED}; save or copy it again.`);
  }
  const ending = extname(path).toLowerCase();
  if (ending === '.csv') {
    throw new UserError(
      `${path}: found a single .csv file; expected the folder that holds it and the other sheets; give that folder.`,
    );
  }
  const bytes = await readBytes(path, path);
  if (ending === '.xlsx' || ending === '.xlsm') {
    return {
      model: await readWorkbookPackage(bytes, path, { withMadeCells: false }),
      kind: 'package',
      bytes,
    };
  }
  throw await otherEnding(path, bytes, ending);
}

/** What the bytes are says more than the ending; where they say nothing, the ending does. */
async function otherEnding(path: string, bytes: Uint8Array, ending: string): Promise<UserError> {
  const found = `a file ${ending === '' ? 'without an ending' : `with the ending ${ending}`}`;
  if (!isText(bytes)) {
    try {
      await readWorkbookPackage(bytes, path);
    } catch (error) {
      if (error instanceof UserError) return error;
      throw error;
    }
  }
  return new UserError(`${path}: found ${found}; ${EXPECTED}; save it as .xlsx in the spreadsheet program.`);
}

/** Whether the first bytes have no zero and none above ASCII, and so say nothing of the file's kind. */
function isText(bytes: Uint8Array): boolean {
  return bytes.subarray(0, 64).every((byte) => byte >= 9 && byte < 127) && bytes[0] !== 0x3c;
}
