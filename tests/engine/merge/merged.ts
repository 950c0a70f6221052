/** Books of one stock for tests, and what is compared of them. */
import { expect } from 'vitest';
import type { Book, PartRow } from '../../../src/engine/book/book.js';
import type { BadCell } from '../../../src/engine/book/problems.js';
import type { TableRow } from '../../../src/engine/book/read-row.js';
import { mergeBooks } from '../../../src/engine/merge/merge-books.js';
import { readBook } from '../../../src/engine/run-book.js';
import type { Ratio } from '../../../src/maths/decimal.js';
import { bookOf, type Plain, type Sheets } from '../book-of.js';

/** Books called `a`, `b`, `c`, each of its sheets. */
export function booksOf(...sheets: readonly Sheets[]): Book[] {
  return sheets.map((own, place) => bookOf(own, `${'abc'[place]}.xlsx`));
}

export function stockOf(...sheets: readonly Sheets[]): Book {
  return mergeBooks(booksOf(...sheets), 'stock.xlsx');
}

/** What a reader of the written cells makes of them. */
export function readAnew({ model }: Book): Book {
  return readBook(structuredClone(model));
}

/** That the rows of a stock are what its cells say. */
export function expectSameAnew(stock: Book): void {
  const anew = readAnew(stock);
  const placed = (book: Book) =>
    Object.fromEntries(Object.entries(listsOf(book)).map(([name, rows]) => [name, rows.map(placedRow)]));
  expect(placed(stock)).toEqual(placed(anew));
  expect([...stock.tables.keys()]).toEqual([...anew.tables.keys()]);
  expect(stock.onlyEngineType).toBe(anew.onlyEngineType);
  const settings = ({ setup: { bad, ...rest } }: Book) => ({
    ...rest,
    bad: bad.map(({ cell, header }) => `${cell} ${header}`),
  });
  expect(settings(stock)).toEqual(settings(anew));
}

/** What stands in the cells of a sheet, headers first; undefined where there is no such sheet. */
export function cellsOf({ model }: Book, name: string): Plain[][] | undefined {
  const sheet = model.sheets.find((other) => other.name === name);
  return sheet?.rows.map((cells) => Array.from(cells, (cell) => cell?.content?.value));
}

/** Every list of rows that a book has, by its name. */
export function listsOf(book: Book): Record<string, readonly TableRow[]> {
  const isRow = (row: unknown): row is TableRow =>
    typeof row === 'object' && row !== null && 'row' in row && 'bad' in row;
  const lists = Object.entries(book).filter(
    (entry): entry is [string, TableRow[]] => Array.isArray(entry[1]) && entry[1].every(isRow),
  );
  const parts = [...book.parts.sheets()].map((sheet) => [`parts of ${sheet}`, book.parts.of(sheet)] as const);
  return Object.fromEntries([...lists.filter(([, rows]) => rows.length > 0), ...parts]);
}

/** A row without its place: equal for two rows that were read as the same. */
export function quantitiesOf(row: TableRow): Record<string, unknown> {
  const { row: _, bad, temperatureIsLive: __, setTo, ...values } = row as PartRow;
  const exactly = (value: unknown): unknown => (isRatio(value) ? lowest(value) : value);
  return {
    ...Object.fromEntries(Object.entries(values).map(([key, value]) => [key, exactly(value)])),
    ...(setTo && { setTo: lowest(setTo.mm) }),
    ...(values.readings && {
      readings: values.readings
        .map(({ column: { station, angle, repeat }, mm }) => `${station} ${angle} #${repeat}: ${lowest(mm)}`)
        .sort(),
    }),
    bad: bad.map(({ header, found }: BadCell) => `${header}: ${found}`).sort(),
  };
}

/** A row with its place, its cells' addresses and what a formula can work over. */
export function placedRow(row: TableRow): Record<string, unknown> {
  const { readings, temperatureIsLive, setTo } = row as PartRow;
  return {
    ...quantitiesOf(row),
    row: row.row,
    bad: row.bad.map(({ sheet, cell, header }) => `${sheet}!${cell} ${header}`).sort(),
    ...(setTo && { setToIsNumber: setTo.isNumber }),
    ...(readings && {
      temperatureIsLive,
      places: readings
        .map(({ column: { column, unit }, isNumber }) => `${column} ${unit} ${isNumber}`)
        .sort(),
    }),
  };
}

function isRatio(value: unknown): value is Ratio {
  return typeof value === 'object' && value !== null && 'numerator' in value && 'denominator' in value;
}

function lowest({ numerator, denominator }: Ratio): string {
  let [divisor, rest] = [denominator, numerator < 0n ? -numerator : numerator];
  while (rest !== 0n) [divisor, rest] = [rest, divisor % rest];
  return `${numerator / divisor}/${denominator / divisor}`;
}
