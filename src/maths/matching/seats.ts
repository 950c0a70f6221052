/**
 * Whole-number programs over very many fits, without a column for each.
 *
 * Spaces that take the same shapes of pairs, at the same distances from the aim and alike in range, are one seat. Within a seat it makes
 * no difference which space takes which shape. So the program chooses how many of each space and how many shapes of
 * each seat: some million fits become a few thousand columns. The fits are then dealt out seat by seat.
 *
 *   x_g       spaces g made (a journal in a rod)
 *   y_q,s     shapes s in seat q
 *   seat q    Σ x ≤ Σ y
 *   shape s   Σ y ≤ Σ z, the pairs made (model-rows.ts)
 */
import { type Column, fitColumn, type Model, spaceColumn } from './model-columns.js';
import { type ModelRow, UNLIMITED } from './model-rows.js';
import { amountsOfPair } from './space-columns.js';
import type { Stage } from './stage.js';
import type { Taken } from './taken.js';

/** By space: the shapes that it may take. */
export type FitsBySpace = ReadonlyMap<number, readonly number[]>;

interface Seat {
  readonly spaces: number[];
  readonly shapes: readonly number[];
}

/** The spaces by the shapes that they take, and by what their fits count where that counts. */
function seatsOf({ problem }: Model, fits: FitsBySpace, stage: Stage): Seat[] {
  const seats = new Map<string, Seat>();
  for (const [place, shapes] of fits) {
    const { size, limits } = problem.spaces[place]!;
    const wished = stage.countsDistance && limits.aim !== undefined ? size - limits.aim : '';
    const inRange = stage.countsInRange ? shapes.map((shape) => problem.rules.isInRange(place, shape)) : [];
    const key = `${wished}:${shapes.join()}:${inRange.map(Number).join('')}`;
    const seat = seats.get(key);
    if (seat) seat.spaces.push(place);
    else seats.set(key, { spaces: [place], shapes });
  }
  return [...seats.values()];
}

export class SeatProgram {
  readonly rows: readonly ModelRow[];
  readonly columns: readonly Column[];
  private readonly ofSpace = new Map<number, { readonly seat: number; readonly column: Column }>();
  private readonly ofSeat: readonly ReadonlyMap<number, Column>[];

  /**
   * @param others the columns that are no fits
   * @param fits those that the program may use
   */
  constructor(
    private readonly model: Model,
    stage: Stage,
    others: readonly Column[],
    fits: FitsBySpace,
  ) {
    const seats = seatsOf(model, fits, stage);
    const first = stage.rows.length;
    this.rows = [...stage.rows, ...seats.map(() => ({ lower: -UNLIMITED, upper: 0 }))];
    const columns = [...others];
    this.ofSeat = seats.map(({ spaces, shapes }, seat) => {
      let most = 0;
      for (const space of spaces) {
        const column = spaceColumn(model, space, first + seat);
        most += column.upper;
        this.ofSpace.set(space, { seat, column });
        columns.push(column);
      }
      const own = new Map<number, Column>();
      for (const shape of shapes) {
        own.set(shape, {
          meaning: { is: 'seat', seat, shape },
          rows: [first + seat, model.places.shape[shape]!],
          values: [-1, 1],
          upper: most,
          // Of any space of the seat: they are alike in what the stage counts, and the rest is not counted.
          amounts: amountsOfPair(model, spaces[0]!, shape),
        });
      }
      columns.push(...own.values());
      return own;
    });
    this.columns = columns;
  }

  /** Sets as counts of the columns; all their fits must be among those of the program. */
  toCounts(sets: readonly Taken[]): Float64Array {
    const counts = new Map<Column, number>();
    const add = (column: Column, times: number) => counts.set(column, (counts.get(column) ?? 0) + times);
    for (const { column, times } of sets) {
      const { meaning } = column;
      if (meaning.is !== 'fit') {
        add(column, times);
        continue;
      }
      const { seat, column: space } = this.ofSpace.get(meaning.space)!;
      add(space, times);
      add(this.ofSeat[seat]!.get(meaning.shape)!, times);
    }
    return Float64Array.from(this.columns, (column) => counts.get(column) ?? 0);
  }

  /** Counts of the columns as sets: the shapes of every seat are dealt out to its spaces. */
  toSets(counts: ArrayLike<number>): Taken[] {
    const sets: Taken[] = [];
    const shapes = this.ofSeat.map((): number[] => []);
    const spaces: { readonly space: number; readonly seat: number; readonly times: number }[] = [];
    for (const [place, column] of this.columns.entries()) {
      const times = Math.round(counts[place]!);
      if (times <= 0) continue;
      const { meaning } = column;
      if (meaning.is === 'space')
        spaces.push({ space: meaning.space, seat: this.ofSpace.get(meaning.space)!.seat, times });
      else if (meaning.is === 'seat')
        for (let time = 0; time < times; time++) shapes[meaning.seat]!.push(meaning.shape);
      else sets.push({ column, times });
    }
    const fits = new Map<string, { space: number; shape: number; times: number }>();
    for (const { space, seat, times } of spaces) {
      for (let time = 0; time < times; time++) {
        const shape = shapes[seat]!.shift()!;
        const fit = fits.get(`${space},${shape}`) ?? { space, shape, times: 0 };
        fit.times++;
        fits.set(`${space},${shape}`, fit);
      }
    }
    for (const { space, shape, times } of fits.values())
      sets.push({ column: fitColumn(this.model, space, shape), times });
    return sets;
  }
}
