/**
 * Uncertainty of sizes and clearances by the law of propagation (JCGM 100:2008, 5.1.2 and 5.2.2).
 *
 * Of a part of size x at 20 °C, of m spots, each read n times or more:
 *
 *   u_i² = resolution²/12 + repeatability²/n      one spot, its own (rectangular: JCGM 100, 4.3.7)
 *   u_T  = 0.5 K · αp · x                         part and gauge may differ in temperature; one for the part
 *   u_α  = Δα · x · (T − 20) / √3                 once with the error of the part's expansion, once with the gauge's
 *   E/√3                                          max error of the gauge, and of each gauge that set its zero
 *
 * What is systematic is shared: within one fit equal sources add with the signs of their terms before they are squared.
 * A gauge's error is one constant where the user knows it to be; else it may differ from size to size, and only terms of
 * nearly one size share it.
 *
 * All in grains and grains², unrounded.
 */
import { bearingTerms, type FitParts, type SignedTerm, type Sizes } from './clearance.js';
import { type Grain, roundToWhole } from './grain.js';
import { gaugeShares, gaugeVariance, type SystematicSource } from './shared-gauges.js';

/** How far part and gauge may differ in temperature, K. Common practice, no published source. */
export const TEMPERATURE_DIFFERENCE_KELVIN = 0.5;

export interface GaugeRandom {
  readonly resolution: Grain;
  /** Standard deviation of one reading. */
  readonly repeatability: Grain;
}

/** A standard contribution that follows the temperature: signed as T − 20 is. */
export interface GaugeExpansion {
  /** The gauge that took the readings. */
  readonly gauge: string;
  readonly contribution: number;
}

/** A part that can take its place in a fit. */
export interface MeasuredPart extends Sizes {
  /** How many spots its sizes come from; 1 where their scatter does not count, as of a new shell. */
  readonly spots: number;
  /** u_i²; 0 where no gauge was named. */
  readonly readVariance: number;
  /** u_T²; 0 where no gauge was named. */
  readonly temperatureVariance: number;
  /** u_α of the part's own expansion, signed as T − 20; 0 at 20 °C. */
  readonly ownExpansion: number;
  /** u_α of its gauge's expansion; undefined at 20 °C, and where no gauge was named. */
  readonly gaugeExpansion: GaugeExpansion | undefined;
  /** The gauge and the chain that set it; empty where no gauge was named. */
  readonly systematic: readonly SystematicSource[];
}

/** What a part that nobody measured adds to the uncertainty of a fit: nothing. */
export const CERTAIN = {
  spots: 1,
  readVariance: 0,
  temperatureVariance: 0,
  ownExpansion: 0,
  gaugeExpansion: undefined,
  systematic: [],
} as const satisfies Omit<MeasuredPart, keyof Sizes>;

/**
 * u_i² of one spot.
 * @param repeats how often the spot was read, 1 or more
 */
export function readVariance(gauge: GaugeRandom, repeats: number): number {
  return gauge.resolution ** 2 / 12 + gauge.repeatability ** 2 / repeats;
}

/**
 * u_T² of a part.
 * @param expansion of the part, 1e-6 per K; 0 drops the term
 */
export function temperatureVariance(expansion: number, size: Grain): number {
  return (TEMPERATURE_DIFFERENCE_KELVIN * expansion * 1e-6 * size) ** 2;
}

/**
 * u_α of a size, signed as T − 20.
 * @param error half the width of the interval of the expansion, 1e-6 per K
 * @param kelvin T − 20
 */
export function expansionContribution(error: number, size: Grain, kelvin: number): number {
  return (error * 1e-6 * size * kelvin) / Math.sqrt(3);
}

/** Σ of the squared standard uncertainties of independent systematic sources. */
export function systematicVariance(sources: readonly SystematicSource[]): number {
  let variance = 0;
  for (const { maxError } of sources) variance += maxError ** 2 / 3;
  return variance;
}

type Uncertain = Pick<
  MeasuredPart,
  'systematic' | 'temperatureVariance' | 'ownExpansion' | 'gaugeExpansion' | 'readVariance' | 'spots'
>;

/** Of one part, the variance that its spots share: gauges, temperature, expansion. */
export function commonVariance(part: Uncertain): number {
  const { systematic, temperatureVariance: temperature, ownExpansion, gaugeExpansion } = part;
  return (
    systematicVariance(systematic) +
    temperature +
    ownExpansion ** 2 +
    (gaugeExpansion?.contribution ?? 0) ** 2
  );
}

/** u² of a part's size, the mean of m spots. */
export function sizeVariance(part: Uncertain): number {
  return commonVariance(part) + part.readVariance / part.spots;
}

/** The random variance of one part of a fit, and of how many spots its extremes are. */
export interface SpotScatter {
  readonly variance: number;
  readonly spots: number;
}

/** The uncertainty of a fit in its two kinds. */
export interface FitVariance {
  /** S + Σ u_T²: what moves the whole fit. */
  readonly common: number;
  /** u_i² of each part. */
  readonly scatters: readonly SpotScatter[];
}

/** u_c² of a fit. */
export function totalVariance({ common, scatters }: FitVariance): number {
  return scatters.reduce((sum, { variance }) => sum + variance, common);
}

/** The outer part's expansion is its own; inner part and walls are of kindred steel, and err together. */
function expansionVariance(terms: readonly SignedTerm<MeasuredPart>[]): number {
  const byGauge = new Map<string, number>();
  let [outer, inner] = [0, 0];
  for (const { sign, part } of terms) {
    if (sign > 0) outer += part.ownExpansion ** 2;
    else inner += part.ownExpansion;
    if (!part.gaugeExpansion) continue;
    const { gauge, contribution } = part.gaugeExpansion;
    byGauge.set(gauge, (byGauge.get(gauge) ?? 0) + sign * contribution);
  }
  let variance = outer + inner ** 2;
  for (const sum of byGauge.values()) variance += sum ** 2;
  return variance;
}

function temperatureVarianceOf(terms: readonly SignedTerm<MeasuredPart>[]): number {
  return terms.reduce((sum, { part }) => sum + part.temperatureVariance, 0);
}

function scattersOf(terms: readonly SignedTerm<MeasuredPart>[]): SpotScatter[] {
  return terms.map(({ part }) => ({ variance: part.readVariance, spots: part.spots }));
}

/** The uncertainty of a fit of signed terms. */
export function varianceOf(terms: readonly SignedTerm<MeasuredPart>[]): FitVariance {
  return {
    common: gaugeVariance(gaugeShares(terms)) + expansionVariance(terms) + temperatureVarianceOf(terms),
    scatters: scattersOf(terms),
  };
}

/** The same with another max error of one of its gauges, which may be asked for many. */
export function varianceByError(
  terms: readonly SignedTerm<MeasuredPart>[],
  gauge: string,
): (maxError: Grain) => FitVariance {
  const shares = gaugeShares(terms);
  const [expansion, temperature, scatters] = [
    expansionVariance(terms),
    temperatureVarianceOf(terms),
    scattersOf(terms),
  ];
  return (maxError) => {
    const errorOf = (source: SystematicSource) => (source.gauge === gauge ? maxError : source.maxError);
    return { common: gaugeVariance(shares, errorOf) + expansion + temperature, scatters };
  };
}

/** The uncertainty of a shell bearing. */
export function clearanceVariance(parts: FitParts<MeasuredPart>): FitVariance {
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
