/**
 * Uncertainty of sizes and clearances by the law of propagation (JCGM 100:2008, 5.1.2 and 5.2.2).
 *
 * Two kinds of part. The random part of a spot with n repeats
 *
 *   u_r² = resolution²/12 + repeatability²/n + (0.5 K · αp · x)²
 *
 * is its own. The systematic part, max error/√3 of a gauge (a rectangular distribution, JCGM 100
 * 4.3.7), is one shared source for all readings made with that gauge, plus one for each gauge that
 * set its zero: within one clearance equal sources add with their signs before they are squared.
 *
 * All in grains (0.01 µm) and grains², unrounded.
 */
import { bearingTerms, type FitParts, type SignedTerm, type Sizes } from './clearance.js';
import { type Grain, roundToWhole } from './grain.js';

/** How far part and gauge may differ in temperature, K. Common practice, no published source. */
export const TEMPERATURE_DIFFERENCE_KELVIN = 0.5;

/** One gauge's unknown constant error, shared by all readings that it stands behind. */
export interface SystematicSource {
  /** The gauge's name; equal names are one source. */
  readonly gauge: string;
  /** Half the width of the interval in which the error lies. */
  readonly maxError: Grain;
}

export interface GaugeRandom {
  readonly resolution: Grain;
  /** Standard deviation of one reading. */
  readonly repeatability: Grain;
}

/** A part that can take its place in a fit. */
export interface MeasuredPart extends Sizes {
  /** The gauge and the chain that set it; empty where no gauge was named. */
  readonly systematic: readonly SystematicSource[];
  /** The largest u_r² of one spot; 0 where no gauge was named. */
  readonly spotVariance: number;
}

/**
 * u_r² of one spot.
 * @param repeats how often the spot was read, 1 or more
 * @param expansion of the part, 1e-6 per K; 0 drops the temperature term
 */
export function spotVariance(gauge: GaugeRandom, repeats: number, expansion: number, value: Grain): number {
  const temperature = TEMPERATURE_DIFFERENCE_KELVIN * expansion * 1e-6 * value;
  return gauge.resolution ** 2 / 12 + gauge.repeatability ** 2 / repeats + temperature ** 2;
}

/** Σ of the squared standard uncertainties of independent systematic sources. */
export function systematicVariance(sources: readonly SystematicSource[]): number {
  let variance = 0;
  for (const { maxError } of sources) variance += maxError ** 2 / 3;
  return variance;
}

/** u² of a part's size, the mean of m spots. */
export function sizeVariance(sources: readonly SystematicSource[], spotVariances: readonly number[]): number {
  let random = 0;
  for (const variance of spotVariances) random += variance;
  return systematicVariance(sources) + random / spotVariances.length ** 2;
}

/** u_c² of a fit of single spots, sources of one gauge added with their signs. */
export function varianceOf(terms: readonly SignedTerm<MeasuredPart>[]): number {
  const shared = new Map<string, { maxError: Grain; sensitivity: number }>();
  let variance = 0;
  for (const { sign, part } of terms) {
    variance += part.spotVariance;
    for (const { gauge, maxError } of part.systematic) {
      const source = shared.get(gauge) ?? { maxError, sensitivity: 0 };
      source.sensitivity += sign;
      shared.set(gauge, source);
    }
  }
  for (const { maxError, sensitivity } of shared.values()) variance += (sensitivity * maxError) ** 2 / 3;
  return variance;
}

/** u_c² of a shell bearing. */
export function clearanceVariance(parts: FitParts<MeasuredPart>): number {
  return varianceOf(bearingTerms(parts));
}

/** The uncertainty shown beside a result: twice the standard uncertainty (k = 2), on the grain. */
export function expandedUncertainty(variance: number): Grain {
  return roundToWhole(2 * Math.sqrt(variance));
}

/** The variance of a sum of independent contributions. */
export function sumOfSquares(contributions: readonly number[]): number {
  let sum = 0;
  for (const contribution of contributions) sum += contribution ** 2;
  return sum;
}

/**
 * The standard uncertainty of a clearance from those of its four parts.
 * @param sharedWalls one error stands behind both walls, so that they add before they are squared
 */
export function combineClearance(
  { bore, upper, lower, journal }: FitParts<number>,
  sharedWalls: boolean,
): number {
  const walls = sharedWalls ? [upper + lower] : [upper, lower];
  return Math.sqrt(sumOfSquares([bore, ...walls, journal]));
}
