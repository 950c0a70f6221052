/**
 * Which columns and sheets of a workbook are the program's own, from an earlier run.
 *
 * Columns are ours where our whole list stands together at the right end of the header row; a user's
 * own `Status` elsewhere stays the user's. A sheet is ours where its last header is `Made by oilgap`.
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
    ours.every((header, place) => headerKey(headers[first + place] ?? '') === headerKey(header));
  if (stand) return { first, last: headers.length - 1, isWholeSheet };
  return isWholeSheet ? { first: end, last: end, isWholeSheet } : undefined;
}

/** The program's own columns of a sheet, by the sheet's own name. */
export function madeColumnsOf(sheet: SheetModel): OwnColumns | undefined {
  const names = Object.keys(INPUT_SHEETS) as SheetName[];
  const name = names.find((known) => headerKey(known) === headerKey(sheet.name));
  return name && ownColumnsOf(name, sheet);
}
