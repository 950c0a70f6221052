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

/** Behind it no range of up to a hundred values lies. */
const ENDLESS = 12;
const STEPS = 600;

/** The mean d2 of the range of n values, and its standard deviation d3: E[R] = ∫ (1 − F), E[R²] = ∫ 2x (1 − F). */
function rangeMoments(values: number): { mean: number; deviation: number } {
  const step = ENDLESS / STEPS;
  let first = 0;
  let second = 0;
  for (let place = 0; place <= STEPS; place++) {
    const range = place * step;
    // Simpson's rule.
    const weight = place === 0 || place === STEPS ? 1 : place % 2 === 1 ? 4 : 2;
    const above = weight * (1 - rangeProbability(range, values));
    first += above;
    second += 2 * range * above;
  }
  const mean = (first * step) / 3;
  return { mean, deviation: Math.sqrt((second * step) / 3 - mean ** 2) };
}

/** From so many ranges on their mean is as good as that of endlessly many (MSA, 4th ed., appendix C). */
const MANY_RANGES = 15;

/**
 * By which the mean of m ranges, each of n values, is divided to give a standard deviation: d2* = √(d2² + d3²/m)
 * (A. J. Duncan, Quality Control and Industrial Statistics; the values of MSA, 4th ed., appendix C); d2 for many.
 */
export function rangeDivisor(values: number, ranges: number): number {
  const { mean, deviation } = rangeMoments(values);
  return ranges > MANY_RANGES ? mean : Math.sqrt(mean ** 2 + deviation ** 2 / ranges);
}
