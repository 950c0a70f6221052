/**
 * Which columns and sheets of a workbook are the program's own, from an earlier run.
 *
 * Columns are ours where our whole list stands together at the right end of the header row; a user's
 * own `Status` elsewhere stays the user's. Where the list is `Status` and `Why` alone, as a user may have typed them,
 * what stands below has to be words of ours. A sheet is ours where its last header is `Made by oilgap`.
 */

import { RESULT_HEADERS } from '../columns/result-headers.js';
import type { SheetModel } from '../workbook-model.js';
import { INPUT_SHEETS, type SheetName } from './input-sheets.js';
import { headerKey } from './names.js';
import { headerRowOf, headersOf } from './table.js';

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
export function hasBuriedColumns(name: SheetName, sheet: SheetModel): boolean {
  const ours = RESULT_HEADERS[name]?.map(headerKey);
  if (!ours || ours.length <= SHORT_LIST) return false;
  const headers = headersOf(sheet, headerRowOf(sheet)).map((header) => headerKey(header ?? ''));
  const end = ownColumnsOf(name, sheet)?.first ?? headers.length;
  return headers
    .slice(0, end)
    .some((_, first) =>
      ours.every((header, place) => first + place < end && headers[first + place] === header),
    );
}

/** Whether the sheet carries the header `Made by oilgap` in its last column. */
export function isMadeByProgram(sheet: SheetModel): boolean {
  return headerKey(headersOf(sheet, headerRowOf(sheet)).at(-1) ?? '') === headerKey(MADE_BY);
}

export function ownColumnsOf(name: SheetName, sheet: SheetModel): OwnColumns | undefined {
  const ours = RESULT_HEADERS[name];
  if (!ours) return undefined;
  const headers = headersOf(sheet, headerRowOf(sheet));
  const isWholeSheet = name === 'Fits' && isMadeByProgram(sheet);
  const end = isWholeSheet ? headers.length - 1 : headers.length;
  const first = end - ours.length;
  const stand =
    first >= 0 &&
    ours.every((header, place) => headerKey(headers[first + place] ?? '') === headerKey(header)) &&
    (ours.length > SHORT_LIST || holdsWords(sheet, first, TABLE_WORDS));
  if (stand) return { first, last: headers.length - 1, isWholeSheet };
  return isWholeSheet ? { first: end, last: end, isWholeSheet } : undefined;
}

/** The program's own columns of a sheet, by the sheet's own name. */
export function madeColumnsOf(sheet: SheetModel): OwnColumns | undefined {
  const name = inputSheetOf(sheet);
  return name && ownColumnsOf(name, sheet);
}

function inputSheetOf({ name }: SheetModel): SheetName | undefined {
  const names = Object.keys(INPUT_SHEETS) as SheetName[];
  return names.find((known) => headerKey(known) === headerKey(name));
}

/**
 * Forgets what an earlier run wrote, but for the headers: all of it is made anew, and of a long list it is much. Only
 * the formulas of users could look at it; where there is one, everything stays.
 */
export function forgetMadeCells(sheets: readonly SheetModel[]): void {
  const hasFormula = ({ rows }: SheetModel) =>
    rows.some((cells) => cells?.some((cell) => cell?.formula !== undefined));
  if (sheets.some((sheet) => !isMadeByProgram(sheet) && hasFormula(sheet))) return;
  for (const sheet of sheets) {
    const headerRow = headerRowOf(sheet);
    if (!inputSheetOf(sheet) && isMadeByProgram(sheet)) sheet.rows.length = headerRow + 1;
    const made = madeColumnsOf(sheet);
    if (!made) continue;
    sheet.rows.forEach((cells, row) => {
      if (row > headerRow && cells && cells.length > made.first) cells.length = made.first;
    });
  }
}
