/** Whole-number programs over chosen fits, to improve sets for one aim. */
import { type LinearBound, SLACK } from './linear-bound.js';
import type { Column, Model } from './model-columns.js';
import { bestFits, passesFilters, priceFits } from './pricing.js';
import type { ColumnPool } from './quads.js';
import { sequenceOf, shuffled } from './random.js';
import { type FitsBySpace, SeatProgram } from './seats.js';
import type { Solver } from './solver.js';
import { reducedCost, type Stage } from './stage.js';
import type { Taken } from './taken.js';

export interface SearchLimits {
  readonly seconds: number;
  readonly nodes?: number;
}

/** What a whole-number program found. */
export interface Improved {
  /** Undefined when none are found. */
  readonly sets: Taken[] | undefined;
  /** No sets of the program's own columns are below it. */
  readonly bound: number;
  /** Whether the time limit ended the program. */
  readonly isCut: boolean;
}

/** What a program may use. */
interface Useful {
  /** All but fits. */
  readonly others: readonly Column[];
  readonly fits: FitsBySpace;
}

/**
 * Solves a program over some columns, starting from the incumbent.
 * @param sets the incumbent, of these columns alone; an empty list for none
 * @param target a lower bound: sets that reach it end the search
 */
export function improve(
  solver: Solver,
  { model, stage }: Pick<ProgramSource, 'model' | 'stage'>,
  { others, fits }: Useful,
  sets: readonly Taken[],
  target: number,
  limits: SearchLimits,
): Improved {
  const program = new SeatProgram(model, stage, others, fits);
  const solution = solver.whole(
    program.rows,
    program.columns.map((column) => ({
      ...stage.entries(column),
      upper: column.upper,
      cost: stage.cost(column),
    })),
    { ...limits, start: program.toCounts(sets), target },
  );
  const { values, bound, isCut } = solution;
  return { sets: values && program.toSets(values), bound, isCut };
}

/** Collects fits, each once. */
class Fits {
  private readonly bySpace = new Map<number, Set<number>>();

  add(space: number, shape: number): void {
    const shapes = this.bySpace.get(space);
    if (shapes) shapes.add(shape);
    else this.bySpace.set(space, new Set([shape]));
  }

  /** Sorted, so that spaces which take the same shapes have equal lists. */
  get open(): FitsBySpace {
    return new Map(
      [...this.bySpace]
        .sort(([a], [b]) => a - b)
        .map(([space, shapes]) => [space, [...shapes].sort((a, b) => a - b)]),
    );
  }
}

function fitsOf(sets: readonly Taken[]): Fits {
  const fits = new Fits();
  for (const { column } of sets)
    if (column.meaning.is === 'fit') fits.add(column.meaning.space, column.meaning.shape);
  return fits;
}

/** What the columns of a program are chosen from. */
export interface ProgramSource {
  readonly model: Model;
  readonly stage: Stage;
  readonly columns: readonly Column[];
  /** The incumbent: all its columns are taken, so that the program can start from it. */
  readonly sets: readonly Taken[];
  readonly linear: LinearBound;
  /** The fits that the linear programs held. */
  readonly pool: ColumnPool;
}

/** Reduced-cost fixing: the columns with a reduced cost of no more than `most`, and those of the incumbent. */
function usefulOthers({ stage, columns, sets, linear }: ProgramSource, most: number): Column[] {
  const own = new Set(sets.map(({ column }) => column).filter(({ meaning }) => meaning.is !== 'fit'));
  const useful = columns.filter(
    (column) =>
      column.meaning.is !== 'fit' && (own.has(column) || reducedCost(stage, column, linear.duals) <= most),
  );
  const known = new Set(useful);
  return [...useful, ...[...own].filter((column) => !known.has(column))];
}

/** The same, with those of the fits in the pool whose reduced cost is no more than `most`. */
export function heldColumns(source: ProgramSource, most: number): Useful {
  const { model, stage, sets, linear, pool } = source;
  const fits = fitsOf(sets);
  for (const { column, space, shape } of pool.quads) {
    if (passesFilters(model, stage.filters, space, shape) && reducedCost(stage, column, linear.duals) <= most)
      fits.add(space, shape);
  }
  return { others: usefulOthers(source, most), fits: fits.open };
}

/**
 * The same, with all fits of some spaces whose reduced cost is no more than `most`. The cheapest spaces come first, of
 * equally cheap ones those with a fit in the pool; the order of the others is random by a fixed sequence, so that there
 * are some of every kind.
 * @param spaces most spaces
 * @returns the columns, and whether none is left out that better sets could use
 */
export function likelyColumns(
  source: ProgramSource,
  most: number,
  spaces: number,
): Useful & { readonly complete: boolean } {
  const { model, stage, sets, linear, pool } = source;
  const weights = stage.fitWeights(linear.duals);
  const held = new Set(pool.quads.map(({ space }) => space));
  const rated = shuffled(sequenceOf(4), bestFits(model, linear.duals, weights, most, stage.filters)).map(
    ({ space, reducedCost: cost }) => ({
      space,
      cost: Math.round(cost / SLACK),
      other: Number(!held.has(space)),
    }),
  );
  rated.sort((a, b) => a.cost - b.cost || a.other - b.other);
  const likely = new Set(rated.slice(0, spaces).map(({ space }) => space));
  const fits = fitsOf(sets);
  priceFits(model, linear.duals, weights, most, stage.filters, ({ space, shape }) => {
    if (likely.has(space)) fits.add(space, shape);
  });
  return { others: usefulOthers(source, most), fits: fits.open, complete: rated.length <= spaces };
}
