/** The rows of the sheets of parts, from their cells. */
import { partSheets } from '../input-sheets/index.js';
import type { InputColumns, PartSheet, RowValues } from '../input-sheets/input-sheet.js';
import type { JOURNALS } from '../input-sheets/journals.js';
import { SIZE } from '../input-sheets/quantities.js';
import type { RODS } from '../input-sheets/rods.js';
import type { SHELLS } from '../input-sheets/shells.js';
import type { PartRow, Reading } from './book.js';
import { BySheet } from './by-sheet.js';
import { dataRowsOf } from './data-rows.js';
import { badOf, readValues } from './read-row.js';
import { Row } from './row.js';
import type { Table } from './table.js';

/** @param onlyType the engine type of a row that names none; undefined where Limits names several */
export function readParts(
  tables: ReadonlyMap<string, Table>,
  onlyType: string | undefined,
): BySheet<PartRow> {
  return new BySheet(
    new Map(
      partSheets().flatMap((record) => {
        const table = tables.get(record.name);
        if (!table) return [];
        const rows = dataRowsOf(table).map((row) => partRow(new Row(table, row), record, onlyType));
        return [[record.name, rows] as const];
      }),
    ),
  );
}

/** The columns that some sheet of parts has. */
type PartColumns = (typeof JOURNALS)['columns'] & (typeof RODS)['columns'] & (typeof SHELLS)['columns'];
type PartValues = Partial<RowValues<PartColumns & InputColumns>>;

function partRow(row: Row, record: PartSheet, onlyType: string | undefined): PartRow {
  const values: PartValues = readValues(row, record.columns);
  if (values.part === undefined && !row.cell('Part')) {
    row.bad.push({
      sheet: row.table.sheet.name,
      cell: row.address('Part')!,
      header: 'Part',
      found: 'nothing',
      expected: "the part's name",
      remedy: 'name the part',
    });
  }
  const readings: Reading[] = [];
  for (const column of row.table.readingColumns) {
    const reading = row.reading(column, SIZE);
    if (reading) readings.push(reading);
  }
  return {
    sheet: record.name,
    row: row.row,
    name: values.part ?? '',
    engineType: values.engineType ?? onlyType,
    engine: values.engine ?? '',
    fit: values.fit ?? record.fit ?? '',
    position: values.position ?? '',
    mark: values.mark,
    half: values.half,
    quantity: values.quantity ?? 1,
    hasShells: values.shellsIn === 'yes',
    mass: values.mass,
    celsius: values.temperature?.celsius,
    temperatureIsLive: values.temperature?.isNumber ?? true,
    gauge: values.gauge,
    usable: values.usable !== 'no',
    bin: values.bin,
    // A copy is as long as it has readings; a list that grew has room to spare.
    readings: readings.slice(),
    bad: badOf(row),
  };
}
