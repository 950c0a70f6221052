/**
 * Several workbooks as one stock: their sheets one below the other, in one workbook.
 *
 * A part or a crank named alike in two books gets its book's name; rods and shells that ran on such a
 * crank follow it. Rows of tables that two books share are kept once. Gauges that differ under one name
 * get their book's name too. The first Setup among the books rules; lengths of books in another unit carry theirs.
 */
import type { Book } from './book/book.js';
import { dataRowsOf } from './book/data-rows.js';
import { headerKey, nameKey, nameText } from './book/names.js';
import type { BookUnits, Table } from './book/table.js';
import { labelsOf } from './book-labels.js';
import { inputSheet, inputSheets, isPartSheet } from './input-sheets/index.js';
import { columnsOf } from './input-sheets/input-sheet.js';
import type { Cell, CellContent, SheetModel, WorkbookModel } from './workbook-model.js';

/** Columns whose name is an engine's, a gauge's, or a part's of some sheet. */
const NAMED_BY: Readonly<Record<string, 'engine' | 'gauge' | string>> = {
  Engine: 'engine',
  Gauge: 'gauge',
  'Set from': 'gauge',
};

interface Source {
  readonly book: Book;
  readonly label: string;
}

export function mergeBooks(books: readonly Book[], file: string): WorkbookModel {
  const labels = labelsOf(books.map(({ model }) => model.file));
  const sources = books.map((book, place): Source => ({ book, label: labels[place]! }));
  const renamed = clashes(sources);
  const ruling = books.find(({ tables }) => tables.has('Setup')) ?? books[0]!;
  const { lengthUnit: length, temperatureUnit: temperature } = ruling.setup;
  const units = { length, temperature };
  const sheets = inputSheets().flatMap(({ name }) => {
    // Fits of the single books do not hold for the stock as a whole.
    if (name === 'Fits') return [];
    const tables = sources.flatMap((source) => {
      const table = source.book.tables.get(name);
      return table ? [{ source, table }] : [];
    });
    if (tables.length === 0) return [];
    return [mergedSheet(name, name === 'Setup' ? tables.slice(0, 1) : tables, renamed, units)];
  });
  return { file, sheets };
}

/** Names that mean different things in two books. */
class Clashes {
  private readonly owners = new Map<string, Map<string, string>>();

  /** @param meaning what must be equal for the name to mean one thing */
  add(kind: string, name: string, label: string, meaning: string): void {
    const key = `${kind}\u0000${nameKey(name)}`;
    const owners = this.owners.get(key) ?? new Map<string, string>();
    owners.set(label, meaning);
    this.owners.set(key, owners);
  }

  isShared(kind: string, name: string, label: string): boolean {
    const owners = this.owners.get(`${kind}\u0000${nameKey(name)}`);
    return owners?.has(label) === true && new Set(owners.values()).size > 1;
  }
}

function clashes(sources: readonly Source[]): Clashes {
  const found = new Clashes();
  for (const { book, label } of sources) {
    for (const row of book.parts.all()) {
      if (row.name !== '') found.add(row.sheet, row.name, label, label);
    }
    for (const { engine } of book.parts.of('Journals'))
      if (engine !== '') found.add('engine', engine, label, label);
    for (const { row: _, bad: __, ...gauge } of book.gauges) {
      found.add('gauge', gauge.gauge, label, JSON.stringify(gauge));
    }
  }
  return found;
}

type SourceTable = { readonly source: Source; readonly table: Table };

function mergedSheet(
  name: string,
  tables: readonly SourceTable[],
  renamed: Clashes,
  units: BookUnits,
): SheetModel {
  const headers: string[] = [];
  const columnOf = (header: string): number => {
    const known = headers.findIndex((other) => headerKey(other) === headerKey(header));
    return known >= 0 ? known : headers.push(header) - 1;
  };
  const rows: (Cell | undefined)[][] = [[]];
  const seen = new Set<string>();
  const typed = columnsOf(inputSheet(name)!).some(({ header }) => header === 'Engine type');
  for (const { source, table } of tables) {
    const numbers = new Map(table.bareNumbers.map((bare) => [`${bare.row} ${bare.column}`, bare.value]));
    for (const row of dataRowsOf(table)) {
      const cells: (Cell | undefined)[] = [];
      const put = (header: string, column: number, own: string | undefined) => {
        const content = contentAt(table, row, column, numbers);
        if (!content) return;
        const named = rename(content, header, name, source.label, renamed);
        cells[columnOf(header)] = {
          content: own && own !== units.length && own !== units.temperature ? withUnit(named, own) : named,
        };
      };
      for (const [header, known] of table.columns) {
        put(header, known.column, unitOf(name, header, known.unit, table.units));
      }
      for (const reading of table.readingColumns) put(reading.header, reading.column, reading.unit);
      // A type that went without saying in its own book must be said among others.
      const type = typed ? source.book.onlyEngineType : undefined;
      if (type && !cells[columnOf('Engine type')]) {
        cells[columnOf('Engine type')] = { content: { kind: 'text', value: type } };
      }
      const key = JSON.stringify(cells);
      if (!isPartSheet(inputSheet(name)!) && seen.has(key)) continue;
      seen.add(key);
      rows.push(cells);
    }
  }
  rows[0] = headers.map((header) => ({ content: { kind: 'text', value: header } }));
  return { name, rows };
}

/** Columns of lengths, besides the readings. */
const LENGTHS =
  /^(Clearance min|Clearance max|Service limit|Aim|Journal min|Journal max|Wear limit|Bore min|Bore max|Out-of-round limit|Taper limit|Neighbour spread|From|To|Max error|Resolution|Repeatability|Wall from|Wall to)$/;

/** The unit that the numbers of a column are in, where it may differ between books. */
function unitOf(
  sheet: string,
  header: string,
  typed: string | undefined,
  units: BookUnits,
): string | undefined {
  if (header === 'Temperature') return typed ?? units.temperature;
  // Values of Setup are of many kinds, and of one book only.
  const isReading = sheet === 'Gauge study' && header === 'Value';
  return isReading || LENGTHS.test(header) ? (typed ?? units.length) : undefined;
}

function contentAt(
  table: Table,
  row: number,
  column: number,
  numbers: ReadonlyMap<string, number>,
): CellContent | undefined {
  const content = table.sheet.rows[row]?.[column]?.content;
  const bare = numbers.get(`${row} ${column}`);
  return bare !== undefined && content?.kind === 'text' ? { kind: 'number', value: bare } : content;
}

function rename(
  content: CellContent,
  header: string,
  sheet: string,
  label: string,
  renamed: Clashes,
): CellContent {
  const kind =
    header === 'Part' ? sheet : sheet === 'Gauges' && header === 'Gauge' ? 'gauge' : NAMED_BY[header];
  const text = kind && nameText(content);
  return text && renamed.isShared(kind, text, label) ? { kind: 'text', value: `${label} ${text}` } : content;
}

/** A number of another unit keeps it as text, since an inch length is seldom a whole decimal of the other. */
function withUnit(content: CellContent, own: string): CellContent {
  return content.kind === 'number' ? { kind: 'text', value: `${content.value} ${own}` } : content;
}
