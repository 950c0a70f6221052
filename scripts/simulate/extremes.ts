/**
 * How far the extremes of scattered readings lie outside the truth, where the part is round and parallel. A chance in
 * range takes the largest and the smallest spot as they were read; this is what that costs.
 */
import type { FitResult } from '../../src/engine/assess/fit.js';

/**
 * The mean of the largest of n values of the standard normal distribution, n from 1. Source: tables of
 * order statistics, e.g. H. L. Harter, Biometrika 48 (1961), Table 1 (typed from memory; the test draws them).
 */
export const MEAN_LARGEST = [0, 0.5642, 0.8463, 1.0294, 1.163, 1.2672] as const;

/** Σ of the expected excess of each part's extreme, grains: at most so much, since true form makes it less. */
export function expectedExcess({ parts }: FitResult): number {
  return Object.values(parts).reduce(
    (sum, { spots, measured }) => sum + MEAN_LARGEST[spots.length - 1]! * Math.sqrt(measured!.readVariance),
    0,
  );
}
