/** Large stocks: journals of different engines as one class, and values on a coarser grid. */
import { describe, expect, test } from 'vitest';
import { stockOnGrid } from '../../../src/maths/matching/grid.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import { orderStock } from '../../../src/maths/matching/order.js';
import { search } from '../../../src/maths/matching/search.js';
import { loadSolver } from '../../../src/maths/matching/solver.js';
import type { Stock } from '../../../src/maths/matching/stock.js';
import { bestByTryingAll } from './every-set.js';
import { ofType, randomOf, shuffledStock, tinyStock, together, workshopStock } from './random-stock.js';

/** Nothing ran anywhere, so that the last aim costs no time. */
function neverRun(stock: Stock): Stock {
  const forget = <Row extends object>(row: Row): Row => ({ ...row, ran: undefined });
  return { ...stock, rods: stock.rods.map(forget), shells: stock.shells.map(forget) };
}

const large = { cranks: 70, pins: 4, mains: 0, rods: 360, shells: 1400 };

describe('a stock of 70 cranks', () => {
  test('is proved complete, every set keeping every rule', async () => {
    const stock = neverRun(workshopStock(4, large));
    const { stages, completeEngines, grid } = await matchStock(stock);
    expect(stages[0]).toEqual({ aim: 'complete engines', reached: 70, bound: 70 });
    expect(stages[1]!.bound).toBe(0);
    expect(completeEngines).toHaveLength(70);
    expect(grid).toBeUndefined();
  });

  test('readings of 0.001 µm are put on a grid of at most 1 µm', async () => {
    const { grid, stages } = await matchStock(neverRun(workshopStock(4, { ...large, step: 1 })));
    expect(grid).toBeGreaterThan(1);
    expect(grid).toBeLessThanOrEqual(1000);
    expect(stages[0]!.reached).toBe(70);
  });
});

test('a shelf of two engine types needs no coarser grid than each of them', () => {
  const fine = { cranks: 40, pins: 4, mains: 0, rods: 200, shells: 700, step: 1 };
  const own = (type: string, seed: number) => ofType(type, orderStock(workshopStock(seed, fine)));
  const [a, b] = [own('A', 1), own('B', 2)];
  expect(stockOnGrid(a).grid).toBeGreaterThan(1);
  expect(stockOnGrid(together(a, b)).grid).toBe(Math.max(stockOnGrid(a).grid, stockOnGrid(b).grid));
  // As one type they do.
  expect(stockOnGrid(together(a, ofType('A', b))).grid).toBeGreaterThan(stockOnGrid(a).grid);
});

test('a grid makes only allowed fits, and its bound is of the parts themselves', async () => {
  const solver = await loadSolver();
  let open = 0;
  for (let seed = 5001; seed <= 5100; seed++) {
    const stock = orderStock(tinyStock(seed));
    if (stock.allowUndecided) continue;
    const coarse = stockOnGrid(stock, 1000);
    expect(coarse.grid).toBe(1000);
    const { fits, proofs } = search(
      coarse,
      solver,
      () => 60,
      () => {},
    );
    const [complete] = bestByTryingAll(stock) as [number];
    const made = new Set(fits.map(({ engine }) => engine)).size;
    // Never better than the best, and the bound never worse.
    const whole = coarse.inner.engines.filter(
      ({ name, journals }) =>
        journals.length > 0 && journals.length === fits.filter(({ engine }) => engine === name).length,
    ).length;
    expect(whole, `seed ${seed}`).toBeLessThanOrEqual(-complete);
    expect(proofs[0]!.bound, `seed ${seed}`).toBeGreaterThanOrEqual(-complete);
    if (whole < proofs[0]!.bound) open++;
    expect(made).toBeGreaterThanOrEqual(whole);
  }
  // Rounding costs something on some, and the gap shows it.
  expect(open).toBeGreaterThan(0);
});

test('one large stock gives one result in any order of its rows', async () => {
  const names = async (stock: ReturnType<typeof workshopStock>) =>
    (await matchStock(stock)).fits.map(({ journal, bore, upper, lower }) =>
      [
        journal.name,
        bore.name,
        ...[upper, lower].map(({ shell }) => ('name' in shell ? shell.name : shell.mark)),
      ].join('/'),
    );
  const stock = neverRun(workshopStock(6, { ...large, cranks: 64 }));
  expect(await names(shuffledStock(randomOf(9), stock))).toEqual(await names(stock));
});
