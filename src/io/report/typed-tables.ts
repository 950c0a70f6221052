/** The maker's tables and the gauges as the user typed them, with what is wrong in them. */
import type { Assessment } from '../../engine/assess/assess.js';
import type { CheckedSheet } from '../../engine/assess/table-checks.js';
import { nameText } from '../../engine/book/names.js';
import type { Table } from '../../engine/book/table.js';
import { columnsOf } from '../../engine/input-sheets/input-sheet.js';
import type { OutputCell } from '../../engine/workbook-model.js';
import { type PageTable, turned, withoutEmptyColumns } from './page-table.js';
import { type Remark, remarksOf } from './result-tables.js';

export interface TypedTable {
  readonly tables: readonly PageTable[];
  readonly remarks: readonly Remark[];
}

const CAPTIONS: Readonly<Record<CheckedSheet, string>> = {
  Limits: 'Limits and their sources',
  Classes: 'Size classes',
  Selection: 'Selection of shells by marks',
  Undersizes: 'Undersizes',
  Gauges: 'Gauges and their uncertainty',
  Materials: 'Materials',
};

/** The sheet as a table with its status a row; undefined where the book does not have it or it is empty. */
export function typedTable(sheet: CheckedSheet, { book, tables }: Assessment): TypedTable | undefined {
  const table = book.tables.get(sheet);
  const results = tables[sheet];
  if (!table || results.length === 0) return undefined;
  const unit = table.units.length;
  const columns = columnsOf(table.record).flatMap(({ header }) => {
    const both = [table.columns.get(header), table.secondUnits.get(header)];
    return both.flatMap((known) => (known ? [{ header, known }] : []));
  });
  const typed: PageTable = {
    caption: `${CAPTIONS[sheet]}, as typed (lengths in ${unit} where no other unit is named)`,
    headers: [
      'Row',
      ...columns.map(({ header, known }) =>
        known.unit && known.unit !== unit ? `${header} (${known.unit})` : header,
      ),
      'Status',
    ],
    rows: results.map(({ row, status }) => [
      { value: row + 1, format: 'whole' },
      ...columns.map(({ known }) => typedCell(table, row, known.column)),
      { value: status, format: 'plain' },
    ]),
    rowHeader: 0,
  };
  const shown = withoutEmptyColumns(typed);
  return {
    // Limits has more columns than rows.
    tables: sheet === 'Limits' ? inGroups(shown).map(turned) : [shown],
    remarks: remarksOf(results, ({ row }) => `row ${row + 1}`),
  };
}

/** As many rows a table as stand beside each other when it is turned. */
const MOST_TURNED = 4;

function inGroups(table: PageTable): PageTable[] {
  return Array.from({ length: Math.ceil(table.rows.length / MOST_TURNED) }, (_, group) => ({
    ...table,
    rows: table.rows.slice(group * MOST_TURNED, (group + 1) * MOST_TURNED),
  }));
}

function typedCell(table: Table, row: number, column: number): OutputCell | undefined {
  const content = table.sheet.rows[row]?.[column]?.content;
  if (!content) return undefined;
  const value = content.kind === 'number' ? content.value : (nameText(content) ?? String(content.value));
  return value === '' ? undefined : { value, format: 'plain' };
}
