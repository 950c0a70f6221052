/** The rows of the sheet Fasteners, from their cells. */
import { FASTENERS } from '../input-sheets/fasteners.js';
import type { RowValues } from '../input-sheets/input-sheet.js';
import { SIZE } from '../input-sheets/quantities.js';
import { dataRowsOf } from './data-rows.js';
import { nameKey } from './names.js';
import { badOf, readValues, type TableRow } from './read-row.js';
import { Row } from './row.js';
import type { ReadLength, Table } from './table.js';

type FastenerValues = RowValues<(typeof FASTENERS)['columns']>;

export interface FastenerRow
  extends TableRow,
    Omit<FastenerValues, 'engine' | 'group' | 'quantity' | 'note'> {
  readonly sheet: string;
  /** What lists and the bench call it: `E1 cylinder head 3`. */
  readonly name: string;
  readonly engine: string;
  readonly group: string;
  readonly quantity: number;
  readonly readings: readonly ReadLength[];
  /** Its readings are whole sizes, no deviations. */
  readonly setTo: undefined;
}

/** @param onlyType the engine type of a row that names none; undefined where Limits names several */
export function readFasteners(table: Table | undefined, onlyType: string | undefined): FastenerRow[] {
  if (!table) return [];
  return named(dataRowsOf(table).map((number) => fastenerRow(new Row(table, number), onlyType)));
}

function fastenerRow(row: Row, onlyType: string | undefined): FastenerRow {
  const values = readValues(row, FASTENERS.columns);
  const readings = row.table.readingColumns.flatMap((column) => row.reading(column, SIZE) ?? []);
  return {
    ...values,
    sheet: FASTENERS.name,
    row: row.row,
    name: '',
    engine: values.engine ?? '',
    engineType: values.engineType ?? onlyType,
    group: values.group ?? '',
    quantity: values.quantity ?? 1,
    readings,
    setTo: undefined,
    bad: badOf(row),
  };
}

/** Gives each row its name; where that is not its own, with the row that it stands in. */
export function named(rows: readonly FastenerRow[]): FastenerRow[] {
  const plain = rows.map(({ engine, group, number }) =>
    [engine, group, number === undefined ? '' : String(number)].filter((word) => word !== '').join(' '),
  );
  const counts = new Map<string, number>();
  for (const name of plain) counts.set(nameKey(name), (counts.get(nameKey(name)) ?? 0) + 1);
  return rows.map((row, at) => {
    const name = plain[at]!;
    const isOwn = name !== '' && counts.get(nameKey(name)) === 1;
    return { ...row, name: isOwn ? name : `${name} row ${row.row + 1}`.trim() };
  });
}

/** What its reading columns are of. */
export function isOfLength({ station }: { readonly station: string }): boolean {
  return station.startsWith('Length');
}
