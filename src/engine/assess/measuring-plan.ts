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
import { type FitVariance, totalVariance, varianceOf } from '../../maths/uncertainty.js';
import { type FitResult, measuredTerms } from './fit.js';
import { guardsOfFit, rangeOfLimits } from './fit-verdicts.js';
import { partGuards } from './part-checks.js';
import type { PartResult } from './part-result.js';
import { termPartsOf } from './placed-fit.js';

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
  /** The chance that they decide the verdict of the part itself; undefined where that is not open. */
  readonly chance: readonly number[] | undefined;
}

/** Open verdicts by the parts that they rest on. */
export interface OpenVerdicts {
  readonly fits: readonly FitResult[];
  readonly fitsOf: ReadonlyMap<PartResult, readonly FitResult[]>;
  readonly confidence: number;
  /** Filled as parts are asked for. */
  readonly repeats: Map<PartResult, Repeats>;
  /** Filled as fits are asked for: their uncertainty as they were read. */
  readonly variances: Map<FitResult, FitVariance>;
}

export function openVerdicts(fits: readonly FitResult[], confidence: number): OpenVerdicts {
  const open = fits.filter(isOpen);
  const fitsOf = new Map<PartResult, FitResult[]>();
  for (const fit of open) {
    for (const part of new Set(termPartsOf(fit))) {
      const own = fitsOf.get(part);
      if (own) own.push(fit);
      else fitsOf.set(part, [fit]);
    }
  }
  return { fits: open, fitsOf, confidence, repeats: new Map(), variances: new Map() };
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
  const found = { variance, readings, chance: chancesOfPart(part, variance, open.confidence) };
  open.repeats.set(part, found);
  return found;
}

/** The best number of repeats of these parts: most verdicts decided a reading. */
export function bestRepeats(parts: readonly PartResult[], open: OpenVerdicts): RepeatPlan | undefined {
  const fits = [...new Set(parts.flatMap((part) => open.fitsOf.get(part) ?? []))];
  const all = parts.map((part) => repeatsOf(part, open));
  const owns = all.flatMap(({ chance }) => (chance ? [chance] : []));
  let best: RepeatPlan | undefined;
  for (let repeats = 2; repeats <= MOST_REPEATS; repeats++) {
    let [readings, decided] = [0, 0];
    for (const own of all) readings += own.readings[repeats]!;
    if (readings === 0) continue;
    for (const fit of fits) decided += chanceOfFit(fit, parts, repeats, open);
    for (const chances of owns) decided += chances[repeats]!;
    if (decided > 0 && (!best || decided / readings > best.decided / best.readings))
      best = { parts, repeats, readings, open: fits.length + owns.length, decided };
  }
  return best;
}

/** The uncertainty of a fit as more readings of these parts would leave it: what its parts share stays. */
function varianceWith(
  fit: FitResult,
  parts: readonly PartResult[],
  repeats: number,
  open: OpenVerdicts,
): FitVariance {
  const known = open.variances.get(fit) ?? varianceOf(measuredTerms(fit)!);
  open.variances.set(fit, known);
  return {
    common: known.common,
    scatters: known.scatters.map((scatter, at) => {
      const part = fit.parts[fit.kind.terms[at]!.slot]!;
      if (!parts.includes(part)) return scatter;
      return { variance: repeatsOf(part, open).variance[repeats]!, spots: scatter.spots };
    }),
  };
}

function chanceOfFit(
  fit: FitResult,
  parts: readonly PartResult[],
  repeats: number,
  open: OpenVerdicts,
): number {
  const variance = varianceWith(fit, parts, repeats, open);
  const saving = fit.variance - totalVariance(variance);
  if (saving <= 0) return 0;
  return chanceFitDecided(
    fit.clearance!,
    rangeOfLimits(fit.limits!),
    guardsOfFit(fit, variance, open.confidence),
    Math.sqrt(saving),
  );
}

/**
 * A part is decided once all of its open checks are: as likely as the least likely of them.
 * @param variances u_i² by the readings that each spot has then
 */
function chancesOfPart(
  part: PartResult,
  variances: readonly number[],
  confidence: number,
): number[] | undefined {
  const { status, limitsAreRead, isUncorrected, spots, measured } = part;
  if (status !== 'undecided' || !limitsAreRead || isUncorrected) return undefined;
  const checks = part.checks.filter((check) => outcomeOf(check) === 'undecided');
  return variances.map((readVariance) => {
    const saving = measured!.readVariance - readVariance;
    if (saving <= 0 || checks.length === 0) return 0;
    const guards = partGuards({ ...measured!, readVariance }, spots, confidence);
    const chances = checks.map((check) => {
      const isForm = check.quantity === 'taper' || check.quantity === 'out of round';
      const own = guards[check.quantity as keyof typeof guards];
      return chanceCheckDecided(check, own, Math.sqrt(isForm ? 2 * saving : saving));
    });
    return Math.min(...chances);
  });
}

/** The chance that a fit is decided once every spot of it has been read as often as is advised at most. */
export function chanceByRepeats(fit: FitResult, open: OpenVerdicts): number {
  return chanceOfFit(fit, termPartsOf(fit), MOST_REPEATS, open);
}
