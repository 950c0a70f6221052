/** Rows of tables in a stock, engine types, settings, columns. */
import { describe, expect, test } from 'vitest';
import { Context } from '../../../src/engine/assess/context.js';
import { assessParts } from '../../../src/engine/assess/part.js';
import { assessTables } from '../../../src/engine/assess/table-checks.js';
import type { Book } from '../../../src/engine/book/book.js';
import { UserError } from '../../../src/engine/user-error.js';
import { type Sheets, table } from '../book-of.js';
import { randomBook } from '../random-book.js';
import { booksOf, cellsOf, readAnew, stockOf } from './merged.js';

const BIG_END = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.0254, 'Clearance max': 0.0508 };
const inches = (sheets: Sheets): Sheets => ({
  Setup: table({ Item: 'Length unit', Value: 'in' }),
  ...sheets,
});

describe('a row that two books share is kept once', () => {
  test.each([
    ['typed alike', { ...BIG_END }],
    ['in other letters', { ...BIG_END, 'Engine type': ' x ', Fit: 'Big End' }],
    ['as texts with units', { ...BIG_END, 'Clearance min': '0,0254 mm', 'Clearance max': '50.8 µm' }],
    ['with words of its own', { ...BIG_END, Source: 'manual, p. 12' }],
    [
      'with a header in inches',
      { 'Engine type': 'X', Fit: 'big end', 'Clearance min (in)': 0.001, 'Clearance max (in)': 0.002 },
    ],
    ['without its engine type', { ...BIG_END, 'Engine type': undefined }],
  ])('%s', (_, row) => {
    const stock = stockOf({ Limits: table(BIG_END) }, { Limits: table(row) });
    expect(cellsOf(stock, 'Limits')).toHaveLength(2);
    expect(assessTables(new Context(stock)).Limits.map(({ status }) => status)).toEqual(['consistent']);
  });

  test('from a book in inches', () => {
    const row = { ...BIG_END, 'Clearance min': 0.001, 'Clearance max': 0.002 };
    expect(stockOf({ Limits: table(BIG_END) }, inches({ Limits: table(row) })).limits).toHaveLength(1);
  });

  test('with the same refused cell', () => {
    const bad = { ...BIG_END, Aim: 'tight' };
    expect(stockOf({ Limits: table(bad) }, { Limits: table(bad) }).bad).toHaveLength(1);
    const otherwise = { ...BIG_END, Aim: 'loose' };
    expect(stockOf({ Limits: table(bad) }, { Limits: table(otherwise) }).bad).toHaveLength(2);
  });
});

test('a row that differs in one quantity is kept beside the other', () => {
  const stock = stockOf(
    { Limits: table(BIG_END) },
    { Limits: table({ ...BIG_END, 'Clearance max': 0.0509 }) },
  );
  const found = assessTables(new Context(stock)).Limits.map(({ why }) => why);
  expect(found).toEqual(Array(2).fill(['2 rows are for X, big end: the first rules']));
});

test('a row that one book has twice stays twice, as check has it', () => {
  const twice = { Limits: table(BIG_END, BIG_END) };
  expect(stockOf(twice).limits).toHaveLength(2);
  expect(stockOf(twice, { Limits: table(BIG_END) }).limits).toHaveLength(2);
});

const ROD = { Part: 'R1', 'A 0': 45 };
const typesOf = (sheets: readonly Sheets[]) => {
  const stock = stockOf(...sheets);
  const types = [stock, readAnew(stock)].map((book) =>
    book.parts.of('Rods').map(({ engineType }) => engineType),
  );
  expect(types[1]).toEqual(types[0]);
  return types[0];
};

