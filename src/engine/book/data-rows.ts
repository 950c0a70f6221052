/**
 * Which rows of a table are read. Of a sheet of parts only rows that hold a part: what a sheet holds besides (totals, a
 * mean under the readings, a signature, a remark) is left out, and said.
 */
import { isPartSheet } from '../input-sheets/index.js';
import { columnsOf } from '../input-sheets/input-sheet.js';
import type { CellBounds, ListTable } from '../workbook-model.js';
import { isOverRowsAbove } from './rows-above.js';
import { isBlank, type Table } from './table.js';

export interface DataRows {
  readonly rows: readonly number[];
  /** Rows with something under a header that is read, which hold no part. */
  readonly leftOut: readonly number[];
}

/** The sheet's cells do not change while its table is read. */
const known = new WeakMap<Table, DataRows>();

/** Rows below the header that are read, from the top. */
export function dataRowsOf(table: Table): readonly number[] {
  return foundRows(table).rows;
}

/** Rows that hold no part though something stands in them. */
export function leftOutOf(table: Table): readonly number[] {
  return foundRows(table).leftOut;
}

/** The user's table (ListObject) whose header is that of the sheet. */
export function listOver({ sheet, headerRow, columns }: Table): ListTable | undefined {
  const [first] = columns.values();
  return sheet.lists?.find(
    ({ bounds, hasHeader }) =>
      hasHeader && bounds.top === headerRow && first && isWithin(bounds, first.column),
  );
}

const isWithin = ({ left, right }: CellBounds, column: number) => left <= column && column <= right;

function foundRows(table: Table): DataRows {
  const found = known.get(table) ?? findRows(table);
  known.set(table, found);
  return found;
}

function findRows(table: Table): DataRows {
  const { sheet, headerRow, record } = table;
  const columns = [...table.columns.values(), ...table.readingColumns].map(({ column }) => column);
  const filled: number[] = [];
  sheet.rows.forEach((cells, row) => {
    if (row > headerRow && columns.some((column) => !isBlank(cells[column]))) filled.push(row);
  });
  if (sheet.leftOut) return parted(filled, (row) => !sheet.leftOut!.includes(row));
  const list = listOver(table);
  const totals = list && list.bounds.bottom - list.totalsRows;
  const isTotal = (row: number) => list !== undefined && row > totals! && row <= list.bounds.bottom;
  if (!isPartSheet(record)) return { rows: filled.filter((row) => !isTotal(row)), leftOut: [] };
  const end = totals ?? endOfRun(filled, headerRow);
  return parted(filled, (row) => !isTotal(row) && holdsPart(table, row, row <= end));
}

function parted(filled: readonly number[], isPart: (row: number) => boolean): DataRows {
  const rows = filled.filter(isPart);
  const parts = new Set(rows);
  return { rows, leftOut: rows.length === filled.length ? [] : filled.filter((row) => !parts.has(row)) };
}

/** The last row before the first empty one. */
function endOfRun(filled: readonly number[], headerRow: number): number {
  let end = headerRow;
  for (const row of filled) {
    if (row !== end + 1) break;
    end = row;
  }
  return end;
}

/**
 * A row of the table is a part where it is named; below it, where it has readings too, or every name that the sheet
 * needs. A row of the table that has all but its part's name has lost that name, and is refused rather than passed over.
 */
function holdsPart(table: Table, row: number, isInTable: boolean): boolean {
  const { sheet, columns, readingColumns, headerRow } = table;
  const cells = sheet.rows[row]!;
  const has = (header: string) => {
    const column = columns.get(header);
    return column !== undefined && !isBlank(cells[column.column]);
  };
  const readings = readingColumns.filter(({ column }) => !isBlank(cells[column]));
  const hasReadings = readings.length > 0;
  if (hasReadings && readings.every(({ column }) => isOverRowsAbove(cells[column]!.formula, headerRow, row)))
    return false;
  const isCalculated = sheet.blocks?.some(
    ({ kind, bounds }) =>
      kind === 'data table' &&
      bounds.top <= row &&
      row <= bounds.bottom &&
      [...columns.values(), ...readingColumns].some(
        ({ column }) => isWithin(bounds, column) && !isBlank(cells[column]),
      ),
  );
  if (isCalculated) return false;
  const others = columnsOf(table.record).filter((column) => column.needed && column.header !== 'Part');
  const hasOthers = others.length > 0 && others.every(({ header }) => has(header));
  return isInTable ? has('Part') || hasReadings || hasOthers : has('Part') && (hasReadings || hasOthers);
}
