/** What a book reads, its stock has: every column of every sheet, whatever the units of the books. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Book, PartRow } from '../../../src/engine/book/book.js';
import { dataRowsOf } from '../../../src/engine/book/data-rows.js';
import { nameText } from '../../../src/engine/book/names.js';
import type { TableRow } from '../../../src/engine/book/read-row.js';
import { Row } from '../../../src/engine/book/row.js';
import { FITS } from '../../../src/engine/input-sheets/fits.js';
import { addPartSheet, inputSheets } from '../../../src/engine/input-sheets/index.js';
import {
  column,
  columnsOf,
  type InputColumn,
  type InputSheet,
  needed,
} from '../../../src/engine/input-sheets/input-sheet.js';
import {
  LENGTH,
  MASS,
  NAME,
  PART_NAME,
  TEMPERATURE,
  type TextUnit,
} from '../../../src/engine/input-sheets/quantities.js';
import { SETUP } from '../../../src/engine/input-sheets/setup.js';
import { mergeBooks } from '../../../src/engine/merge/merge-books.js';
import { type Plain, type Sheets, table } from '../book-of.js';
import { randomBook } from '../random-book.js';
import { booksOf, expectSameAnew, listsOf, quantitiesOf, stockOf } from './merged.js';

/** A sheet that is in no record: what is true of its columns is true of those that somebody adds. */
const PLUGS = {
  name: 'Plugs',
  noun: 'plug',
  counted: ['plug', 'plugs'],
  plural: 'Plugs',
  guide: 'measure each plug.',
  readings: 'diameters',
  role: 'inner',
  material: undefined,
  matching: 'stays',
  measured: 'Diameter',
  fit: 'plug',
  columns: {
    part: needed('Part', PART_NAME, 'Its name.'),
    position: column('Position', NAME, 'Its place.'),
    nominal: column('Nominal', LENGTH, 'Its nominal size.'),
    weight: column('Weight', MASS, 'Its mass.'),
    heated: column('Heated to', TEMPERATURE, 'When it was pressed in.'),
  },
} as const;

interface Units {
  readonly length: TextUnit;
  readonly temperature: TextUnit;
}
const METRIC: Units = { length: 'mm', temperature: 'C' };
const INCH: Units = { length: 'in', temperature: 'F' };

/** How a number is typed: in the book's unit, or with a unit in its header or its cell, and which. */
const FORMS = {
  plain: undefined,
  'unit in the header': { in: 'header', isOther: false },
  'other unit in the header': { in: 'header', isOther: true },
  'unit in the cell': { in: 'cell', isOther: false },
  'other unit in the cell': { in: 'cell', isOther: true },
  'a text alone': { in: 'text', isOther: false },
} as const;
type Form = (typeof FORMS)[keyof typeof FORMS];

/** Two sizes a unit, so that rows differ; the second has no end in the other unit. */
const SIZES: Partial<Record<TextUnit, readonly [number, number]>> = {
  mm: [1.27, 1.4879],
  in: [0.05, 0.05861],
  C: [21.5, 19.125],
  F: [68, 70.375],
};

const OTHERS: Partial<Record<TextUnit, TextUnit>> = { mm: 'in', in: 'mm', C: 'F', F: 'C' };
const NUMBERS = [2, 3, 0.25, 0.75, 55, 60];
const READINGS: Readonly<Record<string, readonly string[]>> = {
  diameters: ['A 0', 'Mid 90', 'B 0 #2'],
  walls: ['Wall 1', 'Wall 2 #2'],
  bolts: ['Length 1', 'Neck 2 #2'],
  gaps: ['Gap 1', 'Gap 2 #2', 'Stops'],
  dial: ['A 0', 'Mid 90', 'Total'],
};

/** A header and what stands under it. */
function typed(
  header: string,
  { quantity, needed: isNeeded }: Pick<InputColumn, 'quantity' | 'needed'>,
  row: number,
  units: Units,
  form: Form,
  book: string,
): [string, Plain] {
  switch (quantity.kind) {
    case 'length':
    case 'exact length':
    case 'temperature': {
      const own = units[quantity.kind === 'temperature' ? 'temperature' : 'length'];
      const unit = form?.isOther ? OTHERS[own]! : own;
      const value = SIZES[unit]![row]!;
      if (form?.in === 'header') return [`${header} (${unit})`, value];
      // Three digits behind a sign could be thousands in a text that is no length.
      const text = `${value}${quantity.kind === 'temperature' && !Number.isInteger(value) ? '0' : ''}`;
      if (form?.in === 'text') return [header, text.replace('.', ',')];
      return [header, form ? `${text} ${unit}` : value];
    }
    case 'torque': {
      const unit = form?.isOther ? 'lb·ft' : 'N·m';
      const value = [98, '98.5–108'][row]!;
      if (form?.in === 'header') return [`${header} (${unit})`, value];
      return [header, form && form.in !== 'text' ? `${value} ${unit}` : value];
    }
    case 'number': {
      const allowed = NUMBERS.filter((number) => quantity.isAllowed(number));
      return [header, form?.in === 'text' ? String(allowed[row]) : allowed[row]];
    }
    case 'name':
      return [header, quantity.of === 'material' && !isNeeded ? 'magnesium' : `${header} ${book}${row}`];
    case 'word':
      return [header, quantity.words[row % quantity.words.length]];
    case 'text':
      return [header, `words of ${book}`];
  }
}

