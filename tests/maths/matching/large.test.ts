/** The search of large stocks, on stocks small enough to try every set. */
import { describe, expect, test } from 'vitest';
import { windowsApart } from '../../../src/maths/matching/mass-groups.js';
import { ranksOf } from '../../../src/maths/matching/mass-windows.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import { bestByTryingAll } from './every-set.js';
import { randomOf, shuffledStock, tinyStock, wholeOf, workshopStock } from './random-stock.js';
import { valuesOf } from './values-of.js';

describe('tiny stocks searched as large ones are', () => {
  test('reach nothing better than is possible, and no bound is beyond the best', async () => {
    let [met, proved] = [0, 0];
    for (let seed = 4001; seed <= 4200; seed++) {
      const stock = tinyStock(seed);
      const best = bestByTryingAll(stock);
      const result = await matchStock(stock, { largeFrom: 0 });
      const [reached, bound] = [valuesOf(result, 'reached'), valuesOf(result, 'bound')];
      for (const [place, value] of best.entries()) {
        // Each bound is of sets that do as well at the earlier aims as those found.
        if (place > 0 && reached[place - 1] !== best[place - 1]) break;
        expect(reached[place], `seed ${seed}`).toBeGreaterThanOrEqual(value);
        expect(bound[place], `seed ${seed}`).toBeLessThanOrEqual(value);
      }
      if (String(reached) === String(best)) met++;
      if (String(reached) === String(bound)) proved++;
    }
    // The gap is seldom open.
    expect(met).toBeGreaterThan(190);
    expect(proved).toBeGreaterThan(180);
  });
});

describe('rods in groups of masses', () => {
  test('hold as many cranks of rods as any windows apart from each other', () => {
    const random = randomOf(7);
    for (let time = 0; time < 200; time++) {
      const masses = Array.from({ length: 12 }, () => wholeOf(random, 0, 15) / 10);
      const { windows, rankOf } = ranksOf(masses, 0.3);
      const counts = new Array<number>(windows.at(-1)!.last + 1).fill(0);
      for (const mass of masses) counts[rankOf(mass)]!++;
      const found = windowsApart(counts, windows, 2);
      const cranksOf = (first: number, last: number) =>
        Math.floor(counts.slice(first, last + 1).reduce((sum, count) => sum + count, 0) / 2);
      // Every way to cut the ranks into runs.
      let most = 0;
      for (let cuts = 0; cuts < 2 ** (counts.length - 1); cuts++) {
        let [first, cranks] = [0, 0];
        for (let last = 0; last < counts.length; last++) {
          if (last < counts.length - 1 && !((cuts >> last) & 1)) continue;
          if (windows.some((window) => window.first <= first && last <= window.last))
            cranks += cranksOf(first, last);
          first = last + 1;
        }
        most = Math.max(most, cranks);
      }
      expect(found.reduce((sum, { first, last }) => sum + cranksOf(first, last), 0)).toBe(most);
      for (const [place, { first, last }] of found.entries()) {
        expect(windows.some((window) => window.first <= first && last <= window.last)).toBe(true);
        if (place > 0) expect(first).toBeGreaterThan(found[place - 1]!.last);
      }
    }
  });

  test('complete a shelf of 64 cranks whose rods differ by no more than 3 g', async () => {
    const size = { cranks: 64, pins: 4, mains: 0, rods: 333, shells: 1280, massSpread: 3 };
    const { stages } = await matchStock(workshopStock(1, size), { seconds: 4 });
    expect(stages[0]).toEqual({ aim: 'complete engines', reached: 64, bound: 64 });
  });
});

test('a shelf with a mass spread gives one result in any order of its rows', async () => {
  const stock = workshopStock(6, { cranks: 12, pins: 4, mains: 0, rods: 62, shells: 240, massSpread: 3 });
  const names = async (rows: typeof stock) =>
    (await matchStock(rows, { largeFrom: 0 })).fits.map(({ journal, bore, parts }) => [
      journal.name,
      bore.name,
      parts.upper,
      parts.lower,
    ]);
  expect(await names(shuffledStock(randomOf(9), stock))).toEqual(await names(stock));
});
