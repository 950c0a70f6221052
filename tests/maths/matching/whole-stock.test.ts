/** A search whose time is up goes on later from where it was: against one that was never stopped. */
import { describe, expect, test } from 'vitest';
import { finishInTurn } from '../../../src/maths/matching/in-turn.js';
import { orderStock } from '../../../src/maths/matching/order.js';
import { loadSolver } from '../../../src/maths/matching/solver.js';
import {
  type Finished,
  finish,
  LARGE_JOURNALS,
  type Started,
  start,
} from '../../../src/maths/matching/whole-stock.js';
import { workshopStock } from './random-stock.js';

const always = () => 1000;

/** Seconds in plenty until they were asked for so often, then none. */
function until(asked: number): () => number {
  let times = 0;
  return () => (times++ < asked ? 1000 : 0);
}

function started(seed: number, largeFrom: number): Started {
  const inner = orderStock(
    workshopStock(seed, { cranks: 4, pins: 3, mains: 0, rods: 13, shells: 26, wear: 500, massSpread: 3 }),
  );
  return start({ grid: 1, inner, outer: inner }, always, largeFrom);
}

const reachedBy = ({ stages }: Finished) => stages.map(({ reached }) => reached);

describe('a search that was stopped', () => {
  test('proves, when it goes on, what one does that was not', async () => {
    const solver = await loadSolver();
    let stopped = 0;
    for (const seed of [1, 2]) {
      const whole = finish(started(seed, LARGE_JOURNALS), solver, always, () => {});
      const stock = started(seed, LARGE_JOURNALS);
      let last = finish(stock, solver, until(30), () => {});
      stopped += Number(last.isCutShort);
      for (const asked of [60, 120, Number.POSITIVE_INFINITY])
        last = finish(stock, solver, until(asked), () => {}, last);
      expect(last.proofs, `seed ${seed}`).toEqual(whole.proofs);
      expect(reachedBy(last)).toEqual(reachedBy(whole));
    }
    expect(stopped).toBeGreaterThan(0);
  });

  test('by classes gives nothing up, neither of its sets nor of its bounds', async () => {
    const solver = await loadSolver();
    let better = 0;
    for (const seed of [1, 2, 3]) {
      const stock = started(seed, 0);
      const before = finish(stock, solver, until(25), () => {});
      expect(before.isCutShort).toBe(true);
      const after = finish(stock, solver, always, () => {}, before);
      for (const [place, { reached, bound }] of after.stages.entries()) {
        const was = before.stages[place]!;
        expect(bound, `seed ${seed}`).toBeGreaterThanOrEqual(was.bound);
        expect(reached, `seed ${seed}`).toBeLessThanOrEqual(was.reached);
        if (reached < was.reached) better++;
        if (reached !== was.reached) break;
      }
    }
    expect(better).toBeGreaterThan(0);
  });
});

test('time that one leaves over goes to another whose share was too short', async () => {
  const solver = await loadSolver();
  const all = [1, 2].map((seed) => ({ started: started(seed, LARGE_JOURNALS), label: `${seed}: ` }));
  // A clock that stands still, but for the first search, whose share it ends.
  let now = 0;
  const told: string[] = [];
  const found = finishInTurn(
    all,
    solver,
    () => 1000 - now,
    (message) => {
      told.push(message);
      now = 510;
    },
  );
  const first = told[0]!.slice(0, 3);
  expect(told).toContain(`${first}once more, in the time that is left over`);
  expect([...found.values()].every(({ isCutShort }) => !isCutShort)).toBe(true);
});