/** A book with two rows of a sheet, in which every column holds something. */
function sheetsWith(sheet: InputSheet, units: Units, form: Form, book: string): Sheets {
  const rows = [0, 1].map((row) => {
    const cells = columnsOf(sheet).map((input) => typed(input.header, input, row, units, form, book));
    const spots = sheet.readings ? READINGS[sheet.readings]! : [];
    return Object.fromEntries([
      ...cells,
      ...spots.map((spot) => typed(spot, { quantity: LENGTH }, row, units, form, book)),
    ]);
  });
  const isInch = units === INCH;
  return {
    Setup: table(
      { Item: 'Length unit', Value: isInch ? 'in' : 'mm' },
      { Item: 'Temperature unit', Value: isInch ? 'F' : 'C' },
    ),
    [sheet.name]: table(...rows),
  };
}

/** What the cell under each header is read as; text as it stands. */
function readValues(book: Book, sheet: InputSheet): unknown[][] {
  const found = book.tables.get(sheet.name)!;
  const read = (row: Row, { header, quantity }: InputColumn) => {
    const content = row.cell(header)?.cell.content;
    if (quantity.kind === 'text') return content && nameText(content);
    const value = row.value(header, quantity);
    if (typeof value !== 'object' || 'low' in value) return value;
    const exact = quantitiesOf({ ...value, row: 0, bad: [] });
    return exact.celsius ?? exact.mm;
  };
  return dataRowsOf(found).map((number) => {
    const row = new Row(found, number);
    const values = columnsOf(sheet).map((input) => read(row, input));
    expect(row.bad).toEqual([]);
    expect(values).not.toContain(undefined);
    return values;
  });
}

let takeOut: () => void;
beforeAll(() => {
  takeOut = addPartSheet(PLUGS);
});
afterAll(() => takeOut());

/** Fits are dropped, and of Setup one book's is taken. */
const isMerged = ({ name }: InputSheet) => name !== FITS.name && name !== SETUP.name;
const SHEETS = [...inputSheets(), PLUGS].filter(isMerged).map((sheet) => [sheet.name, sheet] as const);

describe.each(SHEETS)('%s', (_, sheet) => {
  test.each(Object.entries(FORMS))('%s', (_form, form) => {
    const books = booksOf(sheetsWith(sheet, METRIC, form, 'a'), sheetsWith(sheet, INCH, form, 'b'));
    for (const order of [books, [...books].reverse()]) {
      const stock = mergeBooks(order, 'stock.xlsx');
      const own = order.flatMap((book) => readValues(book, sheet));
      expect(own).toHaveLength(4);
      // The cells that are written, and the rows that are assessed.
      expect(readValues(stock, sheet)).toEqual(own);
      const ownLists = order.map((book) => listsOf(book));
      for (const [name, rows] of Object.entries(listsOf(stock))) {
        const ownRows = ownLists.flatMap((lists) => lists[name] ?? []);
        expect(rows.map(quantitiesOf), name).toEqual(ownRows.map(quantitiesOf));
        expect(rows.length, name).toBe(4);
      }
      expect(stock.bad).toEqual([]);
      expectSameAnew(stock);
    }
  });

  test('names that both books have', () => {
    const stock = stockOf(sheetsWith(sheet, METRIC, undefined, 'a'), sheetsWith(sheet, INCH, undefined, 'a'));
    expectSameAnew(stock);
    // Each part has the name of its book.
    const parts = columnsOf(sheet).filter(
      ({ quantity }) => quantity.kind === 'name' && quantity.of === 'part',
    );
    const found = stock.tables.get(sheet.name)!;
    for (const { header } of parts) {
      const names = dataRowsOf(found).map((row) => new Row(found, row).name(header));
      expect(names.map((name) => name![0])).toEqual(['a', 'a', 'b', 'b']);
    }
  });
});

test('every sheet that a user fills is in the stock', () => {
  const sheets = Object.assign({}, ...SHEETS.map(([, sheet]) => sheetsWith(sheet, METRIC, undefined, 'a')));
  expect([...stockOf(sheets).tables.keys()].sort()).toEqual(
    [...SHEETS.map(([name]) => name), 'Setup'].sort(),
  );
});

test.each(Array.from({ length: 20 }, (_, place) => place))('parts of random books from seed %i', (place) => {
  const books = booksOf(randomBook(2 * place + 1), randomBook(2 * place + 2));
  const stock = mergeBooks(books, 'stock.xlsx');
  const named = ['name', 'engine', 'gauge'];
  const unnamed = (row: TableRow) =>
    Object.fromEntries(Object.entries(quantitiesOf(row)).filter(([key]) => !named.includes(key)));
  for (const sheet of ['Journals', 'Rods', 'Cases', 'Shells']) {
    const own = books.flatMap((book): readonly PartRow[] => book.parts.of(sheet));
    expect(stock.parts.of(sheet).map(unnamed)).toEqual(own.map(unnamed));
  }
});
