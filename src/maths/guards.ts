/**
 * The strips beside a limit in which a reading proves nothing. What keeps a limit and what breaks it have guards of their
 * own: the largest of several scattered readings lies above the largest true value, so that a part on its limit would too
 * often be called beyond it.
 *
 *   fit       g = z·u_c          G = max(g, z·√(S + Σ u_T² + Σ s(m)²·u_i²) + Σ c(m)·u_i)
 *   extremes  g = z·√(common + u_i²)   G = max(g, z·√(common + s(m)²·u_i²) + c(m)·u_i)
 *   form      g = z·√2·u_i       G = max(g, q·u_i)
 *
 *   z           one-sided normal quantile of the confidence
 *   c(m), s(m)  mean and deviation of the largest of m standard normal values
 *   q           what scatter adds to the widest of k ranges of n readings
 *
 * Source: ISO 14253-1:2017 (guards of conformity and of non-conformity); order statistics: src/maths/order-statistics.ts.
 */
import type { FormGroups } from './form.js';
import { type Grain, roundToWhole } from './grain.js';
import { normalQuantile } from './normal.js';
import { deviationOfLargest, meanOfLargest, widestRange } from './order-statistics.js';
import { commonVariance, type FitVariance, type MeasuredPart, totalVariance } from './uncertainty.js';

export interface Guards {
  /** By which a value has to lie inside a limit to keep it. */
  readonly inside: Grain;
  /** By which a value has to lie outside a limit to break it, exceeded. */
  readonly outside: Grain;
}

export const NO_GUARDS: Guards = { inside: 0, outside: 0 };

/** z·u, on the grain. */
export function guardOf(confidence: number, standardUncertainty: number): Grain {
  return roundToWhole(normalQuantile(confidence) * standardUncertainty);
}

/** The same guard on both sides. */
export function evenGuards(confidence: number, standardUncertainty: number): Guards {
  const guard = guardOf(confidence, standardUncertainty);
  return { inside: guard, outside: guard };
}

/** @param scatters of every extreme that the value rests on */
function outsideGuard(confidence: number, { common, scatters }: FitVariance, inside: number): number {
  let [variance, excess] = [common, 0];
  for (const { variance: own, spots } of scatters) {
    variance += deviationOfLargest(spots) ** 2 * own;
    excess += meanOfLargest(spots) * Math.sqrt(own);
  }
  return Math.max(inside, normalQuantile(confidence) * Math.sqrt(variance) + excess);
}

export function fitGuards(confidence: number, variance: FitVariance): Guards {
  const inside = normalQuantile(confidence) * Math.sqrt(totalVariance(variance));
  return {
    inside: roundToWhole(inside),
    outside: roundToWhole(outsideGuard(confidence, variance, inside)),
  };
}

/** Guards of the largest and the smallest spot of a part. */
export function extremesGuards(
  confidence: number,
  part: Omit<MeasuredPart, 'size' | 'largest' | 'smallest'>,
): Guards {
  return fitGuards(confidence, {
    common: commonVariance(part),
    scatters: [{ variance: part.readVariance, spots: part.spots }],
  });
}

/** Guards of a difference of spots of one part: what they share cancels. */
export function formGuards(confidence: number, variance: number, shape: FormGroups | undefined): Guards {
  const u = Math.sqrt(variance);
  const inside = normalQuantile(confidence) * Math.SQRT2 * u;
  const widest = shape && variance > 0 ? widestRange(confidence, shape.groups, shape.spots) * u : 0;
  return { inside: roundToWhole(inside), outside: roundToWhole(Math.max(inside, widest)) };
}
