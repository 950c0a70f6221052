/** The rows of Journals, Rods, Cases and Shells. */
import type { Half } from '../../maths/matching/stock.js';
import type { Book, PartRow, PartSheet, Reading } from './book.js';
import type { SheetName } from './input-sheets.js';
import { RULES } from './rules.js';
import type { Row, Table } from './table.js';

const HALVES: readonly Half[] = ['upper', 'lower', 'either'];
const PART_SHEETS: readonly PartSheet[] = ['Journals', 'Rods', 'Cases', 'Shells'];

const NOTHING: readonly never[] = [];

/** The fit of a row, by its sheet. */
const FIT_OF_SHEET: Readonly<Record<PartSheet, (row: Row) => string>> = {
  Journals: (row) => row.name('Fit') ?? '',
  Rods: () => 'big end',
  Cases: () => 'main',
  Shells: (row) => row.name('Fit') ?? 'big end',
};

/** @param onlyType the engine type of a row that names none; undefined where Limits names several */
export function readParts(
  tables: ReadonlyMap<SheetName, Table>,
  onlyType: string | undefined,
): Pick<Book, 'journals' | 'rods' | 'cases' | 'shells'> {
  const [journals, rods, cases, shells] = PART_SHEETS.map((sheet) => {
    const table = tables.get(sheet);
    return table ? table.dataRows().map((row) => partRow(table.row(row), sheet, onlyType)) : [];
  });
  return { journals: journals!, rods: rods!, cases: cases!, shells: shells! };
}

function partRow(row: Row, sheet: PartSheet, onlyType: string | undefined): PartRow {
  const name = row.name('Part');
  if (name === undefined && !row.cell('Part')) {
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
    const reading = row.reading(column, RULES.size);
    if (reading) readings.push(reading);
  }
  const temperature = row.temperature('Temperature', RULES.temperature);
  return {
    sheet,
    row: row.row,
    name: name ?? '',
    engineType: row.name('Engine type') ?? onlyType,
    engine: row.name('Engine') ?? '',
    fit: FIT_OF_SHEET[sheet](row),
    position: row.name('Position') ?? '',
    mark: row.name('Mark'),
    half: row.word('Half', HALVES),
    quantity: row.plainNumber('Quantity', RULES.quantity) ?? 1,
    mass: row.plainNumber('Mass', RULES.mass),
    celsius: temperature?.celsius,
    temperatureIsLive: temperature?.isNumber ?? true,
    gauge: row.name('Gauge'),
    usable: row.word('Usable', ['yes', 'no']) !== 'no',
    bin: row.name('Bin'),
    // A copy is as long as it has readings; a list that grew has room to spare.
    readings: readings.slice(),
    bad: row.bad.length > 0 ? row.bad : NOTHING,
  };
}
