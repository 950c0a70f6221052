/** A row of a sheet as the values of its record's columns. */
import type { InputColumns, RowValues } from '../input-sheets/input-sheet.js';
import { dataRowsOf } from './data-rows.js';
import type { BadCell } from './problems.js';
import { Row } from './row.js';
import type { Table } from './table.js';

/** What is read of any row: where it stands, and what is wrong in it. */
export interface TableRow {
  readonly row: number;
  readonly bad: readonly BadCell[];
  /** What is printed in two units and is not the same, in words. */
  readonly differing?: readonly string[];
}

const NOTHING: readonly never[] = [];

/** The values of a row; undefined where a cell is blank or refused. */
export function readValues<Columns extends InputColumns>(row: Row, columns: Columns): RowValues<Columns> {
  const values: Record<string, unknown> = {};
  for (const key in columns) {
    const { header, quantity } = columns[key]!;
    values[key] = row.value(header, quantity);
  }
  return values as RowValues<Columns>;
}

/** A list of refused cells that takes no room where there is none. */
export function badOf({ bad }: Row): readonly BadCell[] {
  return bad.length > 0 ? bad : NOTHING;
}

/** Every row of a table that holds anything, as `read` makes it of its cells. */
export function readRows<Read>(table: Table | undefined, read: (row: Row) => Read): Read[] {
  return table ? dataRowsOf(table).map((number) => read(new Row(table, number))) : [];
}
