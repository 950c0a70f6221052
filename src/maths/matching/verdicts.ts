/**
 * Whether a space (bore less journal) and a pair of walls make an allowed fit.
 *
 * The guard depends on the gauges of all four parts, so that it is no value of the space or of the pair alone. Its
 * variance is a sum of three: the random variance of the space, that of the pair, and the variance of the gauges, which
 * is one number for two lists of gauges.
 */
import { fitVerdict } from '../conformity.js';
import { type Grain, roundToWhole } from '../grain.js';
import { normalQuantile } from '../normal.js';
import { clearanceVariance, type MeasuredPart, type SystematicSource } from '../uncertainty.js';
import type { KindLimits, Stock } from './stock.js';

/** Greatest relative error of a sum of variances in another order than the core's. */
const ORDER_OF_SUM = 1e-9;

export type ProvableLimits = KindLimits & { readonly min: Grain; readonly max: Grain };

export function isProvable(kind: KindLimits): kind is ProvableLimits {
  return kind.min !== undefined && kind.max !== undefined;
}

export function isAllowed(
  clearance: { readonly tightest: Grain; readonly loosest: Grain },
  { min, max, serviceLimit }: ProvableLimits,
  guard: Grain,
  allowUndecided: boolean,
): boolean {
  const verdict = fitVerdict(clearance, { min, max, serviceLimit }, guard);
  return verdict === 'in range' || (allowUndecided && verdict === 'undecided');
}

/** Gauge lists of two parts, as they enter a fit together. */
export interface GaugePair {
  readonly key: string;
  readonly first: readonly SystematicSource[];
  readonly second: readonly SystematicSource[];
}

const keys = new WeakMap<readonly SystematicSource[], string>();

function sourcesKey(sources: readonly SystematicSource[]): string {
  let key = keys.get(sources);
  if (key === undefined) {
    key = JSON.stringify(sources.map(({ gauge, maxError }) => [gauge, maxError]));
    keys.set(sources, key);
  }
  return key;
}

export function gaugePair(first: MeasuredPart, second: MeasuredPart): GaugePair {
  const key = `${sourcesKey(first.systematic)}|${sourcesKey(second.systematic)}`;
  return { key, first: first.systematic, second: second.systematic };
}

/** Variance of the gauges alone, of bore and journal with both walls. */
function gaugeVariance(space: GaugePair, pair: GaugePair): number {
  const part = (systematic: readonly SystematicSource[]): MeasuredPart => {
    return { size: 0, largest: 0, smallest: 0, spotVariance: 0, systematic };
  };
  return clearanceVariance({
    bore: part(space.first),
    journal: part(space.second),
    upper: part(pair.first),
    lower: part(pair.second),
  });
}

export interface Guards {
  /** The guards that a variance may round to: twice the same, or two where it lies on the step between them. */
  readonly ofVariance: (variance: number) => readonly [Grain, Grain];
  /** The variances between two at which the guard steps. */
  readonly stepsBetween: (from: number, to: number) => number[];
  readonly gaugeVariance: (space: GaugePair, pair: GaugePair) => number;
}

export function guardsOf({ confidence }: Stock): Guards {
  const quantile = normalQuantile(confidence);
  const rounded = (variance: number) => roundToWhole(quantile * Math.sqrt(variance));
  const known = new Map<string, number>();
  return {
    ofVariance: (variance) => [
      rounded(variance * (1 - ORDER_OF_SUM)),
      rounded(variance * (1 + ORDER_OF_SUM)),
    ],
    stepsBetween: (from, to) => {
      const steps: number[] = [];
      for (let guard = rounded(from); guard < rounded(to); guard++) {
        steps.push(((guard + 0.5) / quantile) ** 2);
      }
      return steps;
    },
    gaugeVariance: (space, pair) => {
      const key = `${space.key}/${pair.key}`;
      const variance = known.get(key) ?? gaugeVariance(space, pair);
      known.set(key, variance);
      return variance;
    },
  };
}
