/**
 * What scatter does to extremes: the largest of m readings lies above the largest true value, and the range of n readings
 * is wider than the true range, although each reading errs to either side alike.
 *
 *   c(m)  mean of the largest of m values of the standard normal distribution
 *   s(m)  its standard deviation
 *   q     the quantile of the range of n such values
 *
 * Source: tables of order statistics, e.g. H. L. Harter, Expected values of normal order statistics, Biometrika 48 (1961),
 * Table 1, and D. Teichroew, Tables of expected values of order statistics, Ann. Math. Statist. 27 (1956), for 1 to 10
 * values; beyond by integration of the density m·φ(x)·Φ(x)^(m−1).
 */
import { normalProbability, normalQuantile } from './normal.js';
import { rangeQuantile } from './studentized-range.js';

const MEANS = [0, 0.5642, 0.8463, 1.0294, 1.163, 1.2672, 1.3522, 1.4236, 1.485, 1.5388];
const DEVIATIONS = [1, 0.8256, 0.748, 0.7012, 0.669, 0.6449, 0.626, 0.6107, 0.5978, 0.5868];

interface Moments {
  readonly mean: number;
  readonly deviation: number;
}

const integrated = new Map<number, Moments>();

/** Outside of it lies less than 1e-15 of the distribution. */
const REACH = 8;
const STEPS = 2000;

/** Mean and deviation of the largest of m values, by Simpson's rule. */
function integratedMoments(count: number): Moments {
  const known = integrated.get(count);
  if (known) return known;
  const step = (2 * REACH) / STEPS;
  let [first, second] = [0, 0];
  for (let place = 0; place <= STEPS; place++) {
    const x = -REACH + place * step;
    const weight = place === 0 || place === STEPS ? 1 : place % 2 === 1 ? 4 : 2;
    const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
    const share = weight * count * density * normalProbability(x) ** (count - 1);
    first += share * x;
    second += share * x * x;
  }
  const mean = (first * step) / 3;
  const found = { mean, deviation: Math.sqrt((second * step) / 3 - mean ** 2) };
  integrated.set(count, found);
  return found;
}

/** c(m): how many standard deviations the largest of m scattered readings of one value lies above it, on average. */
export function meanOfLargest(count: number): number {
  return MEANS[count - 1] ?? integratedMoments(count).mean;
}

/** s(m): the standard deviation of the largest of m readings, in standard deviations of one. */
export function deviationOfLargest(count: number): number {
  return DEVIATIONS[count - 1] ?? integratedMoments(count).deviation;
}

/** By confidence, groups and count: a long list asks for a few of them often. */
const widest = new Map<number, Map<number, Map<number, number>>>();

/**
 * What scatter adds at most to the widest of k ranges, each of n readings, with the confidence given: in standard
 * deviations of a reading.
 *
 * @param groups 1 or more
 * @param count readings of a group, 2 or more
 */
export function widestRange(confidence: number, groups: number, count: number): number {
  const known = widest.get(confidence)?.get(groups)?.get(count);
  if (known !== undefined) return known;
  const each = confidence ** (1 / groups);
  // Two spots that differ by a limit err about that difference, to one side or the other: a single normal value.
  const found = count === 2 ? Math.SQRT2 * normalQuantile(each) : rangeQuantile(each, count);
  const byGroups = widest.get(confidence) ?? new Map<number, Map<number, number>>();
  const byCount = byGroups.get(groups) ?? new Map<number, number>();
  widest.set(confidence, byGroups.set(groups, byCount.set(count, found)));
  return found;
}
