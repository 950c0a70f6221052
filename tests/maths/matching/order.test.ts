import { describe, expect, test } from 'vitest';
import { compareText, orderStock } from '../../../src/maths/matching/order.js';
import { randomOf, shuffled, shuffledStock, tinyStock } from './random-stock.js';

describe('names in order', () => {
  test.each([
    ['numbers in names count as numbers', ['R1', 'R2', 'R10', 'R10a', 'R11']],
    ['case plays no part', ['a1', 'B1', 'b2', 'C']],
    [
      'longer digits than a double holds',
      ['R99999999999999999998', 'R99999999999999999999', 'R100000000000000000000'],
    ],
    ['leading zeros decide last', ['R01', 'R1', 'R02']],
  ])('%s', (_, names) => {
    for (let seed = 1; seed <= 10; seed++)
      expect(shuffled(randomOf(seed), names).sort(compareText)).toEqual(names);
  });

  test('names that differ by case alone are one', () => {
    expect(compareText('R10', 'r10')).toBe(0);
  });
});

test('a stock is in the same order whatever the order of its rows', () => {
  for (let seed = 1; seed <= 50; seed++) {
    const stock = tinyStock(seed);
    expect(orderStock(shuffledStock(randomOf(seed + 1), stock)), `seed ${seed}`).toEqual(orderStock(stock));
  }
});
