/**
 * Where the results of a sheet stand: to the right of all that the sheet holds in the rows of its table, and where
 * there is no room, or something of the user's is in the way, on a sheet of the program's own.
 */

import { RowSet } from '../row-set.js';
import {
  type CellBounds,
  cellAddress,
  columnLetters,
  type ListTable,
  rangeText,
  SHEET_COLUMNS,
} from '../workbook-model.js';
import { isBlank } from './blank-cell.js';
import { dataRowsOf, listOver } from './data-rows.js';
import { madeRowsOf } from './made-cells.js';
import { headerKey } from './names.js';
import type { OwnColumns } from './own-columns.js';
import type { Table } from './table.js';

export interface Placement {
  /** The columns of the results in the order of their list; undefined where they stand on a sheet of the program's own. */
  readonly columns: readonly number[] | undefined;
  /** What is in the way of the columns, as messages say it. */
  readonly obstacle?: string;
  /** The user's table (ListObject) that is to reach over the results. */
  readonly list?: ListTable | undefined;
  /** Why a table of the user's that ends where the results begin cannot reach over them. */
  readonly listFault?: string | undefined;
}

/** @param headers of the results, in the order of their list */
export function placeResults(
  table: Table,
  own: OwnColumns | undefined,
  headers: readonly string[],
): Placement {
  const list = listOver(table);
  const columns = own?.columns ?? headers.map((_, at) => (own?.first ?? firstFreeColumn(table)) + at);
  if (columns.at(-1)! >= SHEET_COLUMNS) {
    const room = `columns ${columnLetters(columns[0]!)} and on`;
    const obstacle = `no room for ${columns.length} columns of results up to column ${columnLetters(SHEET_COLUMNS - 1)}`;
    return {
      columns: undefined,
      obstacle: columns[0]! < SHEET_COLUMNS ? `${obstacle} in ${room}` : obstacle,
    };
  }
  const obstacle = obstacleIn(table, own, columns, list);
  if (obstacle !== undefined) return { columns: undefined, obstacle };
  if (!list || list.bounds.right < columns[0]! - 1) return { columns };
  // Where the user has changed our columns, a table that reaches over them has their names.
  if (own?.columns && list.bounds.right >= columns.at(-1)!) return { columns };
  const listFault = faultOf(list, columns, headers);
  return listFault === undefined ? { columns, list } : { columns, listFault };
}

/** One past the last cell that is not blank in any row from the header to the last that is read. */
export function firstFreeColumn(table: Table): number {
  const { sheet, headerRow } = table;
  const bottom = lastRow(table);
  let first = table.width;
  for (let row = headerRow; row <= bottom; row++) {
    const cells = sheet.rows[row];
    if (!cells) continue;
    let end = cells.length;
    while (end > first && isBlank(cells[end - 1])) end--;
    first = Math.max(first, end);
  }
  for (const bounds of heldBounds(table)) {
    if (bounds.top <= bottom && bounds.bottom >= headerRow) first = Math.max(first, bounds.right + 1);
  }
  return first;
}

function lastRow(table: Table): number {
  return Math.max(table.headerRow, dataRowsOf(table).at(-1) ?? 0, listOver(table)?.bounds.bottom ?? 0);
}

/** What the sheet holds besides single cells. */
function heldBounds({ sheet }: Table): CellBounds[] {
  return [...(sheet.lists ?? []), ...(sheet.blocks ?? [])].map(({ bounds }) => bounds);
}

/** What of the user's stands where results are to be written. */
function obstacleIn(
  table: Table,
  own: OwnColumns | undefined,
  columns: readonly number[],
  list: ListTable | undefined,
): string | undefined {
  const { sheet, headerRow } = table;
  const rows = [headerRow, ...dataRowsOf(table)];
  const written = new RowSet(rows);
  const isWritten = ({ top, bottom, left, right }: CellBounds) =>
    columns.some((column) => left <= column && column <= right) && written.hasBetween(top, bottom);
  const block = sheet.blocks?.find(({ bounds }) => isWritten(bounds));
  if (block) return `the ${block.kind} ${rangeText(block.bounds)} in the way of the results`;
  const other = sheet.lists?.find((known) => known !== list && isWritten(known.bounds));
  if (other) return `the table over ${rangeText(other.bounds)} in the way of the results`;
  if (!own) return undefined;
  const made = madeRowsOf(sheet, own);
  const isOurs = (column: number) => own.columns !== undefined || column <= own.last;
  for (const row of rows) {
    const cells = sheet.rows[row];
    if (!cells || cells.length <= columns[0]!) continue;
    const areOurs = row === headerRow || made.has(row);
    const typed = columns.find((column) => !(areOurs && isOurs(column)) && !isBlank(cells[column]));
    if (typed !== undefined) return `a cell of yours, ${cellAddress(row, typed)}, in the way of the results`;
  }
  return undefined;
}

/** A table's columns have names of their own, and stand one beside the other. */
function faultOf(
  list: ListTable,
  columns: readonly number[],
  headers: readonly string[],
): string | undefined {
  if (!list.isPlain) return 'its rows come from elsewhere';
  if (columns.some((column, at) => column !== columns[0]! + at)) return 'columns of yours stand between them';
  const others = list.columns.slice(0, columns[0]! - list.bounds.left).map(headerKey);
  const twice = headers.find((header) => others.includes(headerKey(header)));
  return twice === undefined ? undefined : `it has a column ${twice} of its own`;
}
