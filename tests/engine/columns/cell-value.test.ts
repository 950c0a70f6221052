/** A result as a cell has it: by its quantity, in the unit of the book. */
import { expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { cellValue, plainCell } from '../../../src/engine/columns/cell-value.js';
import { type ResultQuantity, type ResultValue, widthOf } from '../../../src/engine/columns/result-column.js';
import { REACHED } from '../../../src/engine/columns/summary-columns.js';
import type { StageResult } from '../../../src/maths/matching/stock.js';
import { bookOf, table, um } from '../book-of.js';

const assessmentIn = (unit: string) =>
  assessBook(bookOf({ Setup: table({ Item: 'Length unit', Value: unit }) }), { seconds: 1 });

test.each<[ResultQuantity, ResultValue, unknown, string]>([
  ['length', um(2540), 2.54, 'mm'],
  ['chance', 0.5, 0.5, 'chance'],
  ['count', 3, 3, 'whole'],
  ['price', 7.5, 7.5, 'plain'],
  ['word', 'tight', 'tight', 'plain'],
  ['yes or no', true, 'yes', 'plain'],
  ['yes or no', false, 'no', 'plain'],
  ['name', 7, 7, 'name'],
  ['name', 'E1', 'E1', 'plain'],
  ['name', '', '', 'plain'],
  ['sentence', 'One; two', 'One; two', 'text'],
  ['sentences', ['one', 'two'], 'one; two', 'text'],
])('a %s of %j is %j, as %s', async (quantity, result, value, format) => {
  const column = { header: 'A', quantity, width: 9, help: 'A.', value: () => result };
  expect(plainCell(column, undefined, await assessmentIn('mm'))).toEqual({ value, format });
});

test.each<[ResultQuantity, ResultValue]>([
  ['length', undefined],
  ['sentences', []],
])('a %s of %j is a blank cell', (quantity, value) => {
  expect(cellValue(quantity, value, 'mm')).toBeUndefined();
});

test.each<[StageResult['aim'], string, unknown, string]>([
  ['complete engines', 'mm', 2540, 'plain'],
  ['price of bought shells', 'in', 2540, 'plain'],
  ['distance from the aim', 'mm', 0.00254, 'mm'],
  ['distance from the aim', 'in', 0.0001, 'in'],
])('what an aim reached is shown as its own quantity: %s in %s', async (aim, unit, value, format) => {
  // 2.54 µm.
  const stage = { aim, reached: 2540, bound: 2540, gapStays: undefined };
  const column = REACHED.columns.find(({ header }) => header === 'Reached')!;
  expect(plainCell(column, stage, await assessmentIn(unit))).toEqual({ value, format });
});

test('a length in inches has room for its seven decimals', () => {
  const column = { header: 'A', quantity: 'length' as const, width: 10, help: 'A.', value: () => um(1) };
  expect([widthOf(column, 'mm'), widthOf(column, 'in')]).toEqual([10, 12]);
});
