/** A model of classes as its linear programs leave it, aim after aim: the fits worth holding, and what is still open. */
import type { Aim } from './aims.js';
import {
  heldColumns,
  type Improved,
  improve,
  likelyColumns,
  type ProgramSource,
  type SearchLimits,
} from './improve.js';
import { type LinearBound, linearBound, roundedUp, SLACK } from './linear-bound.js';
import type { Column, Model } from './model-columns.js';
import type { Filter } from './pricing.js';
import { ColumnPool } from './quads.js';
import type { Solver } from './solver.js';
import { type Reached, type Stage, stageOf } from './stage.js';
import { narrow } from './stages.js';
import type { Taken } from './taken.js';

/** In steps of the aim at hand, and of the aim held. */
const PRICE_OF_RELIEF = 2 ** 20;
const MOST_RELIEF = 2 ** 30;

/** One aim with its linear bound. */
export interface Bounded {
  readonly stage: Stage;
  readonly linear: LinearBound;
}

export class Relaxation {
  private columns: readonly Column[];
  private readonly filters: Filter[] = [];

  constructor(
    private readonly solver: Solver,
    readonly model: Model,
    readonly pool = new ColumnPool(),
  ) {
    this.columns = model.columns;
  }

  /**
   * Columns that let a held aim be missed, so that the linear program has a solution before the fits for it
   * are found. The bound holds with them as it does without: they allow more.
   */
  private reliefs({ amount, sign, step }: Aim, held: readonly Reached[]): Column[] {
    // Whole cranks: the sets at hand are a solution.
    if (this.model.places.fillings.length > 0) return [];
    return held.map((_, place) => ({
      meaning: { is: 'relief' },
      rows: [this.model.rows.length + place],
      values: [-1],
      upper: MOST_RELIEF,
      amounts: { [amount]: sign * step * PRICE_OF_RELIEF },
    }));
  }

  /**
   * @param reached the value of the sets at hand, in steps of the aim
   * @returns undefined when the time is up before any bound was proven
   */
  bound(aim: Aim, held: readonly Reached[], reached: number, remaining: () => number): Bounded | undefined {
    const stage = stageOf(this.model, aim, held, [...this.filters]);
    const columns = [...this.columns, ...this.reliefs(aim, held)];
    const { solver, model, pool } = this;
    const linear = linearBound({ solver, model, stage, columns, pool, reached, remaining });
    return linear && { stage, linear };
  }

  /**
   * A whole-number program over those of the fits that the linear programs held which sets of a given value could use.
   * @param value in steps of the aim, no less than the bound
   * @param start sets that keep every row
   */
  program(
    { stage, linear }: Bounded,
    value: number,
    start: readonly Taken[],
    limits: SearchLimits,
  ): Improved {
    const source = this.source(stage, linear, start);
    const useful = heldColumns(source, value - linear.bound + SLACK);
    return improve(this.solver, source, useful, start, Math.ceil(linear.bound), limits);
  }

  private source(stage: Stage, linear: LinearBound, sets: readonly Taken[]): ProgramSource {
    const { model, columns, pool } = this;
    return { model, stage, columns, sets, linear, pool };
  }

  /**
   * The same over all fits of so many spaces that sets better than those at hand could use.
   * @param start the sets at hand
   * @param reached their value, in steps of the aim
   * @returns with a value that no better sets of the model are below, where no space that these could use is left out
   */
  wideProgram(
    { stage, linear }: Bounded,
    reached: number,
    start: readonly Taken[],
    spaces: number,
    limits: SearchLimits,
  ): Improved {
    const source = this.source(stage, linear, start);
    const useful = likelyColumns(source, reached - 1 - linear.bound + SLACK, spaces);
    const found = improve(this.solver, source, useful, start, Math.ceil(linear.bound), limits);
    const bound = useful.complete ? Math.min(reached, roundedUp(found.bound)) : linear.bound;
    return { ...found, bound };
  }

  /** From here on only what sets that reach the aim could use. */
  narrow({ stage, linear }: Bounded, reached: number): void {
    const { columns, filter } = narrow(this.model, stage, linear, this.columns, reached);
    this.columns = columns;
    this.filters.push(filter);
  }
}
