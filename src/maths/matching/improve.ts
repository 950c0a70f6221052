/** Better sets for one aim, by whole-number programs over chosen columns. */
import { type LinearBound, reducedCost, SLACK, type Stage } from './linear-bound.js';
import { type Column, fitColumn, type Model } from './model-columns.js';
import { type PricedFit, priceFits } from './pricing.js';
import type { Pool } from './quads.js';
import type { Solver } from './solver.js';
import type { Taken } from './taken.js';

export interface SearchLimits {
  readonly seconds: number;
  readonly nodes?: number;
}

/**
 * Solves over some columns, starting from the sets at hand.
 * @returns the sets, undefined when none are found, and a bound that holds for these columns alone
 */
export function improve(
  solver: Solver,
  stage: Stage,
  columns: readonly Column[],
  sets: readonly Taken[],
  target: number,
  limits: SearchLimits,
): { sets: Taken[] | undefined; bound: number } {
  const times = new Map(sets.map(({ column, times }) => [column, times]));
  const solution = solver.whole(
    stage.rows,
    columns.map((column) => ({ ...stage.entries(column), upper: column.upper, cost: stage.cost(column) })),
    { ...limits, start: Float64Array.from(columns, (column) => times.get(column) ?? 0), target },
  );
  const taken =
    solution.values &&
    columns.map((column, place) => ({ column, times: Math.round(solution.values![place]!) }));
  return { sets: taken?.filter(({ times }) => times > 0), bound: solution.bound };
}

function fitKey({ meaning }: Column): string {
  return meaning.is === 'fit' ? `${meaning.gap},${meaning.shape}` : '';
}

/** Every column that sets better than `reached` could use, judged by the linear bound; the likeliest if there are more fits than `most`. */
export function usefulColumns(
  model: Model,
  stage: Stage,
  columns: readonly Column[],
  sets: readonly Taken[],
  { bound, duals }: LinearBound,
  reached: number,
  most: number,
  pool: Pool,
): { columns: Column[]; complete: boolean } {
  const worst = reached - 1 - bound + SLACK;
  const own = new Set(sets.map(({ column }) => column));
  const useful = columns.filter((column) => own.has(column) || reducedCost(stage, column, duals) <= worst);
  for (const { column } of sets) if (!useful.includes(column)) useful.push(column);
  const known = new Set(useful.map(fitKey));
  const fresh: PricedFit[] = [];
  priceFits(model, duals, stage.fitWeights(duals), worst, stage.filters, (fit) => {
    if (!known.has(`${fit.gap},${fit.shape}`)) fresh.push(fit);
  });
  if (fresh.length > most) {
    // Many cost the same: those of the linear program first.
    const held = new Set(pool.quads.map(({ gap, shape }) => `${gap},${shape}`));
    const isOther = (fit: PricedFit) => Number(!held.has(`${fit.gap},${fit.shape}`));
    const rank = new Map(
      fresh.map((fit) => [fit, [Math.round(fit.reducedCost / SLACK), isOther(fit)] as const]),
    );
    fresh.sort((a, b) => {
      const [[cost, other], [costOfB, otherOfB]] = [rank.get(a)!, rank.get(b)!];
      return cost - costOfB || other - otherOfB || a.gap - b.gap || a.shape - b.shape;
    });
  }
  const complete = fresh.length <= most;
  return {
    columns: [...useful, ...fresh.slice(0, most).map(({ gap, shape }) => fitColumn(model, gap, shape))],
    complete,
  };
}
