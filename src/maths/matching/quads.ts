/**
 * Fits as the linear program has them: one column for a space with two classes of shells.
 *
 * Whole-number programs have columns for spaces and for pairs, linked by shapes, which are far fewer. By column
 * generation only some of the quads are made, and without the rows of shapes the linear program is smaller.
 */
import type { FillingColumn } from './crank-fillings.js';
import { type Column, fitColumn, type Model } from './model-columns.js';
import { reducedCost, type Stage } from './stage.js';

export interface Quad {
  readonly key: string;
  readonly space: number;
  readonly shape: number;
  readonly pair: PairColumn;
  /** The column of the space plus the column of the pair. */
  readonly column: Column;
}

export type PairColumn = Column & { readonly meaning: { readonly is: 'pair' } };

export const isPair = (column: Column): column is PairColumn => column.meaning.is === 'pair';

/** The quads and fillings made so far, each once: the start of the column generation of the next aim. */
export class ColumnPool {
  private readonly byKey = new Map<string, Quad>();
  private readonly fillingByKey = new Map<string, FillingColumn>();

  get quads(): Quad[] {
    return [...this.byKey.values()];
  }

  get fillings(): FillingColumn[] {
    return [...this.fillingByKey.values()];
  }

  /** @returns the quad that was added first under its key */
  add(quad: Quad): Quad {
    const known = this.byKey.get(quad.key);
    if (!known) this.byKey.set(quad.key, quad);
    return known ?? quad;
  }

  /** @returns the first that was added of the fillings with equal entries and amounts */
  addFilling(filling: FillingColumn): FillingColumn {
    const key = JSON.stringify([filling.rows, filling.values, filling.amounts]);
    const known = this.fillingByKey.get(key);
    if (!known) this.fillingByKey.set(key, filling);
    return known ?? filling;
  }
}

/** The pair columns by shape. */
export function pairsByShape(
  columns: readonly Column[],
  { problem }: Model,
): readonly (readonly PairColumn[])[] {
  const pairs = problem.shapes.map((): PairColumn[] => []);
  for (const column of columns) if (isPair(column)) pairs[column.meaning.shape]!.push(column);
  return pairs;
}

/** Sums of the amounts of two columns. */
function sumOf(a: Column['amounts'], b: Column['amounts']): Column['amounts'] {
  const sum: Record<string, number> = { ...a };
  for (const [amount, value] of Object.entries(b)) sum[amount] = (sum[amount] ?? 0) + value;
  return sum;
}

export function quadOf(model: Model, space: number, pair: PairColumn): Quad {
  const { shape, upper, lower } = pair.meaning;
  const fit = fitColumn(model, space, shape);
  const shapeRow = model.places.shape[shape]!;
  const rows = [...fit.rows, ...pair.rows].filter((row) => row !== shapeRow);
  const entry = (column: Column, row: number) => column.values[column.rows.indexOf(row)] ?? 0;
  return {
    key: `${space},${upper},${lower}`,
    space,
    shape,
    pair,
    column: {
      meaning: fit.meaning,
      rows,
      values: rows.map((row) => entry(fit, row) + entry(pair, row)),
      upper: Math.min(fit.upper, pair.upper),
      amounts: sumOf(fit.amounts, pair.amounts),
    },
  };
}

/** The cheapest pair of each shape at given duals; undefined for a shape that no space allows. */
interface PricedPairs {
  readonly best: readonly (PairColumn | undefined)[];
  /** The duals, with those of the rows of shapes worked out: the dual of a shape is the cost of its cheapest pair. */
  readonly duals: Float64Array;
}

export function pricePairs(
  { places }: Model,
  stage: Stage,
  pairs: readonly (readonly PairColumn[])[],
  duals: Float64Array,
): PricedPairs {
  const all = Float64Array.from(duals);
  for (const row of places.shape) all[row] = 0;
  const free = Float64Array.from(all);
  const best = pairs.map((own, shape) => {
    let [least, cheapest]: [number, PairColumn | undefined] = [Number.POSITIVE_INFINITY, undefined];
    for (const pair of own) {
      const cost = reducedCost(stage, pair, free);
      if (cost < least) [least, cheapest] = [cost, pair];
    }
    if (cheapest) all[places.shape[shape]!] = Math.min(0, -least);
    return cheapest;
  });
  return { best, duals: all };
}
