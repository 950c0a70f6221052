/**
 * Which fits of a stock are allowed: the rules of the matching for one fit at a time, from the core's
 * own clearance, variance and verdict.
 */
import { clearanceOf, type FitParts } from '../clearance.js';
import { fitVerdict } from '../conformity.js';
import { type Grain, roundToWhole } from '../grain.js';
import { fitGuards, type Guards } from '../guards.js';
import type { FitKind, Half, KindLimits, Stock } from '../matching/stock.js';
import { clearanceVariance, type MeasuredPart } from '../uncertainty.js';

export type Side = 'upper' | 'lower';
export type GivenLimits = KindLimits & { readonly min: Grain; readonly max: Grain };

export function sameKind(a: FitKind, b: FitKind): boolean {
  return a.engineType === b.engineType && a.fit === b.fit;
}

export function goesOn(half: Half | 'pair', side: Side): boolean {
  return half === 'either' || half === 'pair' || half === side;
}

/** The clearance wished for; the middle of the range where the limits name none. */
export function wishOf({ aim, min, max }: GivenLimits): Grain {
  return aim ?? roundToWhole((min + max) / 2);
}

export class SingleFitRules {
  constructor(private readonly stock: Stock) {}

  /** Of two rows for one kind the first; undefined where no fit of the kind can be proved. */
  limitsOf(kind: FitKind): GivenLimits | undefined {
    const limits = this.stock.kinds.find((row) => sameKind(row, kind));
    return limits?.min === undefined || limits.max === undefined ? undefined : (limits as GivenLimits);
  }

  get allowsUndecided(): boolean {
    return this.stock.allowUndecided;
  }

  guardsOf(parts: FitParts<MeasuredPart>): Guards {
    return fitGuards(this.stock.confidence, clearanceVariance(parts));
  }

  /** Whether the halves may stand in one pair. */
  pairs(upper: MeasuredPart, lower: MeasuredPart, { halfDifference }: GivenLimits): boolean {
    return halfDifference === undefined || Math.abs(upper.size - lower.size) <= halfDifference;
  }

  /** Whether the clearance alone allows the fit. */
  suits(parts: FitParts<MeasuredPart>, { min, max, serviceLimit }: GivenLimits): boolean {
    const verdict = fitVerdict(clearanceOf(parts), { min, max, serviceLimit }, this.guardsOf(parts));
    return verdict === 'in range' || (this.stock.allowUndecided && verdict === 'undecided');
  }

  allows(parts: FitParts<MeasuredPart>, limits: GivenLimits): boolean {
    return this.pairs(parts.upper, parts.lower, limits) && this.suits(parts, limits);
  }
}
