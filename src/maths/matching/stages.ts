/**
 * The aims one after the other: reach the best value of one, hold it as a row, go on with the next.
 *
 * For each aim a linear bound first. Where the sets at hand already meet it, it is proved. Else a
 * whole-number program over the fits at hand; and if that does not meet the bound either, one over
 * every column that could still lead to something better, which settles it.
 */
import type { Aim } from './aims.js';
import { type LinearBound, linearBound, reducedCost, roundedUp, SLACK, type Stage } from './linear-bound.js';
import { type Column, fitColumn, type Model } from './model-columns.js';
import { type Row, UNLIMITED } from './model-rows.js';
import { priceFits } from './pricing.js';
import type { Solver } from './solver.js';

/** A column taken some whole number of times. */
export interface Taken {
  readonly column: Column;
  readonly times: number;
}

export interface Reached {
  readonly aim: Aim;
  /** In steps of the aim, minimised. */
  readonly reached: number;
  readonly bound: number;
}

/** More fits than this are not put into one whole-number program. */
const MOST_FITS = 60_000;

function amountOf({ amount, sign, step }: Aim, { amounts }: Column): number {
  return (sign * (amounts[amount] ?? 0)) / step;
}

function valueOf(aim: Aim, sets: readonly Taken[]): number {
  let value = 0;
  for (const { column, times } of sets) value += times * amountOf(aim, column);
  return value === 0 ? 0 : value;
}

function stageOf(model: Model, aim: Aim, held: readonly Reached[]): Stage {
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

/** Solves over some columns, starting from the sets at hand; undefined when nothing better is found. */
function improve(
  solver: Solver,
  stage: Stage,
  columns: readonly Column[],
  sets: readonly Taken[],
  target: number,
  limits: { seconds: number; nodes?: number },
): { sets: Taken[] | undefined; bound: number } {
  const times = new Map(sets.map(({ column, times }) => [column, times]));
  const solution = solver.whole(
    stage.rows,
    columns.map((column) => ({ ...stage.entries(column), upper: column.upper, cost: stage.cost(column) })),
    {
      ...limits,
      start: Float64Array.from(columns, (column) => times.get(column) ?? 0),
      target,
      whole: () => true,
    },
  );
  const taken =
    solution.values &&
    columns.map((column, place) => ({ column, times: Math.round(solution.values![place]!) }));
  return { sets: taken?.filter(({ times }) => times > 0), bound: solution.bound };
}

/** Every column that a solution better than `reached` could use, judged by the linear bound. */
function usefulColumns(
  model: Model,
  stage: Stage,
  columns: readonly Column[],
  sets: readonly Taken[],
  { bound, duals }: LinearBound,
  reached: number,
): { columns: Column[]; complete: boolean } {
  const worst = reached - 1 - bound + SLACK;
  const own = new Set(sets.map(({ column }) => column));
  const useful = columns.filter((column) => own.has(column) || reducedCost(stage, column, duals) <= worst);
  const known = new Set(
    useful.map(({ meaning }) => (meaning.is === 'fit' ? `${meaning.gap},${meaning.shape}` : '')),
  );
  let complete = true;
  let count = 0;
  priceFits(model, duals, stage.fitWeights(duals), worst, ({ gap, shape }) => {
    if (known.has(`${gap},${shape}`)) return;
    count++;
    if (useful.length >= MOST_FITS) complete = false;
    else useful.push(fitColumn(model, gap, shape));
  });
  return { columns: useful, complete };
}

/** What no sets can beat, whatever they are: known without any search. */
function plainBound({ problem, columns }: Model, aim: Aim): number {
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

export function pursue(
  solver: Solver,
  model: Model,
  aims: readonly Aim[],
  firstFits: readonly Column[],
  remaining: () => number,
  onProgress: (message: string) => void,
): Pursuit {
  const columns = [...model.columns, ...firstFits];
  let sets: Taken[] = [];
  const stages: Reached[] = [];
  for (const aim of aims) {
    const stage = stageOf(model, aim, stages);
    let reached = valueOf(aim, sets);
    const accept = (found: Taken[] | undefined) => {
      if (!found) return;
      const value = valueOf(aim, found);
      if (value >= reached) return;
      [sets, reached] = [found, value];
    };
    let bound = plainBound(model, aim);
    const linear =
      reached > bound ? linearBound(solver, model, stage, columns, reached, remaining) : undefined;
    if (linear) bound = Math.max(bound, roundedUp(linear.bound));
    if (linear && reached > bound) {
      const r = improve(solver, stage, columns, sets, bound, { seconds: remaining() / 2 });
      accept(r.sets);
    }
    if (linear && reached > bound) {
      const useful = usefulColumns(model, stage, columns, sets, linear, reached);
      const full = improve(solver, stage, useful.columns, sets, bound, { seconds: remaining() });
      accept(full.sets);
      if (useful.complete) bound = Math.min(reached, Math.max(bound, roundedUp(full.bound)));
    }
    stages.push({ aim, reached, bound });
    onProgress(`${aim.name}: ${Math.abs(reached) * aim.step}`);
  }
  return { sets, stages };
}
