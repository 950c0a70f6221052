/**
 * The aims of the matching, in whole numbers that are minimised one after the other.
 *
 * Every column of the model has an amount for each aim. An aim that is maximised has the sign −1, so that all are
 * minimised.
 */
import type { Grain } from '../grain.js';
import { toCommonStep } from './mass-windows.js';
import type { StageResult, Stock } from './stock.js';

export type AimName = StageResult['aim'];

/** What a column counts for every aim when it is taken once. */
export interface Amounts {
  readonly completeEngines?: number;
  /** Of engines that are not hopeless. */
  readonly filledOpen?: number;
  readonly filledBeyond?: number;
  /** In steps of the prices' last decimal. */
  readonly price?: number;
  readonly inRange?: number;
  readonly distance?: Grain;
  readonly kept?: number;
  readonly stayed?: number;
}

export interface Aim {
  readonly name: AimName;
  readonly amount: keyof Amounts;
  readonly sign: 1 | -1;
  /** All amounts of the aim are multiples of this whole number. */
  readonly step: number;
}

export function greatestCommonDivisor(values: Iterable<number>): number {
  let divisor = 0;
  for (const value of values) {
    let [a, b] = [divisor, Math.abs(value)];
    while (b !== 0) [a, b] = [b, a % b];
    divisor = a;
    if (divisor === 1) break;
  }
  return divisor === 0 ? 1 : divisor;
}

export interface Prices {
  /** Of one half-shell, by the place of the new shell in the stock; of a pair the half of its price. */
  readonly steps: readonly number[];
  /** Steps in one unit of money. */
  readonly perUnit: number;
}

/** @throws RangeError for prices with so many digits that their whole numbers are not exact. */
export function pricesOf({ newShells }: Stock): Prices {
  const [unit, ...prices] = toCommonStep([1, ...newShells.map(({ price }) => price)]);
  // Where pairs are sold, in halves of a step.
  const twice = newShells.some(({ half }) => half === 'pair') ? 2n : 1n;
  const steps = prices.map((price, place) => (newShells[place]!.half === 'pair' ? price : price * twice));
  const numbers = [unit! * twice, ...steps].map(Number);
  if (numbers.some((value) => value > 1e12))
    throw new RangeError('prices with too many digits to add exactly');
  return { steps: numbers.slice(1), perUnit: numbers[0]! };
}

/** The aims of a stock in the order in which they are pursued. */
export function aimsOf(stock: Stock, steps: { readonly price: number; readonly distance: number }): Aim[] {
  const distance: Aim = {
    name: 'distance from the aim',
    amount: 'distance',
    sign: 1,
    step: steps.distance,
  };
  const most = (name: AimName, amount: keyof Amounts): Aim => ({ name, amount, sign: -1, step: 1 });
  const kept = [most('pairs kept together', 'kept'), most('rods that stay', 'stayed')];
  return [
    most('complete engines', 'completeEngines'),
    ...(stock.engines.some(({ isHopeless }) => isHopeless)
      ? [most('filled journals of engines that could be completed', 'filledOpen')]
      : []),
    most('filled journals beyond them', 'filledBeyond'),
    ...(stock.newShells.length > 0
      ? [{ name: 'price of bought shells', amount: 'price', sign: 1, step: steps.price } as const]
      : []),
    ...(stock.allowWorn ? [most('fits in range', 'inRange')] : []),
    ...(stock.preferKeptPairs ? [...kept, distance] : [distance, ...kept]),
  ];
}
