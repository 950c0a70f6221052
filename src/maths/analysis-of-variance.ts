/**
 * Analysis of variance of equal groups, with F and its probability by the statistics library.
 *
 * Sums of squares are of deviations from means, never of the values themselves: readings that agree in their first
 * figures keep the others (NIST StRD, analysis of variance, the data sets of average and higher difficulty).
 */
import jstat from 'jstat';

const { mean: meanOf, stdev, centralF } = jstat.jStat;

/** One source of variation. */
export interface Variation {
  readonly sumOfSquares: number;
  readonly degrees: number;
  /** Sum of squares by degrees of freedom; 0 without any. */
  readonly meanSquare: number;
}

export function mean(values: readonly number[]): number {
  // Taken from the first value, so that a large common part does not round the rest away.
  const first = values[0]!;
  return first + meanOf(values.map((value) => value - first));
}

/** The standard deviation of a sample, by n − 1. */
export function sampleDeviation(values: readonly number[]): number {
  const first = values[0]!;
  return stdev(
    values.map((value) => value - first),
    true,
  );
}

export function variation(sumOfSquares: number, degrees: number): Variation {
  return { sumOfSquares, degrees, meanSquare: degrees === 0 ? 0 : sumOfSquares / degrees };
}

export function squaresAbout(values: readonly number[], centre: number): number {
  let sum = 0;
  for (const value of values) sum += (value - centre) ** 2;
  return sum;
}

/**
 * How often chance alone gives a ratio of mean squares as great as this one. Where nothing varies below, any variation
 * above is infinitely more, and no chance.
 */
export function chanceOf(above: Variation, below: Variation): { f: number; p: number } {
  if (below.meanSquare === 0) {
    return above.meanSquare > 0 ? { f: Number.POSITIVE_INFINITY, p: 0 } : { f: 0, p: 1 };
  }
  const f = above.meanSquare / below.meanSquare;
  return { f, p: 1 - centralF.cdf(f, above.degrees, below.degrees) };
}

export interface OneWay {
  readonly between: Variation;
  readonly within: Variation;
  readonly f: number;
  readonly p: number;
}

/** @param groups of one size, two or more values each */
export function oneWayAnalysis(groups: readonly (readonly number[])[]): OneWay {
  const size = groups[0]!.length;
  const means = groups.map(mean);
  const between = variation(size * squaresAbout(means, mean(means)), groups.length - 1);
  const inner = groups.reduce((sum, group, place) => sum + squaresAbout(group, means[place]!), 0);
  const within = variation(inner, groups.length * (size - 1));
  return { between, within, ...chanceOf(between, within) };
}
