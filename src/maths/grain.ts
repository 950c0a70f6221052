/**
 * The grain: every length of the core is a whole number of 0.001 µm.
 *
 * Whole numbers of this size are exact in a double up to 9e15 (9 km), so sums, differences and
 * comparisons of lengths never err. 0.001 µm holds six decimals of a millimetre and 0.00001 in
 * (254 grains) exactly.
 */
import { exact, multiply, type Ratio, roundHalfAway, toNumber } from './decimal.js';

/** A length in whole units of 0.001 µm. */
export type Grain = number;

export const GRAINS_PER_MM = 1_000_000;

/** The nearest whole number of a double, halves away from zero. */
export function roundToWhole(value: number): Grain {
  const rounded = Math.sign(value) * Math.round(Math.abs(value));
  return rounded === 0 ? 0 : rounded;
}

/**
 * The whole number that a product of a few doubles rounds to, where its error of less than 1e-4 cannot matter;
 * undefined too near a half, and from 2^31 (2.1 m) on. It saves the exact way, at a fraction of the cost.
 */
export function nearWhole(product: number): Grain | undefined {
  const whole = Math.round(product);
  if (!(Math.abs(product) < 2 ** 31 && Math.abs(product - whole) < 0.4999)) return undefined;
  return whole === 0 ? 0 : whole;
}

/** A length of exact millimetres, rounded once to the grain. */
export function grainOfRatio(millimetres: Ratio): Grain {
  const near = nearWhole(toNumber(millimetres) * GRAINS_PER_MM);
  return near ?? roundHalfAway(multiply(millimetres, { numerator: BigInt(GRAINS_PER_MM), denominator: 1n }));
}

/** A length in millimetres, read as its shortest decimal, rounded once to the grain. */
export function grainOfMm(millimetres: number): Grain {
  return grainOfRatio(exact(millimetres));
}

export function mmOfGrain(grain: Grain): number {
  return grain / GRAINS_PER_MM;
}

/**
 * The mean of lengths on the grain, halves away from zero. Exact: a sum of whole numbers divided
 * once lies on a half in floating point only where it truly does.
 * @throws RangeError for an empty list, which has no mean.
 */
export function meanGrain(lengths: readonly Grain[]): Grain {
  if (lengths.length === 0) throw new RangeError('the mean of no lengths');
  let sum = 0;
  for (const length of lengths) sum += length;
  return roundToWhole(sum / lengths.length);
}
