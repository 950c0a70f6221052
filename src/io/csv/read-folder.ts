/** A folder of .csv files as a workbook, one sheet a file. */
import type { Stats } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { nameKey } from '../../engine/book/names.js';
import { isKnownSheet } from '../../engine/input-sheets/index.js';
import { UserError } from '../../engine/user-error.js';
import type { SheetModel, WorkbookModel } from '../../engine/workbook-model.js';
import { refuseWideLayout } from '../gate/sheet-layout.js';
import { refuseSheetName } from '../gate/sheet-names.js';
import { decodeText } from './decode-text.js';
import { parseCsv } from './parse-csv.js';
import { orUnreadable, readBytes } from './read-bytes.js';

/**
 * Every .csv file of the folder itself, by name; hidden files and other endings are passed over.
 *
 * Throws a UserError where there is none, two make the same sheet, one cannot be read as text, or what has the name of a
 * sheet is no file.
 *
 * @param label what messages call the folder
 */
export async function readCsvFolder(folder: string, label: string): Promise<WorkbookModel> {
  const sheets: SheetModel[] = [];
  const taken = new Map<string, string>();
  for (const file of await csvFiles(folder, label)) {
    const name = file.slice(0, -'.csv'.length).trim();
    refuseSheetName(name, join(label, file));
    const other = taken.get(nameKey(name));
    if (other !== undefined) {
      throw new UserError(
        `${label}: found ${other} and ${file}, which make the same sheet; expected one file a sheet; rename one or take it out.`,
      );
    }
    taken.set(nameKey(name), file);
    sheets.push(await readSheet(join(folder, file), name, join(label, file)));
  }
  refuseWideLayout(sheets, label);
  return { file: label, sheets };
}

export async function csvFiles(folder: string, label: string): Promise<string[]> {
  const files: string[] = [];
  for (const name of (await orUnreadable(readdir(folder), label)).sort()) {
    if (!/^[^.].*\.csv$/i.test(name)) continue;
    const stats = await orUnreadable(stat(join(folder, name)), join(label, name));
    if (stats.isFile()) files.push(name);
    else if (isKnownSheet(name.slice(0, -'.csv'.length))) {
      throw new UserError(
        `${join(label, name)}: found ${kindOf(stats)}; expected a .csv file; take it out of the folder, or put the sheet's file in its place.`,
      );
    }
  }
  if (files.length === 0) {
    throw new UserError(
      `${label}: found a folder without a .csv file; expected one .csv file a sheet, such as Journals.csv; save the sheets there as CSV, or give an .xlsx workbook.`,
    );
  }
  return files;
}

function kindOf(stats: Stats): string {
  if (stats.isDirectory()) return 'a folder of that name';
  if (stats.isFIFO()) return 'a pipe';
  return stats.isSocket() ? 'a socket' : 'a device';
}

async function readSheet(path: string, name: string, label: string): Promise<SheetModel> {
  const text = decodeText(await readBytes(path, label));
  if (text === undefined) {
    throw new UserError(
      `${label}: found bytes that are no text; expected a .csv file in UTF-8, Windows-1252, or UTF-16 with its byte order mark; save it as "CSV UTF-8".`,
    );
  }
  return parseCsv(text, name, label);
}
