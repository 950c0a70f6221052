/**
 * The cells that an earlier run wrote into a user's sheet. Of our columns only rows that have a verdict of ours are the
 * program's: what the user typed below them or beside them stays.
 */

import { inputSheets } from '../input-sheets/index.js';
import { RowSet } from '../row-set.js';
import type { Cell, SheetModel } from '../workbook-model.js';
import { isBlank } from './blank-cell.js';
import { headerKey } from './names.js';
import {
  headerRowOf,
  isMadeByProgram,
  isOwnColumn,
  type OwnColumns,
  type OwnHeaders,
  ownColumnsOf,
} from './own-columns.js';
import { headersOf } from './read-header.js';
import { isStatusWord } from './status-words.js';

/** So many filled cells beside each other are results, whatever became of their Status. */
const LEAST_RESULTS = 3;

type Cells = readonly (Cell | undefined)[];

export interface MadeColumns extends OwnColumns {
  /** Whether the cells of a row in our columns are of an earlier run. */
  readonly isMadeRow: (cells: Cells) => boolean;
}

/** The program's own columns of a sheet, by the name that the user gave it. */
export function madeColumnsOf(sheet: SheetModel, ownHeaders: OwnHeaders): MadeColumns | undefined {
  const name = recordNameOf(sheet);
  const own = name === undefined ? undefined : ownColumnsOf(name, sheet, ownHeaders);
  return own && { ...own, isMadeRow: rowJudge(sheet, own) };
}

/** The record's name of a sheet that the records know. */
function recordNameOf({ name }: SheetModel): string | undefined {
  return inputSheets().find((known) => headerKey(known.name) === headerKey(name))?.name;
}

function rowJudge(sheet: SheetModel, own: OwnColumns): (cells: Cells) => boolean {
  if (own.isWholeSheet) return () => true;
  const columns: number[] = [];
  for (let column = own.first; column <= own.last; column++)
    if (isOwnColumn(own, column)) columns.push(column);
  const headers = headersOf(sheet, headerRowOf(sheet));
  const status = columns.findLast((column) => headerKey(headers[column] ?? '') === 'status');
  return (cells) => {
    if (status !== undefined && isStatusWord(cells[status]?.content?.value)) return true;
    if (cells.length <= own.first) return false;
    return columns.filter((column) => !isBlank(cells[column])).length >= LEAST_RESULTS;
  };
}

/** The rows below the header that have results of an earlier run in our columns. */
export function madeRowsOf(sheet: SheetModel, own: OwnColumns): RowSet {
  if (sheet.forgottenRows) return new RowSet(sheet.forgottenRows);
  const isMadeRow = rowJudge(sheet, own);
  const headerRow = headerRowOf(sheet);
  const rows: number[] = [];
  sheet.rows.forEach((cells, row) => {
    if (row > headerRow && isMadeRow(cells)) rows.push(row);
  });
  return new RowSet(rows);
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
    if (made) forgetRows(sheet, headerRow, made);
  }
}

function forgetRows(sheet: SheetModel, headerRow: number, made: MadeColumns): void {
  const forgotten: number[] = [];
  sheet.rows.forEach((cells, row) => {
    if (row <= headerRow || !cells || cells.length <= made.first || !made.isMadeRow(cells)) return;
    forgotten.push(row);
    if (!made.columns && cells.length <= made.last + 1) {
      cells.length = made.first;
      return;
    }
    for (let column = made.first; column <= made.last; column++) {
      if (isOwnColumn(made, column)) delete cells[column];
    }
  });
  sheet.forgottenRows = forgotten;
}
