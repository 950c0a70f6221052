/** The standard normal distribution, by the statistics library. */
import jstat from 'jstat';

const { normal } = jstat.jStat;

/** Φ(z), the probability of a value at or below z. */
export function normalProbability(z: number): number {
  return normal.cdf(z, 0, 1);
}

/** Quantiles already looked for: a book asks for that of its confidence once a part. */
const quantiles = new Map<number, number>();
const MOST_KEPT = 100;

/**
 * The one-sided quantile z with Φ(z) = probability: 1.6449 at 0.95.
 * @param probability above 0 and below 1.
 */
export function normalQuantile(probability: number): number {
  const known = quantiles.get(probability);
  if (known !== undefined) return known;
  // The library's median is -8e-17; 50 % confidence means no guard at all.
  const quantile = probability === 0.5 ? 0 : normal.inv(probability, 0, 1);
  if (quantiles.size < MOST_KEPT) quantiles.set(probability, quantile);
  return quantile;
}
