import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['a column of spots', 'PART_SIZE(Cells!A1:A3)', 42.002],
  ['one spot', 'PART_SIZE(Cells!A1)', 42.001],
  ['a blank spot', 'PART_SIZE(Cells!B1)', ''],
  ['the largest', 'LARGEST_SPOT(Cells!A1:B3)', 42.003],
  ['the smallest', 'SMALLEST_SPOT(Cells!A1:B3)', 42.001],
  ['an empty text of a formula is a blank', 'SMALLEST_SPOT(Cells!A1:B4)', 42.001],
  ['a mean of means is of spots, not of repeats', 'PART_SIZE({42.001,42.004})', 42.0025],
])('%s', (_words, formula, value) => {
  const cells = [[42.001], [42.002], [42.003], ['=""', null]];
  expect(evaluate(`=${formula}`, cells)).toBe(value);
});

test('a half of a grain rounds up', () => {
  expect(evaluate('=SPOT_MEAN({42.000001,42.000002})', [], {}, { precisionRounding: 17 })).toBe(42.000002);
});
