/** The columns that readings go to, and those that are made for them. */
import { headerKey } from '../book/names.js';
import { firstFreeColumn } from '../book/placement.js';
import type { ReadingColumn, Table } from '../book/table.js';
import { columnsOf } from '../input-sheets/input-sheet.js';
import { SHEET_COLUMNS } from '../workbook-model.js';
import { type BenchBook, type BenchSpot, sameSpot, spotName } from './bench-book.js';

/** The column for one more reading of a spot: a free one, else a new one; undefined where none can be made. */
export function nextRepeat(
  book: BenchBook,
  { sheet, row, column }: Pick<BenchSpot, 'sheet' | 'row' | 'column'>,
): ReadingColumn | undefined {
  const all = book
    .table(sheet)!
    .readingColumns.filter((other) => sameSpot(other, column))
    .sort((a, b) => a.repeat - b.repeat);
  const free = all.find((other) => book.isBlank({ sheet, row, column: other }));
  const last = all.at(-1);
  if (!last) return undefined;
  const name = spotName({ ...column, repeat: last.repeat + 1 });
  return free ?? columnNamed(book, sheet, name, { make: true });
}

/**
 * The column of a spot by its name, `A 0 #2`; a repeat that the sheet lacks gets a new column to the right of all that
 * the rows of the sheet hold.
 * @returns undefined where there is none and none can be made
 */
export function columnNamed(
  book: BenchBook,
  sheet: string,
  spot: string,
  { make = false } = {},
): ReadingColumn | undefined {
  const find = (name: string) =>
    book.table(sheet)?.readingColumns.find((column) => headerKey(spotName(column)) === headerKey(name));
  const known = find(spot);
  const first = find(spot.split('#')[0]!);
  if (known || !make || !first || !makeColumn(book, sheet, spot, first.column)) return known;
  return find(spot);
}

/**
 * A column of the record's that the sheet may lack, such as Set to.
 * @returns whether the sheet has it now
 */
export function hasOrMakesColumn(book: BenchBook, sheet: string, header: string): boolean {
  const table = book.table(sheet);
  if (!table || table.columns.has(header)) return table !== undefined;
  if (!columnsOf(table.record).some((column) => column.header === header)) return false;
  const like = table.columns.get('Temperature') ?? table.readingColumns[0];
  return makeColumn(book, sheet, header, like?.column ?? 0);
}

/** @param like the column that the new one looks like */
function makeColumn(book: BenchBook, sheet: string, header: string, like: number): boolean {
  const table = book.table(sheet);
  // Behind the program's own columns no other may stand, and before them a column would move what formulas name.
  if (!table || book.measured.book.own.has(sheet)) return false;
  const column = firstFreeColumn(table);
  if (column >= SHEET_COLUMNS) return false;
  const { headerRow, sheet: model } = table;
  book.fill({ sheet: model.name, row: headerRow, column, value: header, like, isNewHeader: true });
  book.reread();
  return true;
}

/**
 * Whether a spot is one that every part of the sheet is to be read at. A repeat that was made for one part (by `r` or
 * `--again`) is not: its column stands behind all others, or its spot alone has one.
 */
export function isPlanned(book: BenchBook, { sheet, column }: Pick<BenchSpot, 'sheet' | 'column'>): boolean {
  if (column.repeat === 1) return true;
  const table = book.table(sheet)!;
  if (standsAmongOthers(table, column)) return true;
  const spots = table.readingColumns.filter(({ repeat }) => repeat === 1);
  const repeats = table.readingColumns.filter(({ repeat }) => repeat === column.repeat);
  if (spots.length > 1 && repeats.length === spots.length) return true;
  return book
    .parts()
    .every((part) => part.sheet !== sheet || !book.readings(sheet, part.row).has(column.column));
}

/** Whether a column of another kind stands to the right. */
function standsAmongOthers({ columns }: Table, { column }: ReadingColumn): boolean {
  return [...columns.values()].some((other) => other.column > column);
}
