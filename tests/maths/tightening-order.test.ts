import { expect, test } from 'vitest';
import { looseningPlace, orderFaults } from '../../src/maths/tightening-order.js';

test.each([
  ['whole, in any order of rows', [3, 1, 2], [], []],
  ['one missing', [1, 2, 4], [], [[3, 3]]],
  [
    'several',
    [3, 7],
    [],
    [
      [1, 2],
      [4, 6],
    ],
  ],
  ['one twice', [1, 2, 2, 3], [2], []],
  ['one three times', [1, 1, 1], [1], []],
  ['so far apart that nobody may count', [1, 900_000_000], [], [[2, 899_999_999]]],
  ['none', [], [], []],
])('%s', (_, numbers, doubled, missing) => {
  expect(orderFaults(numbers)).toEqual({ doubled, missing });
});

test('loosening is tightening turned round', () => {
  expect([1, 2, 3, 4].map((number) => looseningPlace(number, [4, 2, 1, 3]))).toEqual([4, 3, 2, 1]);
});

test('an order that is not whole cannot be turned round', () => {
  expect(looseningPlace(1, [1, 3])).toBeUndefined();
  expect(looseningPlace(1, [1, 1])).toBeUndefined();
});
