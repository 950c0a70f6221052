import { describe, expect, test } from 'vitest';
import { type MatchingOptions, matchStock } from '../../../src/maths/matching/match.js';
import type { Stock } from '../../../src/maths/matching/stock.js';
import { bestByTryingAll } from './every-set.js';
import { randomOf, ruledStock, tinyStock, withShellsIn } from './random-stock.js';
import { valuesOf } from './values-of.js';

const describeStock = (seed: number, stock: Stock) =>
  `seed ${seed}: ${stock.engines.length} engines, ${stock.rods.length} rods, ${stock.shells.length} shells`;

/** Checks that the best sets of a stock are reached and proved. */
async function expectBest(seed: number, stock: Stock, options: MatchingOptions = {}): Promise<void> {
  const best = bestByTryingAll(stock);
  const result = await matchStock(stock, options);
  expect(valuesOf(result, 'reached'), describeStock(seed, stock)).toEqual(best);
  expect(valuesOf(result, 'bound'), describeStock(seed, stock)).toEqual(best);
}

describe('matching reaches and proves what trying every set finds', () => {
  for (let from = 1; from <= 500; from += 100) {
    test(`tiny stocks under all rules ${from} to ${from + 99}`, async () => {
      for (let seed = from; seed < from + 100; seed++) await expectBest(seed, ruledStock(seed));
    });
  }

  for (let from = 1; from <= 500; from += 100) {
    test(`tiny stocks ${from} to ${from + 99}`, async () => {
      for (let seed = from; seed < from + 100; seed++) await expectBest(seed, tinyStock(seed));
    });
  }
});

test('tiny stocks where some bores were measured with their shells in', async () => {
  let taken = 0;
  for (let seed = 1; seed <= 150; seed++) {
    const stock = withShellsIn(randomOf(seed), seed % 2 === 0 ? ruledStock(seed) : tinyStock(seed));
    const best = bestByTryingAll(stock);
    const result = await matchStock(stock);
    expect(valuesOf(result, 'reached'), describeStock(seed, stock)).toEqual(best);
    expect(valuesOf(result, 'bound'), describeStock(seed, stock)).toEqual(best);
    taken += result.fits.filter(({ upper }) => upper.from === 'stock' && upper.shell.isBrought).length;
  }
  expect(taken).toBeGreaterThan(100);
});
