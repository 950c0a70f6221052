/**
 * The linear bound of one aim: fits are added to a small program until no fit left out would help.
 *
 * The bound does not trust the solver. It is worked out from the duals and the reduced cost of every
 * column, held or left out (Lagrangian relaxation; Desrosiers and Lübbecke, A primer in column
 * generation, 2005), and is valid for any duals. They are rounded to multiples of 2⁻²⁰ first: all
 * amounts being whole numbers, every sum and product from there on is exact in a double, and a bound
 * rounded up to a whole number is a proof.
 */
import type { Column, Model } from './model-columns.js';
import type { Row } from './model-rows.js';
import { bestFits, type Filter, type FitWeights, type PricedFit, passesFilters } from './pricing.js';
import { type Pool, pairsByShape, pricePairs, quadOf } from './quads.js';
import type { Solver } from './solver.js';

/** Differences below this are rounding of the solver. */
export const SLACK = 1e-6;

/** Above this share of a fit the linear program all but takes it. */
const LIKELY = 0.6;

/** How many fits of one journal class join the program at a time. */
const FITS_AT_A_TIME = 12;

/** One aim to be minimised, in whole steps, with the rows that hold the earlier ones. */
export interface Stage {
  readonly rows: readonly Row[];
  /** Row entries of a column with those of the held aims. */
  readonly entries: (column: Column) => { rows: readonly number[]; values: readonly number[] };
  readonly cost: (column: Column) => number;
  /** What a fit counts in the objective less the duals of the held aims. */
  readonly fitWeights: (duals: Float64Array) => FitWeights;
  /** What the earlier aims leave open. */
  readonly filters: readonly Filter[];
}

export interface LinearBound {
  /** Proven and exact: no sets do better. Not a whole number yet. */
  readonly bound: number;
  readonly duals: Float64Array;
  /** The fits of parts that ran together which the linear program takes whole, or nearly. */
  readonly likely: readonly Column[];
}

/** Duals are whole multiples of one part of this. */
const DUAL_PARTS = 2 ** 20;

/** Rounded duals with the signs that the rows allow: a row without a lower limit can only be worth lowering. */
function signed(duals: Float64Array, rows: readonly Row[]): Float64Array {
  return duals.map((value, place) => {
    const { lower, upper } = rows[place]!;
    const dual = Math.round(value * DUAL_PARTS) / DUAL_PARTS;
    if (!Number.isFinite(lower)) return Math.min(dual, 0);
    return Number.isFinite(upper) ? dual : Math.max(dual, 0);
  });
}

export function reducedCost(stage: Stage, column: Column, duals: Float64Array): number {
  const { rows, values } = stage.entries(column);
  let cost = stage.cost(column);
  for (let place = 0; place < rows.length; place++) cost -= duals[rows[place]!]! * values[place]!;
  return cost;
}

/** Σ over the rows of what their limits are worth. */
function worthOfRows(rows: readonly Row[], duals: Float64Array): number {
  let worth = 0;
  for (const [place, { lower, upper }] of rows.entries()) {
    const dual = duals[place]!;
    if (dual !== 0) worth += dual * (dual > 0 ? lower : upper);
  }
  return worth;
}

/** The best fits of each journal class, one a gap, and the bound that the duals prove. */
function price(model: Model, stage: Stage, columns: readonly Column[], duals: Float64Array) {
  const { journals, gaps } = model.problem;
  let bound = worthOfRows(stage.rows, duals);
  for (const column of columns) {
    if (column.meaning.is === 'fit') continue;
    bound += Math.min(0, reducedCost(stage, column, duals)) * column.upper;
  }
  const byJournal = journals.map((): PricedFit[] => []);
  const fits = bestFits(model, duals, stage.fitWeights(duals), 0, stage.filters);
  for (const fit of fits) byJournal[gaps[fit.gap]!.journal]!.push(fit);
  const best: PricedFit[] = [];
  for (const [journal, own] of byJournal.entries()) {
    own.sort((a, b) => a.reducedCost - b.reducedCost || a.gap - b.gap);
    if (own.length > 0) bound += own[0]!.reducedCost * journals[journal]!.journals.length;
    best.push(...own.slice(0, FITS_AT_A_TIME));
  }
  return { bound, best };
}

/** The least whole number that a value computed by the solver cannot be above. */
export function roundedUp(bound: number): number {
  return Math.ceil(bound - SLACK);
}

/**
 * Solves the linear program of a stage, adding fits to `pool` as needed.
 * @param sets the sets at hand: they keep every row, so that the program has a solution from the start
 * @param remaining seconds left, asked before every solve
 * @param reached the value of the sets at hand: at that bound the work is done
 * @returns undefined when the time is up before any bound was proven
 */
export function linearBound(
  solver: Solver,
  model: Model,
  stage: Stage,
  columns: readonly Column[],
  pool: Pool,
  reached: number,
  remaining: () => number,
): LinearBound | undefined {
  const ready = (column: Column) => ({
    ...stage.entries(column),
    upper: column.upper,
    cost: stage.cost(column),
  });
  const others = columns.filter(({ meaning }) => meaning.is !== 'pair' && meaning.is !== 'fit');
  const start = pool.quads.filter(({ gap, shape }) => passesFilters(model, stage.filters, gap, shape));
  const program = solver.linear(stage.rows, [...others, ...start.map(({ column }) => column)].map(ready));
  const held = new Set(start.map(({ key }) => key));
  const pairs = pairsByShape(columns, model);
  let best: LinearBound | undefined;
  try {
    for (;;) {
      const solution = program.solve(remaining());
      if (!solution) return best;
      const pricedPairs = pricePairs(model, stage, pairs, signed(solution.duals, stage.rows));
      const priced = price(model, stage, columns, pricedPairs.duals);
      if (!best || priced.bound > best.bound)
        best = { bound: priced.bound, duals: pricedPairs.duals, likely: [] };
      const fresh = priced.best
        .flatMap(({ gap, shape }) => {
          const pair = pricedPairs.best[shape];
          return pair ? [quadOf(model, gap, pair)] : [];
        })
        .filter(({ key }) => !held.has(key));
      const settled = Math.ceil(best.bound) >= Math.min(roundedUp(solution.objective), reached);
      if (settled || fresh.length === 0) {
        const likely = others.filter(
          ({ meaning }, place) => meaning.is === 'kept' && solution.values[place]! > LIKELY,
        );
        return { ...best, likely };
      }
      for (const quad of fresh) {
        held.add(quad.key);
        pool.add(quad);
      }
      program.add(fresh.map(({ column }) => ready(column)));
    }
  } finally {
    program.dispose();
  }
}
