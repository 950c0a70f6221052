/** What is written of a cell into a workbook of other units, and that it is read as the same. */
import { expect, test } from 'vitest';
import { type Plain, table } from '../book-of.js';
import { booksOf, cellsOf, quantitiesOf, readAnew, stockOf } from './merged.js';

test('the unit of a setting stays in its header', () => {
  const setup: Plain[][] = [
    ['Item', 'Value (in)'],
    ['Length unit', 'mm'],
    ['Half difference', 0.0001],
  ];
  const stock = stockOf({ Rods: table({ Part: 'R1', 'A 0': 42 }), Setup: setup });
  expect(stock.setup.halfDifference).toBe(2540);
  expect(readAnew(stock).setup.halfDifference).toBe(2540);
});

test.each([
  // A third of an inch has no end in any unit.
  ['A 0', '1 1/3', '1 1/3 in', '1 1/3'],
  ['A 0 (in)', '1 1/3', '1 1/3 in', '1 1/3'],
  ['A 0 (mm)', '1 1/3 in', '1 1/3 in', '1 1/3 in'],
  ['A 0', '1 7/8', 47.625, 1.875],
  ['A 0', '1.875"', 47.625, 1.875],
  ['A 0', '36 µm', 0.036, '0.036 mm'],
  // Three digits behind a point could be thousands, were they not followed by another.
  ['A 0 (µm)', 1234.561, 1.234561, '1234.5610 µm'],
  ['A 0 (mm)', 1.234561, 1.234561, '1.234561 mm'],
])('an inch book that has under %s the reading %s', (header, reading, inMm, inInches) => {
  const inch = {
    Setup: table({ Item: 'Length unit', Value: 'in' }),
    Rods: table({ Part: 'R1', [header]: reading }),
  };
  const mm = { Setup: table({ Item: 'Length unit', Value: 'mm' }), Rods: table({ Part: 'R2', 'A 0': 42 }) };
  const own = booksOf(inch)[0]!.parts.of('Rods')[0]!;
  for (const [stock, expected] of [
    [stockOf(mm, inch), inMm],
    [stockOf(inch, mm), inInches],
  ] as const) {
    expect(cellsOf(stock, 'Rods')!.find(([name]) => name === 'R1')![1]).toBe(expected);
    for (const book of [stock, readAnew(stock)]) {
      const row = book.parts.of('Rods').find(({ name }) => name === 'R1')!;
      expect(quantitiesOf(row)).toEqual(quantitiesOf(own));
    }
  }
});

test('a spot is one column, however its header names it', () => {
  const stock = stockOf(
    { Rods: table({ Part: 'R1', 'Mid 0': 42.1, 'A 0': 42.2 }) },
    { Rods: table({ Part: 'R2', 'Middle 0°': 42.3, 'A 0 #1': 42.4, 'A 0 #2': 42.5 }) },
  );
  expect(cellsOf(stock, 'Rods')).toEqual([
    ['Part', 'Mid 0', 'A 0', 'A 0 #2'],
    ['R1', 42.1, 42.2, undefined],
    ['R2', 42.3, 42.4, 42.5],
  ]);
});
