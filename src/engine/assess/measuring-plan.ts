/**
 * Which readings would decide the verdicts that are open: more repeats of one part, of all parts of a fit, or
 * a better gauge where repeats would not.
 */
import { outcomeOf } from '../../maths/conformity.js';
import {
  chanceCheckDecided,
  chanceFitDecided,
  MOST_REPEATS,
  readingsNeeded,
  readVarianceWith,
} from '../../maths/measuring-plan.js';
import { type MeasuredPart, totalVariance, varianceOf } from '../../maths/uncertainty.js';
import type { FitResult } from './fit.js';
import { guardsOfFit, rangeOfLimits } from './fit-verdicts.js';
import { partGuards } from './part-checks.js';
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
  /** u_i² of the part, grains². */
  readonly variance: readonly number[];
  /** New readings. */
  readonly readings: readonly number[];
}

/** Open verdicts by the parts that they rest on. */
export interface OpenVerdicts {
  readonly fits: readonly FitResult[];
  readonly fitsOf: ReadonlyMap<PartResult, readonly FitResult[]>;
  readonly confidence: number;
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
  return { fits: open, fitsOf, confidence, repeats: new Map() };
}

/** Undecided by the readings, not by a limit that was refused. */
function isOpen(fit: FitResult): boolean {
  const { status, clearance, variance, limitsAreRead, isStrip, isUncorrected } = fit;
  const isByReadings = clearance !== undefined && !isStrip && !isUncorrected;
  // Between two blades a limit may lie however exactly they are known.
  const canBeRead = variance > 0 || fit.feelers !== undefined;
  return status === 'undecided' && canBeRead && limitsAreRead && isByReadings;
}

export function repeatsOfSpots({ spots }: PartResult): number[] {
  return spots.map(({ readings }) => readings.length);
}

function repeatsOf(part: PartResult, open: OpenVerdicts): Repeats {
  const known = open.repeats.get(part);
  if (known) return known;
  const { gauge, measured, dialShape } = part;
  // Both readings of a difference are repeated.
  const share = dialShape ? 2 : 1;
  const spots = repeatsOfSpots(part);
  const variance: number[] = [];
  const readings: number[] = [];
  for (let repeats = 0; repeats <= MOST_REPEATS; repeats++) {
    readings.push(readingsNeeded(spots, repeats));
    variance.push(
      gauge && measured && spots.length > 0 ? share * readVarianceWith(spots, gauge.random, repeats) : 0,
    );
  }
  const found = { variance, readings };
  open.repeats.set(part, found);
  return found;
}

/** The best number of repeats of these parts: most verdicts decided a reading. */
export function bestRepeats(parts: readonly PartResult[], open: OpenVerdicts): RepeatPlan | undefined {
  const fits = [...new Set(parts.flatMap((part) => open.fitsOf.get(part) ?? []))];
  const owns = parts.filter(
    ({ status, limitsAreRead, isUncorrected }) => status === 'undecided' && limitsAreRead && !isUncorrected,
  );
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

/** The part as more readings would leave it. */
function withRepeats(part: PartResult, repeats: number, open: OpenVerdicts): MeasuredPart {
  return { ...part.measured!, readVariance: repeatsOf(part, open).variance[repeats]! };
}

function chanceOfFit(
  fit: FitResult,
  parts: readonly PartResult[],
  repeats: number,
  open: OpenVerdicts,
): number {
  const terms = fit.kind.terms.map(({ slot, sign }) => {
    const part = fit.parts[slot]!;
    return { sign, part: parts.includes(part) ? withRepeats(part, repeats, open) : part.measured! };
  });
  const variance = varianceOf(terms);
  const saving = fit.variance - totalVariance(variance);
  if (saving <= 0) return 0;
  return chanceFitDecided(
    fit.clearance!,
    rangeOfLimits(fit.limits!),
    guardsOfFit(fit, variance, open.confidence),
    Math.sqrt(saving),
  );
}

/** A part is decided once all of its open checks are: as likely as the least likely of them. */
function chanceOfPart(part: PartResult, repeats: number, open: OpenVerdicts): number {
  const after = withRepeats(part, repeats, open);
  const saving = part.measured!.readVariance - after.readVariance;
  if (saving <= 0) return 0;
  const guards = partGuards(after, part.spots, open.confidence);
  const chances = part.checks
    .filter((check) => outcomeOf(check) === 'undecided')
    .map((check) => {
      const isForm = check.quantity === 'taper' || check.quantity === 'out of round';
      const own = guards[check.quantity as keyof typeof guards];
      return chanceCheckDecided(check, own, Math.sqrt(isForm ? 2 * saving : saving));
    });
  return chances.length === 0 ? 0 : Math.min(...chances);
}

/** The chance that a fit is decided once every spot of it has been read as often as is advised at most. */
export function chanceByRepeats(fit: FitResult, open: OpenVerdicts): number {
  return chanceOfFit(fit, partsOf(fit), MOST_REPEATS, open);
}
