/** One aim as a linear program has it: its costs, the rows that hold the aims before it, and what those leave open. */
import type { Aim } from './aims.js';
import type { Column, Model } from './model-columns.js';
import { type ModelRow, UNLIMITED } from './model-rows.js';
import type { Filter, FitWeights } from './pricing.js';
import type { GapReason } from './stock.js';

/** What one aim reached, and what is proved of it. */
export interface Reached {
  readonly aim: Aim;
  /** In steps of the aim, minimised. */
  readonly reached: number;
  /** No sets do better, in the same steps. */
  readonly bound: number;
  /** Undefined where the bound is reached. */
  readonly gapStays?: GapReason | undefined;
}

/** @param isCut whether the time ended the search for the aim before it was done */
export function reachedOf(aim: Aim, reached: number, bound: number, isCut: boolean): Reached {
  const reason = isCut ? 'time' : 'search';
  return { aim, reached, bound, gapStays: reached === bound ? undefined : reason };
}

/** One aim to be minimised, in whole steps, with the rows that hold the earlier ones. */
export interface Stage {
  readonly rows: readonly ModelRow[];
  /** Row entries of a column with those of the held aims. */
  readonly entries: (column: Column) => { rows: readonly number[]; values: readonly number[] };
  readonly cost: (column: Column) => number;
  /** What a fit counts in the objective less the duals of the held aims. */
  readonly fitWeights: (duals: Float64Array) => FitWeights;
  /** Whether distances from the aim are its objective, or held. */
  readonly countsDistance: boolean;
  /** The same for fits in range. */
  readonly countsInRange: boolean;
  /** What the earlier aims leave open. */
  readonly filters: readonly Filter[];
}

/** What one of a column counts for an aim, in its steps, minimised. */
export function amountOf({ amount, sign, step }: Aim, { amounts }: Column): number {
  return (sign * (amounts[amount] ?? 0)) / step;
}

/** What one of a column costs, less what the rows that it uses are worth at some duals. */
export function reducedCost(stage: Stage, column: Column, duals: Float64Array): number {
  const { rows, values } = stage.entries(column);
  let cost = stage.cost(column);
  for (let place = 0; place < rows.length; place++) cost -= duals[rows[place]!]! * values[place]!;
  return cost;
}

/**
 * @param held what the aims before it have reached: their rows hold it
 * @param filters what these aims leave open
 */
export function stageOf(model: Model, aim: Aim, held: readonly Reached[], filters: readonly Filter[]): Stage {
  const first = model.rows.length;
  const rows: ModelRow[] = [
    ...model.rows,
    ...held.map(({ reached }) => ({ lower: -UNLIMITED, upper: reached })),
  ];
  const weight = (amount: Aim['amount'], duals: Float64Array) => {
    let sum = aim.amount === amount ? aim.sign : 0;
    for (const [place, { aim: earlier }] of held.entries()) {
      if (earlier.amount === amount) sum -= duals[first + place]! * earlier.sign;
    }
    return sum;
  };
  const countsStayed = [aim, ...held.map((each) => each.aim)].some(({ amount }) => amount === 'stayed');
  const distance = [aim, ...held.map((each) => each.aim)].find(({ amount }) => amount === 'distance');
  return {
    rows,
    filters,
    countsDistance: distance !== undefined,
    countsInRange: [aim, ...held.map((each) => each.aim)].some(({ amount }) => amount === 'inRange'),
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
      filledOpen: weight('filledOpen', duals),
      filledBeyond: weight('filledBeyond', duals),
      inRange: weight('inRange', duals),
      stayed: weight('stayed', duals),
      countsStayed,
      distance: weight('distance', duals),
      distanceStep: distance?.step ?? 1,
    }),
  };
}
