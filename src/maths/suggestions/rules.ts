/**
 * Which fits of a stock are allowed: the rules of the matching for one fit at a time, from the core's
 * own clearance, variance and verdict.
 */
import { clearanceOf, type FitParts } from '../clearance.js';
import { fitVerdict } from '../conformity.js';
import { type Grain, roundToWhole } from '../grain.js';
import { fitGuards, type Guards } from '../guards.js';
import type {
  FitKind,
  Half,
  KindLimits,
  Stock,
  StockJournal,
  StockNewShell,
  StockRod,
  StockShell,
} from '../matching/stock.js';
import { clearanceVariance, type MeasuredPart } from '../uncertainty.js';

export type Side = 'upper' | 'lower';
export type AnyShell = StockShell | StockNewShell;
export type GivenLimits = KindLimits & { readonly min: Grain; readonly max: Grain };

export function sameKind(a: FitKind, b: FitKind): boolean {
  return a.engineType === b.engineType && a.fit === b.fit;
}

export function goesOn(half: Half | 'pair', side: Side): boolean {
  return half === 'either' || half === 'pair' || half === side;
}

/** What two halves cost that are bought: a pair once. */
export function priceOfHalves(upper: StockNewShell, lower: StockNewShell): number {
  return upper.half === 'pair' ? upper.price : upper.price + lower.price;
}

function matesOf(shell: AnyShell): string | undefined {
  return 'quantity' in shell ? shell.mates : undefined;
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

  /** Whether the clearance of an allowed fit may lie outside the range. */
  get allowsOutside(): boolean {
    return this.stock.allowUndecided || this.stock.allowWorn;
  }

  /** Whether a half that is found elsewhere may stand beside this one. */
  mayTakeAnyMate(shell: StockShell): boolean {
    return shell.mates === undefined;
  }

  guardsOf(parts: FitParts<MeasuredPart>): Guards {
    return fitGuards(this.stock.confidence, clearanceVariance(parts));
  }

  /** Whether two halves may stand with each other, whatever their walls. */
  mayStand(upper: AnyShell, lower: AnyShell): boolean {
    const [isUsed, isUsedToo] = ['quantity' in upper, 'quantity' in lower];
    if (upper.half === 'pair' || lower.half === 'pair') return upper === lower;
    if (isUsed !== isUsedToo && !this.stock.newWithUsed) return false;
    return matesOf(upper) === matesOf(lower);
  }

  /** Whether a rod may serve on a journal of an engine, where it may only serve where it ran. */
  mayServe({ ran }: StockRod, engine: string, { position }: StockJournal): boolean {
    return !this.stock.rodsStay || !ran || (ran.engine === engine && ran.position === position);
  }

  /** Whether the walls of two halves may stand in one pair. */
  pairs(upper: MeasuredPart, lower: MeasuredPart, { halfDifference }: GivenLimits): boolean {
    return halfDifference === undefined || Math.abs(upper.size - lower.size) <= halfDifference;
  }

  /** Whether the clearance alone allows the fit. */
  suits(parts: FitParts<MeasuredPart>, { min, max, serviceLimit }: GivenLimits): boolean {
    const verdict = fitVerdict(clearanceOf(parts), { min, max, serviceLimit }, this.guardsOf(parts));
    if (verdict === 'in range') return true;
    const { allowUndecided, allowWorn } = this.stock;
    return (allowUndecided && verdict === 'undecided') || (allowWorn && verdict === 'within service limit');
  }

  allows(parts: FitParts<MeasuredPart>, limits: GivenLimits): boolean {
    return this.pairs(parts.upper, parts.lower, limits) && this.suits(parts, limits);
  }
}
