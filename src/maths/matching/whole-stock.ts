/** The search of one independent stock: the aims in turn, each with its proof. */
import { mmOfGrain } from '../grain.js';
import { type Aim, aimsOf, greatestCommonDivisor, pricesOf } from './aims.js';
import { FitTable } from './fit-table.js';
import type { StockOnGrid } from './grid.js';
import type { FoundSets } from './independent.js';
import { pursueLarge } from './large.js';
import { modelOf } from './model-columns.js';
import { namedFits } from './named-fits.js';
import { plainSearch } from './plain-search.js';
import { distanceStep, type Problem, problemOf } from './problem.js';
import { putFits } from './put-fits.js';
import type { Solver } from './solver.js';
import type { Reached } from './stage.js';
import { pursue } from './stages.js';
import type { MatchedFit, Stock } from './stock.js';
import { compareValues, WorkingSets } from './working-sets.js';

/** A stock with the sets at hand, to be searched as a whole. */
export interface Started {
  readonly stock: StockOnGrid;
  readonly problem: Problem;
  readonly sets: WorkingSets;
  readonly large: boolean;
}

export type Progress = (message: string) => void;

/** From here on journals of different engines are one class (large.ts). */
export const LARGE_JOURNALS = 250;

function journalCount(stock: Stock): number {
  return stock.engines.reduce((sum, { journals }) => sum + journals.length, 0);
}

/** A stock of no more cranks than these, and below the general limit, is never large: an exact proof is fast enough. */
const PROVED_CRANKS = 10;

/** The limit for a stock with a mass spread: its exact programs have the windows of every crank. */
const LARGE_WEIGHED = 80;

/**
 * The problem of a stock with its first sets: those of the greedy start, or the given ones where they are better.
 * @param before fits of a stock that this one is a part of
 */
export function start(
  stock: StockOnGrid,
  remaining: () => number,
  largeFrom: number,
  before: readonly MatchedFit[] = [],
): Started {
  const { kinds, engines } = stock.inner;
  const weighed = engines.length > PROVED_CRANKS && kinds.some(({ massSpread }) => massSpread !== undefined);
  const from = weighed ? Math.min(largeFrom, LARGE_WEIGHED) : largeFrom;
  const large = stock.grid > 1 || journalCount(stock.inner) >= from;
  const problem = problemOf(stock.inner, { merge: large });
  const sets = new WorkingSets(new FitTable(problem));
  plainSearch(sets, remaining);
  if (before.length > 0) {
    const own = new Set(engines.flatMap(({ journals }) => journals));
    const known = setsOf(
      sets.table,
      before.filter(({ journal }) => own.has(journal)),
    );
    if (compareValues(known.value(), sets.value()) < 0) sets.copyFrom(known.choices);
  }
  return { stock, problem, sets, large };
}

const isAtBound = ({ reached, bound }: Reached) => reached === bound;

/** Steps of an aim in the units of the result, with the sign of the result. Adding 0 turns −0 into 0. */
function resultOf({ amount, sign, step }: Aim, steps: number, pricePerUnit: number): number {
  return (steps * sign * step) / (amount === 'price' ? pricePerUnit : 1) + 0;
}

/** Whether a large stock is searched a second time, with the windows of every crank: only then are its masses exact. */
function isWorthAll({ grid, inner }: StockOnGrid): boolean {
  const journals = journalCount(inner);
  const weighed = inner.kinds.some(({ massSpread }) => massSpread !== undefined);
  return weighed && grid === 1 && journals >= LARGE_WEIGHED && journals < LARGE_JOURNALS;
}

function setsOf(table: FitTable, fits: readonly MatchedFit[]): WorkingSets {
  const sets = new WorkingSets(table);
  putFits(sets, new Set(), fits, (row) => row);
  return sets;
}

/** The same sets, with the journals of different engines in classes of their own. */
function setsApart(stock: Stock, sets: WorkingSets): WorkingSets {
  return setsOf(new FitTable(problemOf(stock, { merge: false })), namedFits(sets));
}

/** What was found of a stock, to go on from. */
export interface Finished extends FoundSets {
  readonly sets: WorkingSets;
  readonly stages: readonly Reached[];
  /** Whether its time ended before all was proved. */
  readonly isCutShort: boolean;
}

/**
 * The best sets of a stock as a whole, and what is proven of them.
 * @param before what an earlier search of it found, whose time was up
 */
export function finish(
  { stock, problem, sets, large }: Started,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
  before?: Finished,
): Finished {
  const prices = pricesOf(stock.inner);
  const aims = aimsOf(stock.inner, {
    price: greatestCommonDivisor(prices.steps),
    distance: distanceStep(problem),
  });
  const show = ({ aim, reached, bound }: Reached) => {
    const amount = (steps: number) => resultOf(aim, steps, prices.perUnit);
    const shown = (steps: number) =>
      aim.amount === 'distance' ? `${mmOfGrain(amount(steps))} mm` : `${amount(steps)}`;
    onProgress(
      reached === bound
        ? `${aim.name}: ${shown(reached)}, proved`
        : `${aim.name}: found ${shown(reached)}, proven best ${shown(bound)}`,
    );
  };
  const run = (steps: Iterable<Reached>, isEnough: (each: Reached) => boolean = () => false) => {
    const stages: Reached[] = [];
    for (const each of steps) {
      show(each);
      stages.push(each);
      if (isEnough(each)) break;
    }
    return stages;
  };
  const twice = large && isWorthAll(stock);
  let found = before?.sets ?? sets;
  let stages = before?.stages ?? [];
  const byClasses = large && found === sets;
  if (byClasses) {
    const steps = pursueLarge({ solver, stock, sets, remaining }, aims, stages);
    stages = run(steps, (each) => twice && !isAtBound(each));
  }
  if (!byClasses || (twice && !stages.every(isAtBound))) {
    if (byClasses) {
      if (remaining() > 0) onProgress('not all is proved: once more, with every crank by itself');
      found = setsApart(stock.inner, sets);
    }
    const model = modelOf(found.table.problem);
    stages = run(pursue({ solver, model, sets: found, remaining }, aims, stages));
  }
  const proofs = stages.map(({ aim, bound, gapStays }) => ({
    aim: aim.name,
    bound: resultOf(aim, bound, prices.perUnit),
    gapStays,
  }));
  const isCutShort = remaining() <= 0 && !stages.every(isAtBound);
  return { fits: namedFits(found), proofs, sets: found, stages, isCutShort };
}
