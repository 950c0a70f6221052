/**
 * The linear bound of one aim by column generation: fits join a small program until none that is left out has a
 * negative reduced cost.
 *
 * The bound does not rely on the solver's objective. It is the Lagrangian bound, from the duals and the reduced costs
 * of all columns, held or left out (Desrosiers and Lübbecke, A primer in column generation, 2005), and holds for any
 * duals. These are rounded to multiples of 2⁻²⁰ first. All amounts are whole numbers, so that every sum and product
 * is exact in a double (up to 2³³ steps of an aim), and the bound rounded up to a whole number is a proof.
 */
import { CrankFillings, fillingColumn, type PricedFilling } from './crank-fillings.js';
import type { Column, Model } from './model-columns.js';
import type { CrankRows, ModelRow } from './model-rows.js';
import { bestFits, type PricedFit, passesFilters } from './pricing.js';
import { type ColumnPool, pairsByShape, pricePairs, quadOf } from './quads.js';
import type { Solver } from './solver.js';
import { reducedCost, type Stage } from './stage.js';

/** Differences below this are taken for rounding errors of the solver. */
export const SLACK = 1e-6;

/** A fit of which the linear program takes more than this is a likely one. */
const LIKELY = 0.6;

/** Most fits of one journal class that join the program at a time. */
const FITS_AT_A_TIME = 12;

export interface LinearBound {
  /** Proven and exact: no sets do better. It is not rounded up to a whole number yet. */
  readonly bound: number;
  readonly duals: Float64Array;
  /** The columns of parts that ran together which the linear program takes, or nearly takes. */
  readonly likely: readonly Column[];
  /** Whether the time ended the column generation. */
  readonly isCut: boolean;
}

/** Duals are rounded to multiples of one by this. */
const DUAL_PARTS = 2 ** 20;

/**
 * Duals rounded, and cut to the sign that their row allows: negative without a lower limit, positive without an upper
 * one.
 */
function signed(duals: Float64Array, rows: readonly ModelRow[]): Float64Array {
  return duals.map((value, place) => {
    const { lower, upper } = rows[place]!;
    const dual = Math.round(value * DUAL_PARTS) / DUAL_PARTS;
    if (!Number.isFinite(lower)) return Math.min(dual, 0);
    return Number.isFinite(upper) ? dual : Math.max(dual, 0);
  });
}

/** Σ of dual times limit over the rows. */
function worthOfRows(rows: readonly ModelRow[], duals: Float64Array): number {
  let worth = 0;
  for (const [place, { lower, upper }] of rows.entries()) {
    const dual = duals[place]!;
    if (dual !== 0) worth += dual * (dual > 0 ? lower : upper);
  }
  return worth;
}

/**
 * Pricing: the best fits of each journal class, one a space, the best fillings of each crank, and the Lagrangian
 * bound.
 */
function price(
  { model, stage, columns }: Bounding,
  cranks: CrankFillings,
  duals: Float64Array,
): { bound: number; fits: PricedFit[]; fillings: PricedFilling[] } {
  const { problem, places } = model;
  let bound = worthOfRows(stage.rows, duals);
  for (const column of columns) {
    if (column.meaning.is === 'fit' || cranks.holdKept(column)) continue;
    bound += Math.min(0, reducedCost(stage, column, duals)) * column.upper;
  }
  const completion = ({ complete }: CrankRows) => (complete === undefined ? 0 : duals[complete]!);
  // In a full crank fits of a positive reduced cost may be worth taking.
  const most = places.fillings.some((rows) => completion(rows) > 0) ? Number.POSITIVE_INFINITY : 0;
  const byJournal = problem.journals.map((): PricedFit[] => []);
  const fits = bestFits(model, duals, stage.fitWeights(duals), most, stage.filters);
  for (const fit of fits) byJournal[problem.spaces[fit.space]!.journal]!.push(fit);
  const best: PricedFit[] = [];
  const inCranks: PricedFit[] = [];
  for (const [journal, own] of byJournal.entries()) {
    if (cranks.hold(journal)) {
      inCranks.push(...own);
      continue;
    }
    own.sort((a, b) => a.reducedCost - b.reducedCost || a.space - b.space);
    if (own.length > 0)
      bound += Math.min(0, own[0]!.reducedCost) * problem.journals[journal]!.journals.length;
    best.push(...own.filter((fit) => fit.reducedCost < 0).slice(0, FITS_AT_A_TIME));
  }
  const kept = cranks.keptColumns.map((column) => ({
    column,
    reducedCost: reducedCost(stage, column, duals),
  }));
  const fillings = cranks.best(inCranks, kept, completion);
  for (const [crank, [first]] of fillings.entries()) {
    if (first) bound += Math.min(0, first.reducedCost - duals[places.fillings[crank]!.one]!);
  }
  return { bound, fits: best, fillings: fillings.flat() };
}

