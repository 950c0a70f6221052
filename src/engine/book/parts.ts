/** The rows of the sheets of parts, from their cells. */
import { grainOfRatio } from '../../maths/grain.js';
import { MEASURED } from '../input-sheets/common-columns.js';
import { partSheets } from '../input-sheets/index.js';
import type { InputColumns, PartSheet, ReadingKind, RowValues } from '../input-sheets/input-sheet.js';
import type { JOURNALS } from '../input-sheets/journals.js';
import {
  LENGTH,
  type NumberRule,
  type ReadExactLength,
  SIGNED_LENGTH,
  SIZE,
} from '../input-sheets/quantities.js';
import type { RODS } from '../input-sheets/rods.js';
import type { SHELLS } from '../input-sheets/shells.js';
import type { PartRow, Reading } from './book.js';
import { BySheet } from './by-sheet.js';
import { dataRowsOf } from './data-rows.js';
import { badOf, readValues } from './read-row.js';
import { isStandIn, STAND_INS } from './reading-headers.js';
import { Row } from './row.js';
import type { ReadingColumn, Table } from './table.js';

const SET_TO = MEASURED.setTo.header;

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
  if (!record.isOfPlaces && values.part === undefined && !row.cell('Part')) {
    row.bad.push({
      sheet: row.table.sheet.name,
      cell: row.address('Part')!,
      header: 'Part',
      found: 'nothing',
      expected: "the part's name",
      remedy: 'name the part',
    });
  }
  const readings = readingsOf(row, record.readings, values.setTo);
  refuseCrossedFeelers(row, readings);
  return {
    sheet: record.name,
    row: row.row,
    name: record.isOfPlaces ? nameOfPlace(values) : (values.part ?? ''),
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
    setTo: values.setTo,
    usable: values.usable !== 'no',
    bin: values.bin,
    // A copy is as long as it has readings; a list that grew has room to spare.
    readings: readings.slice(),
    bad: badOf(row),
  };
}

function readingsOf(row: Row, kind: ReadingKind, setTo: ReadExactLength | undefined): Reading[] {
  const readings: Reading[] = [];
  // Of a Set to that is refused nobody knows what the readings are deviations from.
  const isRefused = setTo === undefined && row.cell(SET_TO) !== undefined;
  for (const column of row.table.readingColumns) {
    const rule = isRefused ? SIGNED_LENGTH : readingRule(kind, column);
    const reading = setTo ? row.deviation(column, setTo) : row.reading(column, rule);
    if (reading && !isRefused) readings.push(reading);
  }
  return readings;
}

/** What a reading may be: gaps and dials show either sign, blades and totals do not. */
export function readingRule(kind: ReadingKind | undefined, column: ReadingColumn): NumberRule {
  if (kind !== 'gaps' && kind !== 'dial') return SIZE;
  return isStandIn(column) ? LENGTH : SIGNED_LENGTH;
}

/** What a row without a name of its own is called. */
export function nameOfPlace({
  engine = '',
  fit = '',
  position = '',
}: Pick<PartValues, 'engine' | 'fit' | 'position'>): string {
  return [engine, fit, position].filter((name) => name !== '').join(' ');
}

/** A blade that goes in is not thicker than one that does not. */
function refuseCrossedFeelers(row: Row, readings: readonly Reading[]): void {
  const [goes, stops] = [STAND_INS.goes, STAND_INS.stops].map((name) =>
    readings.find(({ column }) => column.station === name),
  );
  if (!goes || !stops || grainOfRatio(goes.mm) <= grainOfRatio(stops.mm)) return;
  const { column, header, unit } = stops.column;
  const cell = row.table.sheet.rows[row.row]![column]!;
  row.refuse(
    { cell, column, header, unit },
    'a blade no thinner than the one that goes in',
    'try the blades again or correct the cells',
  );
}
