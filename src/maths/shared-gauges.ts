/**
 * What the gauges behind several parts of a fit add to its uncertainty: Σ E²/3 · k.
 *
 *   E   max error of a gauge, the half-width of a rectangular distribution (JCGM 100:2008, 4.3.7)
 *   k   how often its square counts: equal sources add with the signs of their terms before they are squared
 *
 * Source: JCGM 100:2008, 5.2.2. All in grains and grains².
 */
import type { SignedTerm } from './clearance.js';
import { GRAINS_PER_MM, type Grain } from './grain.js';

/** Terms whose sizes differ by less share a gauge's error. Common practice, no published source. */
export const SAME_SIZE: Grain = 0.25 * GRAINS_PER_MM;

/** One gauge's unknown error, shared by all readings that it stands behind. */
export interface SystematicSource {
  /** The gauge's name; equal names are one source. */
  readonly gauge: string;
  /** Half the width of the interval in which the error lies. */
  readonly maxError: Grain;
  /** The error is one constant at all sizes. */
  readonly isConstant: boolean;
}

/** A term that a gauge stands behind. */
interface GaugedTerm {
  readonly size: Grain;
  readonly sign: number;
}

/** k: how often the squared error of a gauge counts in a fit. */
function timesCounted(isConstant: boolean, terms: GaugedTerm[]): number {
  const all = terms.reduce((sum, { sign }) => sum + sign, 0) ** 2;
  if (isConstant || terms.length === 1) return all;
  let [apart, group, first] = [0, 0, Number.NEGATIVE_INFINITY];
  for (const { size, sign } of terms.sort((a, b) => a.size - b.size)) {
    if (size - first >= SAME_SIZE) {
      apart += group ** 2;
      [group, first] = [0, size];
    }
    group += sign;
  }
  return Math.max(all, apart + group ** 2);
}

/** What a part brings of gauges to a fit. */
interface GaugedPart {
  readonly size: Grain;
  /** The gauge and the chain that set it. */
  readonly systematic: readonly SystematicSource[];
}

/** A gauge's share in a fit. */
export interface GaugeShare {
  readonly source: SystematicSource;
  /** k. */
  readonly times: number;
}

/** The gauges behind a fit, each once. */
export function gaugeShares(terms: readonly SignedTerm<GaugedPart>[]): GaugeShare[] {
  const shares = new Map<string, { source: SystematicSource; terms: GaugedTerm[] }>();
  for (const { sign, part } of terms) {
    for (const source of part.systematic) {
      const term = { size: part.size, sign };
      const share = shares.get(source.gauge);
      if (share) share.terms.push(term);
      else shares.set(source.gauge, { source, terms: [term] });
    }
  }
  return [...shares.values()].map(({ source, terms: own }) => ({
    source,
    times: timesCounted(source.isConstant, own),
  }));
}

/**
 * Σ E²/3 · k over the gauges of a fit.
 * @param errorOf the max error to take for a gauge
 */
export function gaugeVariance(
  shares: readonly GaugeShare[],
  errorOf: (source: SystematicSource) => Grain = ({ maxError }) => maxError,
): number {
  let variance = 0;
  for (const { source, times } of shares) variance += (errorOf(source) ** 2 / 3) * times;
  return variance;
}