/** A bound of the solver as a whole number, its rounding error allowed for. */
export function roundedUp(bound: number): number {
  return Math.ceil(bound - SLACK);
}

interface Bounding {
  readonly solver: Solver;
  readonly model: Model;
  readonly stage: Stage;
  readonly columns: readonly Column[];
  /** The columns of all aims so far; those that are added join it. */
  readonly pool: ColumnPool;
  /** The value of the incumbent, whose columns are in the pool: a bound that meets it ends the work. */
  readonly reached: number;
  /** Seconds left, asked before every solve. */
  readonly remaining: () => number;
}

/**
 * Smoothing (Wentges, 1997): the share of the best duals so far in those at which whole cranks are priced. It damps
 * their swings.
 */
const CENTRED = 0.7;

/**
 * Solves the linear program of a stage, adding fits to the pool as needed.
 * @returns undefined when the time is up before any bound was proven
 */
export function linearBound(bounding: Bounding): LinearBound | undefined {
  const { solver, model, stage, columns, pool, reached, remaining } = bounding;
  const cranks = new CrankFillings(model);
  const ready = (column: Column) => ({
    ...stage.entries(column),
    upper: column.upper,
    cost: stage.cost(column),
  });
  const others = columns.filter(
    (column) => column.meaning.is !== 'pair' && column.meaning.is !== 'fit' && !cranks.holdKept(column),
  );
  const start = pool.quads.filter(
    ({ space, shape }) =>
      !cranks.hold(model.problem.spaces[space]!.journal) && passesFilters(model, stage.filters, space, shape),
  );
  const first = [...others, ...start.map(({ column }) => column), ...pool.fillings];
  const program = solver.linear(stage.rows, first.map(ready));
  const held = new Set(first);
  const pairs = pairsByShape(columns, model);
  let best: LinearBound | undefined;
  /**
   * Prices at some duals.
   * @returns the priced columns that the program does not have
   */
  const priceAt = (at: Float64Array): Column[] => {
    const pricedPairs = pricePairs(model, stage, pairs, at);
    const { duals } = pricedPairs;
    const priced = price(bounding, cranks, duals);
    if (!best || priced.bound > best.bound) best = { bound: priced.bound, duals, likely: [], isCut: true };
    const quadAt = ({ space, shape }: PricedFit) => {
      const pair = pricedPairs.best[shape];
      return pair && pool.add(quadOf(model, space, pair)).column;
    };
    const columnOf = ({ crank, fits, isFull }: PricedFilling) => {
      const parts = fits.flatMap((fit) => ('column' in fit ? fit.column : (quadAt(fit) ?? [])));
      return fillingColumn(model.places.fillings[crank]!, crank, parts, isFull);
    };
    return [
      ...priced.fits.flatMap((fit) => quadAt(fit) ?? []),
      ...priced.fillings.map((filling) => pool.addFilling(columnOf(filling))),
    ].filter((column) => !held.has(column));
  };
  try {
    for (;;) {
      const solution = program.solve(remaining());
      if (!solution) return best;
      const now = signed(solution.duals, stage.rows);
      const isLacking = (column: Column) => reducedCost(stage, column, now) < -SLACK;
      let fresh: Column[] = [];
      if (best && model.places.fillings.length > 0) {
        const centre = best.duals;
        const near = now.map((dual, row) => CENTRED * centre[row]! + (1 - CENTRED) * dual);
        fresh = priceAt(signed(near, stage.rows)).filter(isLacking);
      }
      if (fresh.length === 0) fresh = priceAt(now);
      if (model.places.fillings.length > 0) fresh = fresh.filter(isLacking);
      const settled = Math.ceil(best!.bound) >= Math.min(roundedUp(solution.objective), reached);
      if (settled || fresh.length === 0) {
        const likely = others.filter(
          ({ meaning }, place) => meaning.is === 'kept' && solution.values[place]! > LIKELY,
        );
        return { ...best!, likely, isCut: false };
      }
      for (const column of fresh) held.add(column);
      program.add(fresh.map(ready));
    }
  } finally {
    program.dispose();
  }
}
