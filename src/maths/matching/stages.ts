/**
 * The aims one after the other: reach the best value of one, hold it as a row, go on with the next.
 *
 * For each aim a linear bound first. Where the sets at hand already meet it, it is proved. Else a
 * whole-number program over the fits at hand; and if that does not meet the bound either, one over
 * every column that could still lead to something better, which settles it.
 */
import type { Aim } from './aims.js';
import { improve, improveAround, type Taken, usefulColumns } from './improve.js';
import { type LinearBound, linearBound, reducedCost, roundedUp, SLACK, type Stage } from './linear-bound.js';
import type { Column, Model } from './model-columns.js';
import { type Row, UNLIMITED } from './model-rows.js';
import type { Filter } from './pricing.js';
import type { Solver } from './solver.js';

export interface Reached {
  readonly aim: Aim;
  /** In steps of the aim, minimised. */
  readonly reached: number;
  readonly bound: number;
}

/** Share of the time left that one way of searching for better sets may take. */
const SHARE = 0.3;
/** Share of the time left that is kept for the aims after the one at hand. */
const LATER_SHARE = 0.2;

function amountOf({ amount, sign, step }: Aim, { amounts }: Column): number {
  return (sign * (amounts[amount] ?? 0)) / step;
}

function countOf(aim: Aim, sets: readonly Taken[]): number {
  let value = 0;
  for (const { column, times } of sets) value += times * amountOf(aim, column);
  return value === 0 ? 0 : value;
}

function stageOf(model: Model, aim: Aim, held: readonly Reached[], filters: readonly Filter[]): Stage {
  const first = model.rows.length;
  const rows: Row[] = [...model.rows, ...held.map(({ reached }) => ({ lower: -UNLIMITED, upper: reached }))];
  const weight = (amount: Aim['amount'], duals: Float64Array) => {
    let sum = aim.amount === amount ? aim.sign / aim.step : 0;
    for (const [place, { aim: earlier }] of held.entries()) {
      if (earlier.amount === amount) sum -= (duals[first + place]! * earlier.sign) / earlier.step;
    }
    return sum;
  };
  return {
    rows,
    filters,
    cost: (column) => amountOf(aim, column),
    entries: (column) => {
      const counted = held
        .map(({ aim: earlier }, place) => [first + place, amountOf(earlier, column)] as const)
        .filter(([, value]) => value !== 0);
      return {
        rows: [...column.rows, ...counted.map(([row]) => row)],
        values: [...column.values, ...counted.map(([, value]) => value)],
      };
    },
    fitWeights: (duals) => ({
      filledBeyond: weight('filledBeyond', duals),
      distance: weight('distance', duals),
    }),
  };
}

/** What no sets can beat, whatever they are: known without any search. */
export function plainBound({ problem, columns }: Model, aim: Aim): number {
  const { gaps, journals } = problem;
  const of = (is: Column['meaning']['is']) => columns.filter(({ meaning }) => meaning.is === is).length;
  if (aim.amount === 'completeEngines') return 0 - of('engine');
  if (aim.amount === 'kept') return 0 - of('kept');
  if (aim.amount !== 'filledBeyond') return 0;
  const open = new Set(gaps.map(({ journal }) => journal));
  return [...open].reduce((bound, journal) => bound - journals[journal]!.journals.length, 0);
}

export interface Pursuit {
  readonly sets: readonly Taken[];
  readonly stages: readonly Reached[];
}

export interface Search {
  readonly solver: Solver;
  readonly model: Model;
  readonly remaining: () => number;
}

/** Better sets for one aim until they meet its bound or the time is up, and the bound proven by then. */
function close(
  { solver, model, remaining }: Search,
  {
    aim,
    stage,
    linear,
    columns,
  }: { aim: Aim; stage: Stage; linear: LinearBound; columns: readonly Column[] },
  first: readonly Taken[],
): { sets: readonly Taken[]; bound: number } {
  let sets = first;
  let bound = roundedUp(linear.bound);
  const value = (each: readonly Taken[]) => countOf(aim, each);
  const isOpen = () => value(sets) > bound && remaining() > 0;
  const accept = (found: readonly Taken[] | undefined) => {
    if (found && value(found) < value(sets)) sets = found;
  };
  const around = (fewest: number, most: number) => {
    if (!isOpen()) return;
    const rest = remaining() * (1 - SHARE);
    const left = () => remaining() - rest;
    accept(improveAround(solver, model, stage, columns, sets, linear, value, bound, [fewest, most], left));
  };
  // Small changes first: a large program finds little in the time when it starts far from the best.
  around(1, 1);
  if (isOpen()) {
    const limits = { seconds: remaining() * SHARE, nodes: 50 };
    const likely = usefulColumns(model, stage, columns, sets, linear, value(sets), new Set());
    accept(improve(solver, stage, likely.columns, sets, bound, limits).sets);
  }
  around(1, 3);
  if (isOpen()) {
    const useful = usefulColumns(model, stage, columns, sets, linear, value(sets));
    const all = improve(solver, stage, useful.columns, sets, bound, { seconds: remaining() });
    accept(all.sets);
    if (useful.complete) bound = Math.min(value(sets), Math.max(bound, roundedUp(all.bound)));
  }
  return { sets, bound };
}

/** The columns that sets reaching the aim could use, and the filter that says the same of fits left out. */
function narrow(
  stage: Stage,
  { bound, duals }: LinearBound,
  columns: readonly Column[],
  sets: readonly Taken[],
  reached: number,
): { columns: Column[]; filter: Filter } {
  const most = reached - bound + SLACK;
  const own = new Set(sets.map(({ column }) => column));
  const others = columns.filter((column) => !own.has(column) && reducedCost(stage, column, duals) <= most);
  return { columns: [...own, ...others], filter: { duals, weights: stage.fitWeights(duals), most } };
}

/** Pursues the aims in order, beginning with no sets at all; pauses after each. */
export function* pursue(
  search: Search,
  aims: readonly Aim[],
  firstFits: readonly Column[],
): Generator<Reached, Pursuit> {
  const { solver, model, remaining } = search;
  let columns = [...model.columns, ...firstFits];
  const filters: Filter[] = [];
  let sets: readonly Taken[] = [];
  const stages: Reached[] = [];
  for (const [place, aim] of aims.entries()) {
    const stage = stageOf(model, aim, stages, filters);
    let bound = plainBound(model, aim);
    // A later aim gets some of the time, too.
    const rest = place === aims.length - 1 ? 0 : remaining() * LATER_SHARE;
    const left = () => remaining() - rest;
    if (countOf(aim, sets) > bound && left() > 0) {
      const linear = linearBound(solver, model, stage, columns, countOf(aim, sets), left);
      if (linear) {
        const closed = close({ solver, model, remaining: left }, { aim, stage, linear, columns }, sets);
        sets = closed.sets;
        bound = Math.max(bound, closed.bound);
        const narrowed = narrow(stage, linear, columns, sets, countOf(aim, sets));
        columns = narrowed.columns;
        filters.push(narrowed.filter);
      }
    }
    const reached = countOf(aim, sets);
    stages.push({ aim, reached, bound });
    yield { aim, reached, bound };
  }
  return { sets, stages };
}
