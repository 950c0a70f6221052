/** The plain search, and what its time leaves of it. */
import { describe, expect, test } from 'vitest';
import { fillFirst } from '../../../src/maths/matching/fill.js';
import { FitTable } from '../../../src/maths/matching/fit-table.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import { orderStock } from '../../../src/maths/matching/order.js';
import { fillInOrder, plainSearch } from '../../../src/maths/matching/plain-search.js';
import { problemOf } from '../../../src/maths/matching/problem.js';
import { sitesOfEngines } from '../../../src/maths/matching/sites.js';
import { start } from '../../../src/maths/matching/whole-stock.js';
import { compareValues, WorkingSets } from '../../../src/maths/matching/working-sets.js';
import { workshopStock } from './random-stock.js';

const stock = workshopStock(3, { cranks: 12, pins: 4, mains: 0, rods: 62, shells: 240 });
const table = new FitTable(problemOf(orderStock(stock), { merge: true }));

function firstFit(): WorkingSets {
  const sets = new WorkingSets(table);
  fillInOrder(sets, sitesOfEngines(table.sites), fillFirst);
  return sets;
}

/** The plain search whose time is up after it was asked for so often. */
function cutShort(asked: number): WorkingSets {
  const sets = new WorkingSets(table);
  let times = 0;
  plainSearch(sets, () => (times++ < asked ? 1 : 0));
  return sets;
}

describe('the plain search', () => {
  test('without any time is first fit, engine by engine, whole', () => {
    expect(cutShort(0).choices).toEqual(firstFit().choices);
    expect(cutShort(0).value().complete).toBeGreaterThan(0);
  });

  test('is never worse than that, wherever its time cuts it off', () => {
    const first = firstFit().value();
    for (let asked = 1; asked < 60; asked++)
      expect(compareValues(cutShort(asked).value(), first)).toBeLessThanOrEqual(0);
    // With all of its time it is better here.
    expect(compareValues(cutShort(1000).value(), first)).toBeLessThan(0);
  });

  test('stops within a search, not only between two', () => {
    let times = 0;
    plainSearch(new WorkingSets(table), () => {
      times++;
      return 1;
    });
    expect(times).toBeGreaterThan(3 * sitesOfEngines(table.sites).length);
  });

  test('of a part of a stock is no worse than what was found of the whole, without any time', async () => {
    let better = 0;
    for (let seed = 1; seed <= 8; seed++) {
      const inner = orderStock(
        workshopStock(seed, { cranks: 5, pins: 3, mains: 0, rods: 16, shells: 31, wear: 800 }),
      );
      const { fits, completeEngines } = await matchStock(inner);
      const stock = { grid: 1, inner, outer: inner };
      const known = start(stock, () => 0, 250, fits).sets.value();
      expect(known.complete).toBe(completeEngines.length);
      if (compareValues(known, start(stock, () => 0, 250).sets.value()) < 0) better++;
    }
    expect(better).toBeGreaterThan(3);
  });
});
