/** The range of n independent normal values of known standard deviation 1, by the statistics library. */
import jstat from 'jstat';

const { tukey } = jstat.jStat;

/** From so many degrees of freedom on the library takes the standard deviation as known. */
const KNOWN = 1e6;

/** The range that n values exceed with probability 1 − `probability`: 2.77 for two at 95 %. */
export function rangeQuantile(probability: number, values: number): number {
  return tukey.inv(probability, values, KNOWN);
}

/** The probability that the range of n values is at most `range`. */
export function rangeProbability(range: number, values: number): number {
  return range <= 0 ? 0 : tukey.cdf(range, values, KNOWN);
}
