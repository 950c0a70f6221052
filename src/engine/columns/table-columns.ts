/** The result columns of the tables that are checked. */
import type { TableRowResult } from '../assess/table-checks.js';
import type { ResultColumn } from './result-column.js';

/** Tables that get columns only where something is wrong. */
export const QUIET_TABLES: readonly string[] = ['Gauges', 'Materials'];

export const TABLE_COLUMNS: readonly ResultColumn<TableRowResult>[] = [
  {
    header: 'Status',
    quantity: 'word',
    width: 17,
    json: 'status',
    help: '`consistent` or `check the source`.',
    page: 'measured',
    value: ({ status }) => status,
  },
  {
    header: 'Why',
    quantity: 'sentences',
    width: 50,
    json: 'why',
    help: 'What is wrong with the row.',
    value: ({ why }) => why,
  },
];
