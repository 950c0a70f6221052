/** The rows of the single books as rows of the stock: their quantities as they were read, their names those of the stock. */
import type { Book, PartRow, Setup } from '../book/book.js';
import { dataRowsOf } from '../book/data-rows.js';
import { type FastenerRow, named } from '../book/fasteners.js';
import { nameOfPlace } from '../book/parts.js';
import type { TableRow } from '../book/read-row.js';
import type { BookUnits, Table } from '../book/table.js';
import { MEASURED } from '../input-sheets/common-columns.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import type { InputColumns, InputSheet, PartSheet } from '../input-sheets/input-sheet.js';
import { type NameQuantity, PART_NAME } from '../input-sheets/quantities.js';
import { SETUP } from '../input-sheets/setup.js';
import { MergedSheet, type SourceRow } from './merged-sheet.js';
import { kindOfName, type NameClashes, type Source } from './name-clashes.js';
import { meaningOf } from './row-meaning.js';

/** What the rows of every sheet are merged by. */
export interface StockPlan {
  readonly sources: readonly Source[];
  readonly clashes: NameClashes;
  readonly units: BookUnits;
  /** The engine type of rows that name none in a book that names none. */
  readonly onlyEngineType: string | undefined;
}

export interface MergedRows<Row> {
  /** Undefined where no book has the sheet. */
  readonly table: Table | undefined;
  readonly rows: readonly Row[];
}

interface Sourced<Row> {
  readonly source: Source;
  readonly table: Table;
  readonly rows: readonly Row[];
}

/** The rows of each book that has a sheet, under the names of the stock. */
function sourcedRows<Row extends TableRow>(
  { name }: InputSheet,
  { sources }: StockPlan,
  rowsOf: (source: Source) => readonly Row[],
): Sourced<Row>[] {
  return sources.flatMap((source) => {
    const table = source.book.tables.get(name);
    return table ? [{ source, table, rows: rowsOf(source) }] : [];
  });
}

function sheetOf(
  record: InputSheet,
  sourced: readonly Sourced<TableRow>[],
  { units }: StockPlan,
): MergedSheet {
  const sheets = sourced.map(({ source, table, rows }) => ({
    table,
    rows: rows.map(({ row }) => row),
    isTyped: Boolean(source.book.onlyEngineType),
  }));
  return new MergedSheet(record, sheets, units);
}

type NameOf = (name: string, quantity: NameQuantity) => string;

/** What a name of a sheet is called in the stock. */
function namesOf(record: InputSheet, source: Source, { clashes }: StockPlan): NameOf {
  return (name, quantity) => {
    const kind = kindOfName(record, quantity);
    return kind === undefined ? name : clashes.nameOf(kind, name, source);
  };
}

/** Rows of a table; one that two books share is kept once. */
export function mergeTable<Row extends TableRow>(
  record: InputSheet,
  stock: StockPlan,
  rowsOf: (book: Book) => readonly Row[],
): MergedRows<Row> {
  const owners = new Map<string, Source>();
  const sourced = sourcedRows(record, stock, (source) => {
    const nameOf = namesOf(record, source, stock);
    return rowsOf(source.book).flatMap((own) => {
      const row = inStock(own, record, stock, nameOf);
      const meaning = meaningOf(row);
      const owner = owners.get(meaning) ?? source;
      owners.set(meaning, owner);
      // A row that one book has twice stays twice, and is found fault with.
      return owner === source ? [row] : [];
    });
  });
  if (sourced.length === 0) return { table: undefined, rows: [] };
  const sheet = sheetOf(record, sourced, stock);
  const rows = sourced.flatMap(({ source, table, rows: own }) => {
    const nameOf = namesOf(record, source, stock);
    const { onlyEngineType: engineType } = source.book;
    return own.map((row) => {
      const { row: place, bad } = sheet.add({ table, row: row.row, bad: row.bad, engineType, nameOf });
      return { ...row, row: place, bad };
    });
  });
  return { table: sheet.table, rows };
}

/** A row under the names of the stock, still where its book has it. */
function inStock<Row extends TableRow>(
  row: Row,
  { columns }: InputSheet,
  { onlyEngineType }: StockPlan,
  nameOf: NameOf,
): Row {
  const values = { ...row } as Record<string, unknown>;
  rename(values, columns, nameOf);
  const isRefused = row.bad.some(({ header }) => header === columns.engineType?.header);
  if (values.engineType === '' && !isRefused) values.engineType = onlyEngineType ?? '';
  return values as unknown as Row;
}

