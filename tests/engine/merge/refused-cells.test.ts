/** A cell that a book refuses is refused in the stock, with the same sentence, and where the stock has it. */
import { expect, test } from 'vitest';
import { Context } from '../../../src/engine/assess/context.js';
import { assessParts } from '../../../src/engine/assess/part.js';
import type { Book } from '../../../src/engine/book/book.js';
import { sentenceOf } from '../../../src/engine/book/problems.js';
import { DATE, ERROR, type Plain, type Sheets, table } from '../book-of.js';
import { booksOf, cellsOf, readAnew, stockOf } from './merged.js';

/** The sheet that a refused cell stands in has rows of another book above, and other columns before it. */
const ABOVE: Sheets = {
  Setup: table({ Item: 'Length unit', Value: 'mm' }, { Item: 'Aim', Value: 0.5 }),
  Limits: table({
    'Engine type': 'X',
    Fit: 'main',
    Source: 'manual',
    'Clearance min': 0.02,
    'Clearance max': 0.05,
  }),
  Gauges: table({ Gauge: 'ring', Material: 'steel', 'Max error': 0.001 }),
  Materials: table({ Material: 'steel', Expansion: 11.5 }),
  Journals: table({
    Bin: 'rack',
    Part: 'J9',
    Engine: 'E9',
    Fit: 'main',
    Position: 9,
    'B 0': 50,
    Temperature: 20,
  }),
  Rods: table({ Bin: 'rack', Part: 'R9', Engine: 'E9', Mass: 500.5, Quantity: 1, 'B 0': 50 }),
  Shells: table({ Bin: 'rack', Part: 'S9', Half: 'upper', Quantity: 2, 'Wall 1': 1.5 }),
};
const JOURNAL = { Part: 'J1', Engine: 'E1', Fit: 'big end', Position: 1 };
const ROD = { Part: 'R1', Engine: 'E1' };

/** A formula without a value; the cell that it looks at is none of the stock's. */
const FORMULA = null;

test.each<[string, string, Record<string, Plain>]>([
  ['a reading', 'Journals', { ...JOURNAL, 'A 0': '49.99O' }],
  ['a reading of nothing', 'Journals', { ...JOURNAL, 'A 0': 0 }],
  ['a reading that is a date', 'Journals', { ...JOURNAL, 'A 0': DATE }],
  ['a reading that is an error', 'Journals', { ...JOURNAL, 'A 0': ERROR }],
  ['a reading that is a formula without a value', 'Journals', { ...JOURNAL, 'A 0': FORMULA }],
  ['a reading of a kilometre in inches', 'Journals', { ...JOURNAL, 'A 0 (in)': 50_000 }],
  ['a reading that could be thousands', 'Journals', { ...JOURNAL, 'A 0 (µm)': '1,234' }],
  ['a temperature', 'Journals', { ...JOURNAL, Temperature: 'warm' }],
  ['a temperature below absolute zero', 'Journals', { ...JOURNAL, 'Temperature (F)': -460 }],
  ['a temperature in a unit of length', 'Journals', { ...JOURNAL, 'Temperature (mm)': 20 }],
  ['a mass in a unit of length', 'Rods', { ...ROD, 'Mass (mm)': 500 }],
  ['a mass that could be thousands', 'Rods', { ...ROD, Mass: '1,234 g' }],
  ['a name that is a formula without a value', 'Rods', { ...ROD, Engine: FORMULA }],
  ['a name that is no name', 'Rods', { ...ROD, Gauge: true }],
  ['a name that is missing', 'Rods', { ...ROD, Part: undefined, 'A 0': 45 }],
  ['a word', 'Shells', { Part: 'S1', Half: 'left' }],
  ['a count', 'Shells', { Part: 'S1', Half: 'upper', Quantity: 1.5 }],
  ['a limit', 'Limits', { 'Engine type': 'X', Fit: 'main', 'Clearance min': 0, 'Clearance max': 'wide' }],
  ['a gauge error', 'Gauges', { Gauge: 'mic', 'Max error': -1 }],
  ['an unknown material', 'Gauges', { Gauge: 'mic', 'Max error': 1, Material: 'glass' }],
  ['an expansion', 'Materials', { Material: 'alloy', Expansion: 'about 12' }],
])('%s', (_, sheet, row) => {
  const own = { [sheet]: table(row) };
  const [bad] = booksOf(own)[0]!.bad;
  expect(bad).toBeDefined();
  const stock = stockOf(ABOVE, own);
  expect(stock.bad).toHaveLength(1);
  // The sentence stays; the address is that of the cell in the stock.
  const { cell, ...words } = bad!;
  expect(stock.bad[0]).toMatchObject({ header: words.header, found: words.found, expected: words.expected });
  const at = stock.bad[0]!.cell;
  expect(at).not.toBe(cell);
  expect(headerAt(stock, sheet, at)).toMatch(new RegExp(`^${words.header}`));
  expect(at).toMatch(/^[A-Z]+3$/);
  // Who reads the written cells anew finds the same cell.
  expect(readAnew(stock).bad.map((other) => [other.cell, other.header])).toEqual([[at, words.header]]);
});

function headerAt(stock: Book, sheet: string, address: string): Plain {
  return cellsOf(stock, sheet)![0]![address.charCodeAt(0) - 65];
}

test('texts of another book do not settle what a text means', () => {
  // Alone, 1,234 g is 1.234 or 1234; the other book has commas that are decimal.
  const doubtful = { Rods: table({ ...ROD, Mass: '1,234 g', 'A 0': 45 }) };
  const commas = {
    Rods: table({ Part: 'R2', Mass: '512,5 g', 'A 0': 45 }, { Part: 'R3', Mass: '1,5 g', 'A 0': 45 }),
  };
  const stock = stockOf(doubtful, commas);
  const results = assessParts(stock.parts.of('Rods'), new Context(stock));
  expect(results.map(({ status }) => status)).toEqual(['bad reading', 'no limits', 'no limits']);
  expect(sentenceOf('stock.xlsx', stock.bad[0]!)).toBe(
    'stock.xlsx: Rods!C2 (Mass): found the text "1,234 g"; expected a number with one reading, not 1.234 or 1234; ' +
      'type it as a number, or without the thousands mark.',
  );
  expect(stock.parts.of('Rods').map(({ mass }) => mass)).toEqual([undefined, 512.5, 1.5]);
  // The commas are numbers now, and settle nothing in the written book either.
  expect(readAnew(stock).bad).toHaveLength(1);
});

test('a refused setting is refused where it is written', () => {
  const setup = table(
    { Item: 'Confidence', Value: 0.9 },
    { Item: 'Aim', Value: null },
    { Item: 'Prefer', Value: 'luck' },
  );
  const stock = stockOf(
    { Rods: table({ ...ROD, 'A 0': 45 }) },
    { Setup: [[undefined, undefined], ...setup] },
  );
  const refused = ({ bad }: Book) => bad.map(({ sheet, cell, header }) => `${sheet}!${cell} ${header}`);
  expect(refused(stock)).toEqual(['Setup!B3 Aim', 'Setup!B4 Prefer']);
  expect(stock.setup.aimShare).toBeUndefined();
  expect(refused(readAnew(stock)).toSorted()).toEqual(refused(stock).toSorted());
});
