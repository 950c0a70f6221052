/** Cranks filled as a whole: the bound forbids no sets, and sees what masses do to a crank. */
import { describe, expect, test } from 'vitest';
import { aimsOf, pricesOf } from '../../../src/maths/matching/aims.js';
import { FitTable } from '../../../src/maths/matching/fit-table.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import { orderStock } from '../../../src/maths/matching/order.js';
import { problemOf } from '../../../src/maths/matching/problem.js';
import { putFits } from '../../../src/maths/matching/put-fits.js';
import { type ModelSide, outerSide, wholeSide } from '../../../src/maths/matching/sides.js';
import { loadSolver } from '../../../src/maths/matching/solver.js';
import type { Reached } from '../../../src/maths/matching/stage.js';
import type { StageResult, Stock } from '../../../src/maths/matching/stock.js';
import { WorkingSets } from '../../../src/maths/matching/working-sets.js';
import { bestByTryingAll } from './every-set.js';
import { tinyStock, workshopStock } from './random-stock.js';
import { valuesOf } from './values-of.js';

/** The best sets of a stock, with what both bounds say of each aim when those before it are met. */
async function boundsOf(given: Stock) {
  const stock = orderStock(given);
  const sets = new WorkingSets(new FitTable(problemOf(stock, { merge: true })));
  const onGrid = { grid: 1, inner: stock, outer: stock };
  const search = { solver: await loadSolver(), stock: onGrid, sets, remaining: () => 60 };
  const whole = wholeSide(search);
  // Nor is there a program where nothing fits.
  if (!whole || sets.table.problem.spaces.length === 0) return undefined;
  const result = await matchStock(stock);
  // The aim of engines that could be completed has a test of its own.
  const isCommon = ({ aim }: StageResult) => aim !== 'filled journals of engines that could be completed';
  const common = { ...result, stages: result.stages.filter(isCommon) };
  putFits(sets, new Set(stock.engines.map(({ name }) => name)), result.fits, (row) => row);
  const outer = outerSide(search);
  const { perUnit } = pricesOf(stock);
  const aims = aimsOf(stock, { price: 1, distance: 1 });
  const reached = valuesOf(common, 'reached').map((value, place) =>
    aims[place]!.amount === 'price' ? (value / 100) * perUnit : value,
  );
  const held: Reached[] = reached.map((value, place) => ({
    aim: aims[place]!,
    reached: value,
    bound: value,
  }));
  const boundOf = ({ relaxation, bridge }: ModelSide, place: number) => {
    for (const quad of bridge.quadsOf(sets)) relaxation.pool.add(quad);
    bridge.fillingsOf(sets, relaxation.pool);
    const bounded = relaxation.bound(aims[place]!, held.slice(0, place), Number.POSITIVE_INFINITY, () => 60);
    return Math.ceil(bounded!.linear.bound);
  };
  return aims.map(({ amount }, place) => ({
    amount,
    reached: reached[place]!,
    whole: boundOf(whole, place),
    outer: boundOf(outer, place),
  }));
}

describe('the bound of whole cranks', () => {
  test('is never beyond the best of all possible sets, of tiny stocks with a mass spread', async () => {
    let [stocks, nearer, farther] = [0, 0, 0];
    for (let seed = 5001; seed <= 5500; seed++) {
      const stock = tinyStock(seed);
      const bounds = await boundsOf(stock);
      if (!bounds) continue;
      stocks++;
      const best = bestByTryingAll(stock, new Set());
      for (const [place, { amount, reached, whole, outer }] of bounds.entries()) {
        if (amount !== 'price') expect(reached, `seed ${seed}`).toBe(best[place]);
        expect(whole, `seed ${seed}, ${amount}`).toBeLessThanOrEqual(reached);
        if (whole > outer) nearer++;
        if (whole < outer) farther++;
      }
    }
    expect(stocks).toBeGreaterThan(60);
    // Of some the masses forbid what the other bound takes for possible.
    expect(nearer).toBeGreaterThan(4);
    expect(farther).toBe(0);
  });

  test('knows that rods of unlike masses complete no crank', async () => {
    const [few] = [workshopStock(2, { cranks: 1, pins: 2, mains: 0, rods: 2, shells: 20, massSpread: 3 })];
    const [light, heavy] = few!.rods;
    const apart = {
      ...few!,
      rods: [
        { ...light!, mass: 610 },
        { ...heavy!, mass: 620 },
      ],
    };
    const alike = {
      ...few!,
      rods: [
        { ...light!, mass: 610 },
        { ...heavy!, mass: 612 },
      ],
    };
    // A third rod that no journal takes, so that there is more than one window of masses.
    const odd = {
      ...light!,
      name: 'odd',
      mass: 700,
      part: { ...light!.part, size: 1, largest: 1, smallest: 1 },
    };
    const complete = async (stock: Stock) =>
      (await boundsOf({ ...stock, rods: [...stock.rods, odd] }))!.find(
        ({ amount }) => amount === 'completeEngines',
      );
    expect(await complete(apart)).toMatchObject({ reached: 0, whole: 0, outer: -1 });
    expect(await complete(alike)).toMatchObject({ reached: -1, whole: -1, outer: -1 });
  });

  test('proves the distance of 25 cranks where the other bound leaves a gap', async () => {
    // A program that may take half cranks finds a place for one rod more than whole cranks have.
    const size = { cranks: 25, pins: 4, mains: 0, rods: 130, shells: 500, massSpread: 3 };
    const { stages } = await matchStock(workshopStock(10, size));
    expect(stages.slice(0, 4).map(({ reached, bound }) => reached - bound)).toEqual([0, 0, 0, 0]);
  });
});
