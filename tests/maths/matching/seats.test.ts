/** Fits put together to seats and dealt out again: the same sets, as many of every space, at the same distance. */
import { describe, expect, test } from 'vitest';
import { aimsOf } from '../../../src/maths/matching/aims.js';
import { FitTable } from '../../../src/maths/matching/fit-table.js';
import { improve } from '../../../src/maths/matching/improve.js';
import { modelOf } from '../../../src/maths/matching/model-columns.js';
import { orderStock } from '../../../src/maths/matching/order.js';
import { plainSearch } from '../../../src/maths/matching/plain-search.js';
import { problemOf } from '../../../src/maths/matching/problem.js';
import { type FitsBySpace, SeatProgram } from '../../../src/maths/matching/seats.js';
import { loadSolver } from '../../../src/maths/matching/solver.js';
import { stageOf } from '../../../src/maths/matching/stage.js';
import { type Taken, Translator } from '../../../src/maths/matching/taken.js';
import { WorkingSets } from '../../../src/maths/matching/working-sets.js';
import { bestByTryingAll } from './every-set.js';
import { tinyStock, workshopStock } from './random-stock.js';

function modelOfStock(stock: Parameters<typeof orderStock>[0]) {
  const problem = problemOf(orderStock(stock), { merge: false });
  const model = modelOf(problem);
  const fits: FitsBySpace = new Map(
    problem.spaces.map((space, place) => [
      place,
      [...problem.shapes.keys()].filter(
        (shape) => problem.shapes[shape]!.kind === space.kind && problem.rules.allows(place, shape),
      ),
    ]),
  );
  const [first, ...others] = aimsOf(problem.stock, { price: 1, distance: 1 });
  return {
    problem,
    model,
    fits,
    first: first!,
    distance: others.find(({ amount }) => amount === 'distance')!,
  };
}

/** What sets count for, and how often each space and each shape is among them. */
function tally(sets: readonly Taken[]) {
  const counts = new Map<string, number>();
  const add = (key: string, times: number) => counts.set(key, (counts.get(key) ?? 0) + times);
  for (const { column, times } of sets) {
    const { meaning, amounts } = column;
    if (meaning.is === 'fit') {
      add(`space ${meaning.space}`, times);
      add(`shape ${meaning.shape}`, times);
    }
    for (const [amount, value] of Object.entries(amounts)) add(amount, value * times);
  }
  return Object.fromEntries([...counts].filter(([, count]) => count !== 0).sort());
}

describe('seats', () => {
  test('are far fewer than fits, and sets survive the way there and back', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const size = { cranks: 5, pins: 4, mains: 2, rods: 22, shells: 60, wear: 6000 };
      const { problem, model, fits, first, distance } = modelOfStock(workshopStock(seed, size));
      const sets = new WorkingSets(new FitTable(problem));
      plainSearch(sets, () => 60);
      const taken = new Translator(model, sets.table).toTaken(sets);
      const count = [...fits.values()].reduce((sum, shapes) => sum + shapes.length, 0);
      for (const aim of [first, distance]) {
        const program = new SeatProgram(model, stageOf(model, aim, [], []), model.columns, fits);
        const back = program.toSets(program.toCounts(taken));
        const counted = tally(back);
        const before = tally(taken);
        // Which space of a seat takes which shape makes no difference. How often each is taken does.
        if (aim === first) delete before.distance;
        if (aim === first) delete counted.distance;
        expect(counted).toEqual(before);
        for (const { column } of back) {
          const { meaning } = column;
          if (meaning.is === 'fit') expect(fits.get(meaning.space)).toContain(meaning.shape);
        }
        const made = program.columns.length - model.columns.length;
        expect(made).toBeLessThan(aim === first ? count / 10 : count);
      }
    }
  });

  test('make as many engines and as much of journals as all possible sets of tiny stocks', async () => {
    const solver = await loadSolver();
    let compared = 0;
    for (let seed = 6001; seed <= 6060; seed++) {
      const stock = tinyStock(seed);
      const { model, fits } = modelOfStock(stock);
      const [complete, beyond] = bestByTryingAll(stock, new Set());
      const [first, second] = aimsOf(model.problem.stock, { price: 1, distance: 1 });
      const solve = (aim: typeof first, held: Parameters<typeof stageOf>[2]) =>
        improve(
          solver,
          { model, stage: stageOf(model, aim!, held, []) },
          { others: model.columns, fits },
          [],
          -1_000,
          { seconds: 60 },
        );
      // Where nothing fits there is nothing to compare.
      if (fits.size === 0) continue;
      compared++;
      expect(Math.round(solve(first, []).bound), `seed ${seed}`).toBe(complete);
      const held = [{ aim: first!, reached: complete!, bound: complete! }];
      expect(Math.round(solve(second, held).bound), `seed ${seed}`).toBe(beyond);
    }
    expect(compared).toBeGreaterThanOrEqual(30);
  });
});
