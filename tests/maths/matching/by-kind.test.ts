/** Mains that can all be filled are matched apart from pins that cannot: values against trying every set. */
import { expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { Stock } from '../../../src/maths/matching/stock.js';
import { bestByTryingAll } from './every-set.js';
import { workshopStock } from './random-stock.js';
import { valuesOf } from './values-of.js';

/** One rod too few; every third stock has a main that was not measured. */
function scarceStock(seed: number): Stock {
  const stock = workshopStock(seed, { cranks: 3, pins: 1, mains: 1, rods: 2, shells: 7, massSpread: 3 });
  if (seed % 3 > 0) return stock;
  const [first, ...others] = stock.engines;
  const journals = first!.journals.map((journal) =>
    journal.fit === 'main' ? { ...journal, part: undefined } : journal,
  );
  return { ...stock, engines: [{ ...first!, journals }, ...others] };
}

test('kinds of which one is not full', async () => {
  const seeds = Array.from({ length: 12 }, (_, seed) => seed + 1);
  let parted = 0;
  for (const seed of seeds) {
    const stock = scarceStock(seed);
    const told: string[] = [];
    const result = await matchStock(stock, { onProgress: (message) => told.push(message) });
    const best = bestByTryingAll(stock);
    expect(valuesOf(result, 'reached'), `seed ${seed}`).toEqual(best);
    expect(valuesOf(result, 'bound'), `seed ${seed}`).toEqual(best);
    parted += Number(told.some((message) => message.startsWith('main: ')));
  }
  expect(parted).toBeGreaterThan(7);
});
