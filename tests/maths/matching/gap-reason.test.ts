/** Why a gap stays: the time ended first, or the search ended short of the proof with time left. */
import { describe, expect, test } from 'vitest';
import { aimsOf } from '../../../src/maths/matching/aims.js';
import { FitTable } from '../../../src/maths/matching/fit-table.js';
import { type FoundSets, type Proof, sumOfProofs } from '../../../src/maths/matching/independent.js';
import { pursueLarge } from '../../../src/maths/matching/large.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import { modelOf } from '../../../src/maths/matching/model-columns.js';
import { orderStock } from '../../../src/maths/matching/order.js';
import { plainSearch } from '../../../src/maths/matching/plain-search.js';
import { distanceStep, problemOf } from '../../../src/maths/matching/problem.js';
import { loadSolver, type Solver } from '../../../src/maths/matching/solver.js';
import { pursue } from '../../../src/maths/matching/stages.js';
import type { GapReason, MatchResult } from '../../../src/maths/matching/stock.js';
import { WorkingSets } from '../../../src/maths/matching/working-sets.js';
import { tinyStock, workshopStock } from './random-stock.js';

const reasonsOf = ({ stages }: MatchResult) => stages.map(({ gapStays }) => gapStays);
const openAims = ({ stages }: MatchResult) =>
  stages.filter(({ reached, bound }) => reached !== bound).map(({ aim }) => aim);

/** Of its rods the bound of a large stock knows too little: it ends 75 grains short, in a tenth of a second. */
const SHORT_OF_PROOF = tinyStock(4183);

describe('a gap that stays', () => {
  test('says that the search ended, where it ended short of the proof with time left', async () => {
    const result = await matchStock(SHORT_OF_PROOF, { largeFrom: 0, seconds: 60 });
    expect(openAims(result)).toEqual(['distance from the aim']);
    expect(reasonsOf(result)).toEqual([undefined, undefined, 'search', undefined, undefined]);
  });

  test('says that the time ended, where there was none', async () => {
    let open = 0;
    for (let seed = 3001; seed <= 3040; seed++) {
      const { stages } = await matchStock(tinyStock(seed), { seconds: 0 });
      for (const { aim, reached, bound, gapStays } of stages) {
        expect(gapStays, `seed ${seed}, ${aim}`).toBe(reached === bound ? undefined : 'time');
        if (gapStays) open++;
      }
    }
    expect(open).toBeGreaterThan(3);
  });

  test('is none where everything is proved', async () => {
    const result = await matchStock(SHORT_OF_PROOF);
    expect(openAims(result)).toEqual([]);
    expect(reasonsOf(result)).toEqual([undefined, undefined, undefined, undefined, undefined]);
  });
});

describe('with time left on the clock a gap stays by', () => {
  const stock = orderStock(
    workshopStock(1, { cranks: 6, pins: 4, mains: 0, rods: 25, shells: 52, wear: 9000 }),
  );
  const remaining = () => 60;

  /** Whole-number programs that find and prove nothing. */
  const noPrograms = (solver: Solver, isCut: boolean): Solver => ({
    linear: solver.linear,
    whole: () => ({ values: undefined, bound: Number.NEGATIVE_INFINITY, isCut }),
  });
  /** Linear programs that their share of the time ends before they have a solution. */
  const noBounds = ({ linear, whole }: Solver): Solver => ({
    linear: (rows, columns) => ({ ...linear(rows, columns), solve: () => undefined }),
    whole,
  });

  const searches = {
    small: (solver: Solver) => {
      const problem = problemOf(stock, { merge: false });
      const sets = new WorkingSets(new FitTable(problem));
      plainSearch(sets, remaining);
      const aims = aimsOf(stock, { price: 1, distance: distanceStep(problem) });
      return [...pursue({ solver, model: modelOf(problem), sets, remaining }, aims)];
    },
    large: (solver: Solver) => {
      const problem = problemOf(stock, { merge: true });
      const sets = new WorkingSets(new FitTable(problem));
      plainSearch(sets, remaining);
      const aims = aimsOf(stock, { price: 1, distance: distanceStep(problem) });
      const onGrid = { grid: 1, inner: stock, outer: stock };
      return [...pursueLarge({ solver, stock: onGrid, sets, remaining }, aims)];
    },
  };

  test.each<[GapReason, string, keyof typeof searches, (solver: Solver) => Solver]>([
    ['time', 'programs that their time cut short', 'small', (solver) => noPrograms(solver, true)],
    ['time', 'programs that their time cut short', 'large', (solver) => noPrograms(solver, true)],
    ['search', 'programs that ended by themselves', 'small', (solver) => noPrograms(solver, false)],
    ['search', 'programs that ended by themselves', 'large', (solver) => noPrograms(solver, false)],
    ['time', 'bounds that their time cut short', 'small', noBounds],
    ['time', 'bounds that their time cut short', 'large', noBounds],
  ])('%s: %s, in the search of a %s stock', async (reason, _, size, solverOf) => {
    const stages = searches[size](solverOf(await loadSolver()));
    const open = stages.filter(({ reached, bound }) => reached !== bound);
    expect(open.length).toBeGreaterThan(0);
    for (const { gapStays } of open) expect(gapStays).toBe(reason);
  });
});

describe('stocks that share nothing', () => {
  const foundWith = (gapStays: GapReason | undefined): FoundSets => {
    const proof: Proof = { aim: 'complete engines', bound: 1, gapStays };
    return { fits: [], proofs: [proof] };
  };

  test.each<[(GapReason | undefined)[], GapReason | undefined]>([
    [[undefined, undefined], undefined],
    [[undefined, 'search'], 'search'],
    [['search', 'time'], 'time'],
    [['time', undefined], 'time'],
  ])('%j: together %s', (reasons, together) => {
    const [first] = sumOfProofs(SHORT_OF_PROOF, reasons.map(foundWith));
    expect(first).toEqual({ aim: 'complete engines', bound: reasons.length, gapStays: together });
  });
});

describe('a whole-number program', () => {
  // max x + y with 2x + 2y ≤ 3: 1, where the linear program says 1.5.
  const rows = [{ lower: Number.NEGATIVE_INFINITY, upper: 3 }];
  const columns = [0, 1].map(() => ({ rows: [0], values: [2], upper: 1, cost: -1 }));
  const start = new Float64Array(2);

  test.each([
    [0, true],
    [10, false],
  ])('in %d s: whether its time ended it is %s', async (seconds, isCut) => {
    const { whole } = await loadSolver();
    expect(whole(rows, columns, { seconds, start, target: -2 }).isCut).toBe(isCut);
  });
});
