/**
 * Which rows of a table are read. Of a sheet of parts only rows that hold a part: what a sheet holds besides (totals, a
 * mean under the readings, a signature, a remark) is left out, and said.
 */

import { isPartSheet } from '../input-sheets/index.js';
import { namedBy } from '../input-sheets/input-sheet.js';
import type { CellBounds, ListTable } from '../workbook-model.js';
import { isBlank } from './blank-cell.js';
import { isOverRowsAbove } from './rows-above.js';
import type { Table } from './table.js';

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
  const columns = columnsRead(table);
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
  const judge = new PartJudge(table, columns);
  return parted(filled, (row) => !isTotal(row) && judge.isPart(row, row <= end));
}

/** The columns that are read, by their headers. */
function columnsRead({ columns, secondUnits, readingColumns }: Table): number[] {
  return [...columns.values(), ...secondUnits.values(), ...readingColumns].map(({ column }) => column);
}

function parted(filled: readonly number[], isPart: (row: number) => boolean): DataRows {
  const rows = filled.filter(isPart);
  if (rows.length === filled.length) return { rows, leftOut: [] };
  const parts = new Set(rows);
  return { rows, leftOut: filled.filter((row) => !parts.has(row)) };
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
 * A row of the table is a part where it is named, by its own name or, where the sheet has none, by its place; below it, where it has readings too, or every name that the sheet
 * needs. A row of the table that has all but its part's name has lost that name, and is refused rather than passed over.
 */
class PartJudge {
  private readonly part: number | undefined;
  private readonly isOfPlaces: boolean;
  /** The columns of the other names that the sheet needs. */
  private readonly others: readonly number[];
  private readonly readings: readonly number[];
  private readonly dataTables: readonly CellBounds[];

  constructor(
    private readonly table: Table,
    private readonly columns: readonly number[],
  ) {
    const place = (header: string) => table.columns.get(header)?.column;
    this.part = place('Part');
    this.isOfPlaces = isPartSheet(table.record) && table.record.isOfPlaces === true;
    this.others = namedBy(table.record).flatMap((header) => (header === 'Part' ? [] : (place(header) ?? [])));
    this.readings = table.readingColumns.map(({ column }) => column);
    const blocks = table.sheet.blocks ?? [];
    this.dataTables = blocks.flatMap(({ kind, bounds }) => (kind === 'data table' ? [bounds] : []));
  }

  isPart(row: number, isInTable: boolean): boolean {
    const cells = this.table.sheet.rows[row]!;
    const has = (column: number) => !isBlank(cells[column]);
    const readings = this.readings.filter(has);
    if (readings.length > 0 && this.isCalculated(row, readings)) return false;
    const isInDataTable = this.dataTables.some(
      (bounds) =>
        bounds.top <= row &&
        row <= bounds.bottom &&
        this.columns.some((column) => isWithin(bounds, column) && has(column)),
    );
    if (isInDataTable) return false;
    const hasPlace = this.others.length > 0 && this.others.every(has);
    const isNamed = this.isOfPlaces ? hasPlace : this.part !== undefined && has(this.part);
    if (isInTable && isNamed) return true;
    const isMeasured = readings.length > 0 || hasPlace;
    return isMeasured && (isInTable || isNamed);
  }

  private isCalculated(row: number, readings: readonly number[]): boolean {
    const { sheet, headerRow } = this.table;
    return readings.every((column) => isOverRowsAbove(sheet.rows[row]![column]!.formula, headerRow, row));
  }
}
