/**
 * What a measured value proves about a limit.
 *
 * Source: ISO 14253-1:2017, conformity is proved only inside the limit by a guard, non-conformity
 * only outside it by a guard of its own; between them nothing is proved. Probability of conformity: JCGM
 * 106:2012, 7.2 to 7.4 (normal distribution about the measured value).
 */
import type { Grain } from './grain.js';
import type { Guards } from './guards.js';
import { normalProbability } from './normal.js';

/** A limit that is undefined is none: gaps and run-outs may have one of the two. */
export interface FitLimits {
  readonly min: Grain | undefined;
  readonly max: Grain | undefined;
  readonly serviceLimit?: Grain | undefined;
}

/** Verdicts of a fit whose clearance and limits are known. */
export type ProvenFitVerdict = 'tight' | 'loose' | 'in range' | 'within service limit' | 'undecided';

export function fitVerdict(
  { tightest, loosest }: { readonly tightest: Grain; readonly loosest: Grain },
  limits: FitLimits,
  { inside, outside }: Guards,
): ProvenFitVerdict {
  const { serviceLimit } = limits;
  const { min, max } = openEnded(limits);
  if (tightest + outside < min) return 'tight';
  if (loosest - outside > (serviceLimit ?? max)) return 'loose';
  const clearOfMin = tightest - inside >= min;
  if (clearOfMin && loosest + inside <= max) return 'in range';
  const isWorn = loosest - outside > max;
  if (clearOfMin && serviceLimit !== undefined && isWorn && loosest + inside <= serviceLimit) {
    return 'within service limit';
  }
  return 'undecided';
}

/** The range of a fit; a limit that there is none of lies beyond every length. */
export function openEnded({ min, max }: Pick<FitLimits, 'min' | 'max'>): {
  readonly min: number;
  readonly max: number;
} {
  return { min: min ?? Number.NEGATIVE_INFINITY, max: max ?? Number.POSITIVE_INFINITY };
}

/** The probability that the whole fit lies within [min, max]. */
export function chanceInRange(
  { tightest, loosest }: { readonly tightest: Grain; readonly loosest: Grain },
  limits: Pick<FitLimits, 'min' | 'max'>,
  standardUncertainty: number,
): number {
  const { min, max } = openEnded(limits);
  if (standardUncertainty === 0) return tightest >= min && loosest <= max ? 1 : 0;
  const upper =
    max === Number.POSITIVE_INFINITY ? 1 : normalProbability((max - loosest) / standardUncertainty);
  const lower =
    min === Number.NEGATIVE_INFINITY ? 0 : normalProbability((min - tightest) / standardUncertainty);
  return Math.max(0, upper - lower);
}

/** One comparison of a part with one of its limits. */
export interface LimitCheck {
  /** The checked quantity and the limit, in words: `smallest`, `Wear limit`. */
  readonly quantity: string;
  readonly limitName: string;
  readonly limit: Grain;
  readonly side: 'at least' | 'at most';
  /** Undefined where the value cannot be formed from the readings. */
  readonly value: Grain | undefined;
  readonly guards: Guards;
}

export type CheckOutcome = 'passes' | 'fails' | 'undecided';

/** By how much a value lies outside its limit; negative inside. */
export function excess({ side, value, limit }: LimitCheck): Grain | undefined {
  if (value === undefined) return undefined;
  return side === 'at least' ? limit - value : value - limit;
}

export function outcomeOf(check: LimitCheck): CheckOutcome {
  const beyond = excess(check);
  if (beyond === undefined) return 'undecided';
  if (beyond > check.guards.outside) return 'fails';
  return beyond <= -check.guards.inside ? 'passes' : 'undecided';
}

export type ProvenPartVerdict = 'beyond limits' | 'within limits' | 'undecided' | 'no limits';

export function partVerdict(checks: readonly LimitCheck[]): ProvenPartVerdict {
  if (checks.length === 0) return 'no limits';
  const outcomes = checks.map(outcomeOf);
  if (outcomes.includes('fails')) return 'beyond limits';
  return outcomes.every((outcome) => outcome === 'passes') ? 'within limits' : 'undecided';
}