test.each<[string, Sheets[], (string | undefined)[]]>([
  [
    'a book that names one type gives it to its rows',
    [
      { Limits: table(BIG_END), Rods: table(ROD) },
      { Limits: table({ ...BIG_END, 'Engine type': 'Y' }), Rods: table({ ...ROD, Part: 'R2' }) },
    ],
    ['X', 'Y'],
  ],
  [
    'a book that names none has the only one of the others',
    [{ Limits: table(BIG_END) }, { Rods: table(ROD) }],
    ['X'],
  ],
  [
    'a book that names none has none among several',
    [{ Limits: table(BIG_END, { ...BIG_END, 'Engine type': 'Y' }) }, { Rods: table(ROD) }],
    [undefined],
  ],
  ['no book names any', [{ Rods: table(ROD) }, { Rods: table({ ...ROD, Part: 'R2' }) }], ['', '']],
])('%s', (_, sheets, expected) => {
  expect(typesOf(sheets)).toEqual(expected);
});

test('a needed column stays where it is blank in every row; another does not', () => {
  const stock = stockOf({
    Journals: table({
      Part: 'J1',
      Engine: undefined,
      Fit: 'big end',
      Position: undefined,
      Bin: undefined,
      'A 0': 42,
    }),
    Shells: table({ Part: 'S1', Half: undefined, 'Wall 1': 1.5 }),
    Gauges: [['Gauge', 'Max error']],
  });
  expect(cellsOf(stock, 'Journals')![0]!.toSorted()).toEqual(['A 0', 'Engine', 'Fit', 'Part', 'Position']);
  expect(cellsOf(stock, 'Shells')![0]!.toSorted()).toEqual(['Half', 'Part', 'Wall 1']);
  expect(cellsOf(stock, 'Gauges')).toEqual([['Gauge', 'Max error']]);
  expect([...readAnew(stock).tables.keys()]).toEqual(['Gauges', 'Journals', 'Shells']);
});

test('the first Setup rules, wherever its book stands', () => {
  const setup = (unit: string, confidence: string) => ({
    Setup: table({ Item: 'Length unit', Value: unit }, { Item: 'Confidence', Value: confidence }),
  });
  const stock = stockOf({ Rods: table(ROD) }, setup('in', '90 %'), setup('mm', '99 %'));
  expect(stock.setup).toMatchObject({ lengthUnit: 'in', confidence: 0.9 });
  expect(cellsOf(stock, 'Setup')).toEqual([
    ['Item', 'Value'],
    ['Length unit', 'in'],
    ['Confidence', '90 %'],
  ]);
  expect(cellsOf(stock, 'Rods')).toEqual([
    ['Part', 'A 0'],
    ['R1', '45 mm'],
  ]);
});

test('Fits of the single books are dropped, and a stock of nothing else is refused', () => {
  const fits = { Fits: table({ Engine: 'E1', Fit: 'main', Position: 1 }) };
  const stock = stockOf({ Rods: table(ROD), ...fits });
  expect([stock.fits, stock.tables.has('Fits'), cellsOf(stock, 'Fits')]).toEqual([
    undefined,
    false,
    undefined,
  ]);
  expect(() => stockOf(fits)).toThrow(UserError);
});

test('what was said of a book is said of the stock, once', () => {
  const unread = { Rods: table({ ...ROD, A90: 45 }) };
  const stock = stockOf(unread, { Rods: table({ ...ROD, Part: 'R2' }) });
  expect(stock.notices).toEqual([
    'a.xlsx: sheet Rods: found the header "A90", which is not read; expected a reading headed such as ' +
      '"A 0", "A 90" or "Front 45"; rename the column if it holds readings.',
  ]);
});

test.each(Array.from({ length: 20 }, (_, place) => place + 1))(
  'a random book from seed %i is judged alone in a stock as by itself',
  (seed) => {
    const verdicts = (book: Book) => {
      const context = new Context(book);
      const tables = Object.entries(assessTables(context)).map(([name, rows]) => [
        name,
        rows.map(({ status }) => status),
      ]);
      return [
        ...book.parts
          .map((rows) => assessParts(rows, context))
          .all()
          .map(({ status }) => status),
        tables,
      ];
    };
    expect(verdicts(stockOf(randomBook(seed)))).toEqual(verdicts(booksOf(randomBook(seed))[0]!));
  },
);