/** Gives the values that are names those of the stock. */
function rename(values: Record<string, unknown>, columns: InputColumns, nameOf: NameOf): void {
  for (const [key, { quantity }] of Object.entries(columns)) {
    const name = values[key];
    if (quantity.kind === 'name' && typeof name === 'string') values[key] = nameOf(name, quantity);
  }
}

export function mergeParts(record: PartSheet, stock: StockPlan): MergedRows<PartRow> {
  const sourced = sourcedRows(record, stock, ({ book }) => book.parts.of(record.name));
  if (sourced.length === 0) return { table: undefined, rows: [] };
  const sheet = sheetOf(record, sourced, stock);
  const rows = sourced.flatMap(({ source, table, rows: own }) => {
    const nameOf = namesOf(record, source, stock);
    const { onlyEngineType: engineType } = source.book;
    return own.map((row) => {
      const { row: place, bad, readings } = row;
      const part = partInStock(row, sheet, stock, { table, row: place, bad, readings, engineType, nameOf });
      rename(part as unknown as Record<string, unknown>, record.columns, nameOf);
      return record.isOfPlaces ? { ...part, name: nameOfPlace(part) } : part;
    });
  });
  return { table: sheet.table, rows };
}

/** Fasteners under the names of the stock, each with its readings. */
export function mergeFasteners(stock: StockPlan): MergedRows<FastenerRow> {
  const sourced = sourcedRows(FASTENERS, stock, ({ book }) => book.fasteners);
  if (sourced.length === 0) return { table: undefined, rows: [] };
  const sheet = sheetOf(FASTENERS, sourced, stock);
  const rows = sourced.flatMap(({ source, table, rows: own }) => {
    const nameOf = namesOf(FASTENERS, source, stock);
    const { onlyEngineType: engineType } = source.book;
    return own.map((before) => {
      const { row, bad, readings } = before;
      const moved = { table, row, bad, readings, engineType, nameOf };
      const { row: place, bad: movedBad, cells } = sheet.add(moved);
      const kept = sheet.readingsOf(moved, { row: place, bad: movedBad, cells });
      const values = { ...before, row: place, bad: movedBad, readings: kept };
      if (values.engineType === '') values.engineType = stock.onlyEngineType;
      rename(values as unknown as Record<string, unknown>, FASTENERS.columns, nameOf);
      return values;
    });
  });
  return { table: sheet.table, rows: named(rows) };
}

/**
 * A part under its own name of the stock; other names are those of its book. Its fields are named one by one: of what is
 * spread, each object would get a shape of its own, larger than itself.
 */
function partInStock(row: PartRow, sheet: MergedSheet, stock: StockPlan, source: SourceRow): PartRow {
  const moved = sheet.add(source);
  return {
    sheet: row.sheet,
    row: moved.row,
    name: source.nameOf(row.name, PART_NAME),
    engineType: row.engineType === '' ? stock.onlyEngineType : row.engineType,
    engine: row.engine,
    fit: row.fit,
    position: row.position,
    mark: row.mark,
    half: row.half,
    quantity: row.quantity,
    hasShells: row.hasShells,
    mass: row.mass,
    celsius: row.celsius,
    temperatureIsLive: row.celsius === undefined || sheet.isNumber(moved, MEASURED.temperature.header),
    gauge: row.gauge,
    setTo: row.setTo && { ...row.setTo, isNumber: sheet.isNumber(moved, MEASURED.setTo.header) },
    usable: row.usable,
    bin: row.bin,
    readings: sheet.readingsOf(source, moved),
    bad: moved.bad,
  };
}

/** The settings of one book, which rule the stock. */
export function mergeSetup({ book }: Source, stock: StockPlan): { table: Table | undefined; setup: Setup } {
  const { setup } = book;
  const table = book.tables.get(SETUP.name);
  if (!table) return { table: undefined, setup };
  const rows = dataRowsOf(table);
  const sheet = new MergedSheet(SETUP, [{ table, rows, isTyped: false }], stock.units);
  const nameOf = (name: string) => name;
  const moved = rows.flatMap(
    (row) => sheet.add({ table, row, bad: setup.bad, engineType: undefined, nameOf }).bad,
  );
  // In the order in which they were found: each item is refused once.
  const bad = setup.bad.flatMap(({ header }) => moved.filter((other) => other.header === header));
  return { table: sheet.table, setup: { ...setup, bad } };
}
