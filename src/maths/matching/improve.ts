/** Better sets for one aim, by whole-number programs over chosen columns. */
import { type LinearBound, reducedCost, SLACK, type Stage } from './linear-bound.js';
import { type Column, engineOf, fitColumn, type Model } from './model-columns.js';
import { type PricedFit, priceFits } from './pricing.js';
import type { Solver } from './solver.js';

/** A column taken some whole number of times. */
export interface Taken {
  readonly column: Column;
  readonly times: number;
}

/** More fits than this are not put into one whole-number program. */
const MOST_FITS = 30_000;
/** And no more than this when only some engines are free. */
const MOST_FITS_AROUND = 2_000;

export interface SearchLimits {
  readonly seconds: number;
  readonly nodes?: number;
}

/**
 * Solves over some columns, starting from the sets at hand.
 * @param free whether a column may be taken otherwise than the sets at hand take it
 * @returns the sets, undefined when none are found, and a bound that holds for these columns alone
 */
export function improve(
  solver: Solver,
  stage: Stage,
  columns: readonly Column[],
  sets: readonly Taken[],
  target: number,
  limits: SearchLimits,
  free: (column: Column) => boolean = () => true,
): { sets: Taken[] | undefined; bound: number } {
  const times = new Map(sets.map(({ column, times }) => [column, times]));
  const kept = columns.filter((column) => times.has(column) || free(column));
  const solution = solver.whole(
    stage.rows,
    kept.map((column) => {
      const program = { ...stage.entries(column), upper: column.upper, cost: stage.cost(column) };
      if (free(column)) return program;
      return { ...program, lower: times.get(column)!, upper: times.get(column)! };
    }),
    { ...limits, start: Float64Array.from(kept, (column) => times.get(column) ?? 0), target },
  );
  const taken =
    solution.values && kept.map((column, place) => ({ column, times: Math.round(solution.values![place]!) }));
  return { sets: taken?.filter(({ times }) => times > 0), bound: solution.bound };
}

function fitKey({ meaning }: Column): string {
  return meaning.is === 'fit' ? `${meaning.gap},${meaning.shape}` : '';
}

/** Every column that sets better than `reached` could use, judged by the linear bound; the likeliest if too many. */
export function usefulColumns(
  model: Model,
  stage: Stage,
  columns: readonly Column[],
  sets: readonly Taken[],
  { bound, duals }: LinearBound,
  reached: number,
  engines?: ReadonlySet<number>,
): { columns: Column[]; complete: boolean } {
  const worst = reached - 1 - bound + SLACK;
  const own = new Set(sets.map(({ column }) => column));
  const useful = columns.filter((column) => own.has(column) || reducedCost(stage, column, duals) <= worst);
  for (const { column } of sets) if (!useful.includes(column)) useful.push(column);
  const known = new Set(useful.map(fitKey));
  const { gaps, journals } = model.problem;
  const fresh: PricedFit[] = [];
  priceFits(model, duals, stage.fitWeights(duals), worst, stage.filters, (fit) => {
    if (engines && !engines.has(journals[gaps[fit.gap]!.journal]!.engine)) return;
    if (!known.has(`${fit.gap},${fit.shape}`)) fresh.push(fit);
  });
  const most = engines ? MOST_FITS_AROUND : MOST_FITS;
  if (fresh.length > most) {
    fresh.sort((a, b) => a.reducedCost - b.reducedCost || a.gap - b.gap || a.shape - b.shape);
  }
  const complete = fresh.length <= most;
  return {
    columns: [...useful, ...fresh.slice(0, most).map(({ gap, shape }) => fitColumn(model, gap, shape))],
    complete,
  };
}

/**
 * Frees a few engines at a time, the others keeping their bores and shapes of pairs, until no such
 * change helps any more.
 */
export function improveAround(
  solver: Solver,
  model: Model,
  stage: Stage,
  columns: readonly Column[],
  first: readonly Taken[],
  linear: LinearBound,
  value: (sets: readonly Taken[]) => number,
  target: number,
  [fewest, most]: readonly [number, number],
  remaining: () => number,
): readonly Taken[] {
  const count = model.problem.stock.engines.length;
  let sets = first;
  for (let together = fewest; together <= Math.min(most, count); together++) {
    for (let [start, idle] = [0, 0]; idle < count; start = (start + 1) % count) {
      if (remaining() <= 0 || value(sets) <= target) return sets;
      const freed = new Set(Array.from({ length: together }, (_, place) => (start + place) % count));
      const useful = usefulColumns(model, stage, columns, sets, linear, value(sets), freed);
      const isFree = (column: Column) => {
        const engine = engineOf(model.problem, column);
        return engine === undefined || freed.has(engine);
      };
      const limits = { seconds: remaining(), nodes: 20 };
      const found = improve(solver, stage, useful.columns, sets, target, limits, isFree).sets;
      idle++;
      if (found && value(found) < value(sets)) [sets, idle] = [found, 0];
    }
  }
  return sets;
}
