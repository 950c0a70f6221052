/**
 * Which columns and sheets of a workbook are the program's own, from an earlier run.
 *
 * Columns are ours where our whole list stands together at the right end of the header row; a user's
 * own `Status` elsewhere stays the user's. Where the list is `Status` and `Why` alone, as a user may have typed them,
 * what stands below has to be words of ours. A sheet is ours where its last header is `Made by oilgap`.
 */

import { FITS } from '../input-sheets/fits.js';
import { inputSheets } from '../input-sheets/index.js';
import type { SheetModel } from '../workbook-model.js';
import { headerKey } from './names.js';
import { headerRowOf, headersOf } from './table.js';

/**
 * The headers that the program writes at the right end of a sheet, by the sheet's name in the records: the list of this
 * version, then those of earlier ones. Empty for a sheet that gets none.
 */
export type OwnHeaders = (sheet: string) => readonly (readonly string[])[];

export const MADE_BY = 'Made by oilgap';

export interface OwnColumns {
  readonly first: number;
  readonly last: number;
  /** Whether the whole sheet is the program's, made anew at every run. */
  readonly isWholeSheet: boolean;
}

/** `Status` and `Why`: likely headers of a user's, too. */
const SHORT_LIST = 2;
const TABLE_WORDS: readonly unknown[] = ['consistent', 'check the source', ''];

/** Whether all cells of a column below its header are blank or one of the words. */
function holdsWords(sheet: SheetModel, column: number, words: readonly unknown[]): boolean {
  return sheet.rows.slice(headerRowOf(sheet) + 1).every((cells) => {
    const content = cells?.[column]?.content;
    return content === undefined || words.includes(content.value);
  });
}

/**
 * Whether our whole list stands in the header row, but not at its right end: columns that a user has put behind it make
 * it theirs.
 */
export function hasBuriedColumns(name: string, sheet: SheetModel, ownHeaders: OwnHeaders): boolean {
  const headers = headersOf(sheet, headerRowOf(sheet)).map((header) => headerKey(header ?? ''));
  const end = ownColumnsOf(name, sheet, ownHeaders)?.first ?? headers.length;
  return ownHeaders(name).some((ours) => {
    const keys = ours.length > SHORT_LIST ? ours.map(headerKey) : [];
    return (
      keys.length > 0 &&
      headers
        .slice(0, end)
        .some((_, first) => keys.every((key, at) => first + at < end && headers[first + at] === key))
    );
  });
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
  const headers = headersOf(sheet, headerRowOf(sheet));
  const isWholeSheet = name === FITS.name && isMadeByProgram(sheet);
  const end = isWholeSheet ? headers.length - 1 : headers.length;
  for (const ours of lists) {
    const first = end - ours.length;
    const stand =
      first >= 0 &&
      ours.every((header, place) => headerKey(headers[first + place] ?? '') === headerKey(header)) &&
      (ours.length > SHORT_LIST || holdsWords(sheet, first, TABLE_WORDS));
    if (stand) return { first, last: headers.length - 1, isWholeSheet };
  }
  return isWholeSheet ? { first: end, last: end, isWholeSheet } : undefined;
}

/** The program's own columns of a sheet, by the name that the user gave it. */
export function madeColumnsOf(sheet: SheetModel, ownHeaders: OwnHeaders): OwnColumns | undefined {
  const name = recordNameOf(sheet);
  return name === undefined ? undefined : ownColumnsOf(name, sheet, ownHeaders);
}

/** The record's name of a sheet that the records know. */
function recordNameOf({ name }: SheetModel): string | undefined {
  return inputSheets().find((known) => headerKey(known.name) === headerKey(name))?.name;
}

/**
 * Forgets what an earlier run wrote, except the headers: all of it is made anew, and of a long list it is much. Only
 * the formulas of users could look at it; where there is one, everything stays.
 */
export function forgetMadeCells(sheets: readonly SheetModel[], ownHeaders: OwnHeaders): void {
  const hasFormula = ({ rows }: SheetModel) =>
    rows.some((cells) => cells?.some((cell) => cell?.formula !== undefined));
  if (sheets.some((sheet) => !isMadeByProgram(sheet) && hasFormula(sheet))) return;
  for (const sheet of sheets) {
    const headerRow = headerRowOf(sheet);
    if (recordNameOf(sheet) === undefined && isMadeByProgram(sheet)) sheet.rows.length = headerRow + 1;
    const made = madeColumnsOf(sheet, ownHeaders);
    if (!made) continue;
    sheet.rows.forEach((cells, row) => {
      if (row > headerRow && cells && cells.length > made.first) cells.length = made.first;
    });
  }
}
