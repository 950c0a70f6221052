import { describe, expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { MatchResult, Stock } from '../../../src/maths/matching/stock.js';
import { bestByTryingAll } from './every-set.js';
import { tinyStock } from './random-stock.js';

const MOST = ['complete engines', 'filled journals beyond them', 'pairs kept together'];

/** Values in the form of bestByTryingAll: all to be least, prices in cents. */
function valuesOf({ stages }: MatchResult, of: 'reached' | 'bound'): number[] {
  return stages.map((stage) => {
    const { aim, [of]: value } = stage;
    const least = MOST.includes(aim)
      ? -value
      : aim === 'price of bought shells'
        ? Math.round(100 * value)
        : value;
    return least === 0 ? 0 : least;
  });
}

const describeStock = (seed: number, stock: Stock) =>
  `seed ${seed}: ${stock.engines.length} engines, ${stock.rods.length} rods, ${stock.shells.length} shells`;

describe('matching reaches and proves what trying every set finds', () => {
  for (let from = 1; from <= 500; from += 100) {
    test(`tiny stocks ${from} to ${from + 99}`, async () => {
      for (let seed = from; seed < from + 100; seed++) {
        const stock = tinyStock(seed);
        const best = bestByTryingAll(stock);
        const result = await matchStock(stock);
        expect(valuesOf(result, 'reached'), describeStock(seed, stock)).toEqual(best);
        expect(valuesOf(result, 'bound'), describeStock(seed, stock)).toEqual(best);
      }
    });
  }
});
