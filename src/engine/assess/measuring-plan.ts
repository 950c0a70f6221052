/**
 * Which readings would decide the verdicts that are open: more repeats of one part, of all parts of a fit, or
 * a better gauge where repeats would not.
 */
import { guardOf, outcomeOf } from '../../maths/conformity.js';
import {
  chanceCheckDecided,
  chanceFitDecided,
  MOST_REPEATS,
  readingsNeeded,
  type SpotReadings,
  spotVarianceWith,
} from '../../maths/measuring-plan.js';
import { systematicVariance } from '../../maths/uncertainty.js';
import type { FitResult } from './fit.js';
import type { PartResult } from './part.js';

/** Spots read up to so many times each, and what that is expected to decide. */
export interface RepeatPlan {
  readonly parts: readonly PartResult[];
  /** Readings that each spot has then, at least. */
  readonly repeats: number;
  /** New readings in all. */
  readonly readings: number;
  /** Open verdicts that the readings bear upon, and how many of them are expected to be decided. */
  readonly open: number;
  readonly decided: number;
}

/** Open verdicts by the parts that they rest on. */
export interface OpenVerdicts {
  readonly fits: readonly FitResult[];
  readonly fitsOf: ReadonlyMap<PartResult, readonly FitResult[]>;
  readonly confidence: number;
}

export function openVerdicts(fits: readonly FitResult[], confidence: number): OpenVerdicts {
  const open = fits.filter(isOpen);
  const fitsOf = new Map<PartResult, FitResult[]>();
  for (const fit of open) {
    for (const part of new Set(Object.values(fit.parts)))
      fitsOf.set(part, [...(fitsOf.get(part) ?? []), fit]);
  }
  return { fits: open, fitsOf, confidence };
}

/** Undecided by the readings, not by a limit that was refused. */
function isOpen({ status, variance, limitsAreRead }: FitResult): boolean {
  return status === 'undecided' && variance > 0 && limitsAreRead;
}

export function spotsOf({ spots }: PartResult): SpotReadings[] {
  return spots.map(({ readings, value }) => ({ repeats: readings.length, value }));
}

function largestVariance(part: PartResult, repeats: number): number {
  return part.gauge ? spotVarianceWith(spotsOf(part), part.gauge.random, part.expansion ?? 0, repeats) : 0;
}

/** The best number of repeats of these parts: most verdicts decided a reading. */
export function bestRepeats(parts: readonly PartResult[], open: OpenVerdicts): RepeatPlan | undefined {
  const fits = [...new Set(parts.flatMap((part) => open.fitsOf.get(part) ?? []))];
  const owns = parts.filter(({ status, limitsAreRead }) => status === 'undecided' && limitsAreRead);
  let best: RepeatPlan | undefined;
  for (let repeats = 2; repeats <= MOST_REPEATS; repeats++) {
    const plan = repeatPlan(parts, repeats, fits, owns, open.confidence);
    if (plan.readings === 0 || plan.decided <= 0) continue;
    if (!best || plan.decided / plan.readings > best.decided / best.readings) best = plan;
  }
  return best;
}

function repeatPlan(
  parts: readonly PartResult[],
  repeats: number,
  fits: readonly FitResult[],
  owns: readonly PartResult[],
  confidence: number,
): RepeatPlan {
  const saved = new Map(
    parts.map((part) => [
      part,
      (part.measured?.spotVariance ?? 0) - (part.measured ? largestVariance(part, repeats) : 0),
    ]),
  );
  let decided = 0;
  for (const fit of fits) decided += chanceOfFit(fit, saved, confidence);
  for (const part of owns) decided += chanceOfPart(part, saved.get(part)!, confidence);
  return {
    parts,
    repeats,
    readings: parts.reduce((sum, part) => sum + readingsNeeded(spotsOf(part), repeats), 0),
    open: fits.length + owns.length,
    decided,
  };
}

/** @param saved what the new readings take from the variance of each part */
function chanceOfFit(fit: FitResult, saved: ReadonlyMap<PartResult, number>, confidence: number): number {
  const saving = Object.values(fit.parts).reduce((sum, part) => sum + (saved.get(part) ?? 0), 0);
  if (saving <= 0) return 0;
  const { clearanceMin, clearanceMax, serviceLimit } = fit.limits!;
  const guard = guardOf(confidence, Math.sqrt(Math.max(0, fit.variance - saving)));
  return chanceFitDecided(
    fit.clearance!,
    { min: clearanceMin!, max: clearanceMax!, serviceLimit },
    guard,
    Math.sqrt(saving),
  );
}

/** A part is decided once all of its open checks are: as likely as the least likely of them. */
function chanceOfPart(part: PartResult, saving: number, confidence: number): number {
  if (saving <= 0) return 0;
  const { systematic, spotVariance } = part.measured!;
  const left = Math.max(0, spotVariance - saving);
  const chances = part.checks
    .filter((check) => outcomeOf(check) === 'undecided')
    .map((check) => {
      const isForm = check.quantity === 'taper' || check.quantity === 'out of round';
      const variance = isForm ? 2 * left : systematicVariance(systematic) + left;
      const guard = guardOf(confidence, Math.sqrt(variance));
      return chanceCheckDecided(check, guard, Math.sqrt(isForm ? 2 * saving : saving));
    });
  return chances.length === 0 ? 0 : Math.min(...chances);
}

/** The chance that a fit is decided once every spot of it has been read as often as is advised at most. */
export function chanceByRepeats(fit: FitResult, confidence: number): number {
  const parts = [...new Set(Object.values(fit.parts))];
  return repeatPlan(parts, MOST_REPEATS, [fit], [], confidence).decided;
}
