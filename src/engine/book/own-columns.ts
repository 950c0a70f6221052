/**
 * Which columns and sheets of a workbook are the program's own, from an earlier run.
 *
 * Columns are ours where our whole list stands together at the right end of the header row; a user's
 * own `Status` elsewhere stays the user's. Where the list is `Status` and `Why` alone, as a user may have typed them,
 * what stands below has to be words of ours. Where the user has put columns between ours or renamed one of them, the rest
 * of the list says which they are. A sheet is ours where its last header is `Made by oilgap`.
 */

import { FITS } from '../input-sheets/fits.js';
import { inputSheet, inputSheets } from '../input-sheets/index.js';
import type { SheetModel, WorkbookModel } from '../workbook-model.js';
import { isBlank } from './blank-cell.js';
import { headerKey } from './names.js';
import { findHeaderRow, HeaderReader, headersOf, isKnown } from './read-header.js';

/**
 * The headers that the program writes at the right end of a sheet, by the sheet's name in the records: the list of this
 * version, then those of earlier ones. Empty for a sheet that gets none.
 */
export type OwnHeaders = (sheet: string) => readonly (readonly string[])[];

export const MADE_BY = 'Made by oilgap';

export interface OwnColumns {
  readonly first: number;
  readonly last: number;
  /** Each of our list, where they do not stand as the program wrote them: columns of the user's between them are not ours. */
  readonly columns?: readonly number[];
  /** Whether the whole sheet is the program's, made anew at every run. */
  readonly isWholeSheet: boolean;
}

/** `Status` and `Why`: likely headers of a user's, too. */
const SHORT_LIST = 2;
const TABLE_WORDS: readonly unknown[] = ['consistent', 'check the source', ''];

/** Whether all cells of a column that stand beside something are blank or one of the words. */
function holdsWords(
  sheet: SheetModel,
  headerRow: number,
  column: number,
  words: readonly unknown[],
): boolean {
  return sheet.rows.slice(headerRow + 1).every((cells) => {
    const content = cells?.[column]?.content;
    if (content === undefined || words.includes(content.value)) return true;
    return cells!.slice(0, column).every(isBlank);
  });
}

/** Where the headers of any sheet stand: one that a record knows may have title rows above them. */
export function headerRowOf(sheet: SheetModel): number {
  const record = inputSheets().find(({ name }) => headerKey(name) === headerKey(sheet.name));
  return findHeaderRow(sheet, record).row;
}

/** Whether the sheet carries the header `Made by oilgap` in its last column. */
export function isMadeByProgram(sheet: SheetModel): boolean {
  return headerKey(headersOf(sheet, headerRowOf(sheet)).at(-1) ?? '') === headerKey(MADE_BY);
}

/** The program's own columns in a sheet; undefined where it has none. */
export function ownColumnsOf(
  name: string,
  sheet: SheetModel,
  ownHeaders: OwnHeaders,
): OwnColumns | undefined {
  const lists = ownHeaders(name);
  if (lists.length === 0) return undefined;
  const headerRow = headerRowOf(sheet);
  const headers = headersOf(sheet, headerRow);
  const isWholeSheet = name === FITS.name && isMadeByProgram(sheet);
  const end = isWholeSheet ? headers.length - 1 : headers.length;
  for (const ours of lists) {
    const first = end - ours.length;
    const stand =
      first >= 0 &&
      ours.every((header, place) => headerKey(headers[first + place] ?? '') === headerKey(header)) &&
      (ours.length > SHORT_LIST || holdsWords(sheet, headerRow, first, TABLE_WORDS));
    if (stand) return { first, last: headers.length - 1, isWholeSheet };
  }
  if (isWholeSheet) return { first: end, last: end, isWholeSheet };
  const columns = changedPlaces(name, lists[0]!, headers);
  return columns && { first: columns[0]!, last: columns.at(-1)!, columns, isWholeSheet };
}

/** Whether a column is the program's own. */
export function isOwnColumn({ first, last, columns }: OwnColumns, column: number): boolean {
  return columns ? columns.includes(column) : first <= column && column <= last;
}

/** So many columns of the user's between ours, or of ours with another header, leave no doubt which are ours. */
const MOST_CHANGES = 3;

/** Where our columns stand though the user has put others between them or renamed one; undefined where that is not sure. */
function changedPlaces(
  name: string,
  ours: readonly string[],
  headers: readonly (string | undefined)[],
): number[] | undefined {
  if (ours.length <= SHORT_LIST) return undefined;
  const keys = Array.from(headers, (header) => headerKey(header ?? ''));
  return withOthersBetween(ours.map(headerKey), keys) ?? withRenamed(name, ours, headers);
}

/** All of our headers in their order, the last at the right end. */
function withOthersBetween(ours: readonly string[], keys: readonly string[]): number[] | undefined {
  const places: number[] = [];
  let at = keys.length - 1;
  if (keys[at] !== ours.at(-1)) return undefined;
  for (const header of ours.toReversed()) {
    while (at >= 0 && keys[at] !== header) at--;
    if (at < 0) return undefined;
    places.unshift(at--);
  }
  return keys.length - places[0]! - ours.length <= MOST_CHANGES ? places : undefined;
}

/** Our list at the right end, some within it under another name; the outermost would not be sure. */
function withRenamed(
  name: string,
  ours: readonly string[],
  headers: readonly (string | undefined)[],
): number[] | undefined {
  const first = headers.length - ours.length;
  if (first < 0) return undefined;
  const renamed = ours.flatMap((header, place) => {
    const found = headers[first + place] ?? '';
    return headerKey(found) === headerKey(header) ? [] : [{ place, found }];
  });
  const isSure =
    renamed.length > 0 &&
    renamed.length <= MOST_CHANGES - 1 &&
    renamed.every(({ place, found }) => place > 0 && place < ours.length - 1 && !isRead(name, found));
  return isSure ? ours.map((_, place) => first + place) : undefined;
}

/** Whether a header is one that the sheet is read by. */
function isRead(name: string, header: string): boolean {
  const record = inputSheet(name);
  return record !== undefined && isKnown(new HeaderReader(record).read(header));
}

/** A sheet of that name that is not the program's stays the user's. */
export function freeName(name: string, { sheets }: WorkbookModel): string {
  const taken = sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  return taken && !isMadeByProgram(taken) ? `${name} (oilgap)` : name;
}
