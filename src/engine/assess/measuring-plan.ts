/**
 * Which readings would decide the verdicts that are open: more repeats of one part, of all parts of a fit, or
 * a better gauge where repeats would not.
 */
import { outcomeOf } from '../../maths/conformity.js';
import { type Grain, roundToWhole } from '../../maths/grain.js';
import {
  chanceCheckDecided,
  chanceFitDecided,
  MOST_REPEATS,
  readingsNeeded,
  type SpotReadings,
  spotVarianceWith,
} from '../../maths/measuring-plan.js';
import { normalQuantile } from '../../maths/normal.js';
import { systematicVariance } from '../../maths/uncertainty.js';
import type { FitResult } from './fit.js';
import type { PartResult } from './part-result.js';
import { partsOf } from './places.js';

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

/** What more readings of one part bring, by the readings that each of its spots has then. */
interface Repeats {
  /** Taken from the largest u_r² of the part, grains². */
  readonly saved: readonly number[];
  /** New readings. */
  readonly readings: readonly number[];
}

/** Open verdicts by the parts that they rest on. */
export interface OpenVerdicts {
  readonly fits: readonly FitResult[];
  readonly fitsOf: ReadonlyMap<PartResult, readonly FitResult[]>;
  /** The quantile z of the confidence: a guard is z·u. */
  readonly z: number;
  /** Filled as parts are asked for. */
  readonly repeats: Map<PartResult, Repeats>;
}

export function openVerdicts(fits: readonly FitResult[], confidence: number): OpenVerdicts {
  const open = fits.filter(isOpen);
  const fitsOf = new Map<PartResult, FitResult[]>();
  for (const fit of open) {
    for (const part of new Set(partsOf(fit))) {
      const own = fitsOf.get(part);
      if (own) own.push(fit);
      else fitsOf.set(part, [fit]);
    }
  }
  return { fits: open, fitsOf, z: normalQuantile(confidence), repeats: new Map() };
}

/** Undecided by the readings, not by a limit that was refused. */
function isOpen({ status, variance, limitsAreRead }: FitResult): boolean {
  return status === 'undecided' && variance > 0 && limitsAreRead;
}

export function spotsOf({ spots }: PartResult): SpotReadings[] {
  return spots.map(({ readings, value }) => ({ repeats: readings.length, value }));
}

function repeatsOf(part: PartResult, open: OpenVerdicts): Repeats {
  const known = open.repeats.get(part);
  if (known) return known;
  const { gauge, measured, expansion } = part;
  const spots = spotsOf(part);
  const saved: number[] = [];
  const readings: number[] = [];
  for (let repeats = 0; repeats <= MOST_REPEATS; repeats++) {
    readings.push(readingsNeeded(spots, repeats));
    const left = gauge ? spotVarianceWith(spots, gauge.random, expansion ?? 0, repeats) : 0;
    saved.push(gauge && measured ? measured.spotVariance - left : 0);
  }
  const found = { saved, readings };
  open.repeats.set(part, found);
  return found;
}

/** The best number of repeats of these parts: most verdicts decided a reading. */
export function bestRepeats(parts: readonly PartResult[], open: OpenVerdicts): RepeatPlan | undefined {
  const fits = [...new Set(parts.flatMap((part) => open.fitsOf.get(part) ?? []))];
  const owns = parts.filter(({ status, limitsAreRead }) => status === 'undecided' && limitsAreRead);
  let best: RepeatPlan | undefined;
  for (let repeats = 2; repeats <= MOST_REPEATS; repeats++) {
    let [readings, decided] = [0, 0];
    for (const part of parts) readings += repeatsOf(part, open).readings[repeats]!;
    if (readings === 0) continue;
    for (const fit of fits) decided += chanceOfFit(fit, parts, repeats, open);
    for (const part of owns) decided += chanceOfPart(part, repeats, open);
    if (decided > 0 && (!best || decided / readings > best.decided / best.readings))
      best = { parts, repeats, readings, open: fits.length + owns.length, decided };
  }
  return best;
}

function guardOf(variance: number, { z }: OpenVerdicts): Grain {
  return roundToWhole(z * Math.sqrt(Math.max(0, variance)));
}

function chanceOfFit(
  fit: FitResult,
  parts: readonly PartResult[],
  repeats: number,
  open: OpenVerdicts,
): number {
  let saving = 0;
  for (const part of partsOf(fit)) if (parts.includes(part)) saving += repeatsOf(part, open).saved[repeats]!;
  if (saving <= 0) return 0;
  const { clearanceMin, clearanceMax, serviceLimit } = fit.limits!;
  return chanceFitDecided(
    fit.clearance!,
    { min: clearanceMin!, max: clearanceMax!, serviceLimit },
    guardOf(fit.variance - saving, open),
    Math.sqrt(saving),
  );
}

/** A part is decided once all of its open checks are: as likely as the least likely of them. */
function chanceOfPart(part: PartResult, repeats: number, open: OpenVerdicts): number {
  const saving = repeatsOf(part, open).saved[repeats]!;
  if (saving <= 0) return 0;
  const { systematic, spotVariance } = part.measured!;
  const left = Math.max(0, spotVariance - saving);
  const chances = part.checks
    .filter((check) => outcomeOf(check) === 'undecided')
    .map((check) => {
      const isForm = check.quantity === 'taper' || check.quantity === 'out of round';
      const guard = guardOf(isForm ? 2 * left : systematicVariance(systematic) + left, open);
      return chanceCheckDecided(check, guard, Math.sqrt(isForm ? 2 * saving : saving));
    });
  return chances.length === 0 ? 0 : Math.min(...chances);
}

/** The chance that a fit is decided once every spot of it has been read as often as is advised at most. */
export function chanceByRepeats(fit: FitResult, open: OpenVerdicts): number {
  return chanceOfFit(fit, partsOf(fit), MOST_REPEATS, open);
}
