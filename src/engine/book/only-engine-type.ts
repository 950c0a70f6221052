/** The engine type of rows that leave it out. */
import { CLASSES } from '../input-sheets/classes.js';
import { engineType } from '../input-sheets/common-columns.js';
import { NEW_SHELLS } from '../input-sheets/new-shells.js';
import { SELECTION } from '../input-sheets/selection.js';
import { UNDERSIZES } from '../input-sheets/undersizes.js';
import { nameKey } from './names.js';
import { readRows } from './read-row.js';
import type { Table } from './table.js';

/** Tables that name engine types, for a book without limits. */
const TYPED_TABLES = [CLASSES.name, SELECTION.name, NEW_SHELLS.name, UNDERSIZES.name];

/** The engine types that the tables beside Limits name; `''` of a row that names none. */
export function typesOfTables(tables: ReadonlyMap<string, Table>): string[] {
  return TYPED_TABLES.flatMap((name) =>
    readRows(tables.get(name), (row) => row.name(engineType.header) ?? ''),
  );
}

/**
 * The engine type of rows that leave it out: the one that Limits names, undefined where it names
 * several. Without limits, the only one of the other tables, else `''`.
 */
export function onlyEngineType(ofLimits: readonly string[], ofTables: readonly string[]): string | undefined {
  const distinct = (types: readonly string[]) => [
    ...new Map(types.filter((type) => type !== '').map((type) => [nameKey(type), type])).values(),
  ];
  const limits = distinct(ofLimits);
  if (limits.length > 0) return limits.length === 1 ? limits[0] : undefined;
  const tables = distinct(ofTables);
  return tables.length === 1 ? tables[0]! : '';
}
