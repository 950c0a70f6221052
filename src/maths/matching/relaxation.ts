/**
 * A model of classes with its linear bounds, aim after aim: its pool of columns, and what reduced-cost fixing leaves
 * of it.
 */
import type { Aim } from './aims.js';
import { forcedBy } from './forced-fits.js';
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

/** Cost of an artificial variable, in steps of the aim at hand, and its upper limit, in steps of the held aim. */
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
   * Artificial variables: each lets a held aim be missed, so that the linear program has a solution before the fits
   * for it are found. They relax the program, so that its bound holds.
   */
  private reliefs({ amount, sign, step }: Aim, held: readonly Reached[]): Column[] {
    // With whole cranks the incumbent is a solution from the start.
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
   * A whole-number program over those of the fits in the pool that sets of a given value could use.
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
   * A whole-number program over all fits of some spaces that sets better than the incumbent could use.
   * @param start the incumbent
   * @param reached its value, in steps of the aim
   * @param spaces most spaces
   * @returns with a lower bound of the model: that of the program where it leaves out no useful space, else the
   * linear one
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

  /** From here on only what an aim leaves open that is reached to the full. */
  force(aim: Aim, reached: number): void {
    const forced = forcedBy(this.model, aim, reached);
    if (!forced) return;
    this.columns = this.columns.filter(forced.isOpen);
    this.filters.push(forced.filter);
  }

  /** Reduced-cost fixing: from here on only what sets that reach the aim could use. */
  narrow({ stage, linear }: Bounded, reached: number): void {
    const { columns, filter } = narrow(this.model, stage, linear, this.columns, reached);
    this.columns = columns;
    this.filters.push(filter);
  }
}
