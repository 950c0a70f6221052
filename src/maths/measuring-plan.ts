/**
 * What a further reading is worth: the probability that it decides a verdict that is open.
 *
 * A size measured again moves and its guard shrinks. With no knowledge but the reading (JCGM 106:2012,
 * 7.2: a normal distribution about the measured value), the value x that stands after more repeats is
 * distributed about the value of now with the variance that the repeats take away,
 *
 *   s² = u² − u'²
 *
 * since the truth is known to u now and to u' then. The verdict then is that of ISO 14253-1 with the
 * guard z·u'. All in grains (0.01 µm) and grains².
 */
import type { FitLimits, LimitCheck } from './conformity.js';
import { excess } from './conformity.js';
import type { Grain } from './grain.js';
import { normalProbability } from './normal.js';
import { type GaugeRandom, spotVariance } from './uncertainty.js';

/** Readings of one spot beyond which repeats are not advised. Common practice, no published source. */
export const MOST_REPEATS = 10;

/** The probability that a normal shift about 0 lies from `from` to `to`; nothing where `to` is less. */
function shiftWithin(from: number, to: number, deviation: number): number {
  if (to < from) return 0;
  if (deviation === 0) return from <= 0 && to >= 0 ? 1 : 0;
  const below = to === Number.POSITIVE_INFINITY ? 1 : normalProbability(to / deviation);
  return from === Number.NEGATIVE_INFINITY ? below : below - normalProbability(from / deviation);
}

/**
 * The probability that a fit is decided once its extremes have moved together by a normal shift.
 * @param guard of the fit after the new readings
 * @param deviation standard deviation of the shift
 */
export function chanceFitDecided(
  { tightest, loosest }: { readonly tightest: Grain; readonly loosest: Grain },
  { min, max, serviceLimit }: FitLimits,
  guard: number,
  deviation: number,
): number {
  const within = (from: number, to: number) => shiftWithin(from, to, deviation);
  const tight = within(Number.NEGATIVE_INFINITY, min - guard - tightest);
  const loose = within((serviceLimit ?? max) + guard - loosest, Number.POSITIVE_INFINITY);
  const inRange = within(min + guard - tightest, max - guard - loosest);
  const worn =
    serviceLimit === undefined
      ? 0
      : within(Math.max(min + guard - tightest, max + guard - loosest), serviceLimit - guard - loosest);
  return Math.min(1, tight + loose + inRange + worn);
}

/** The probability that one check of a part passes or fails once its value has moved by a normal shift. */
export function chanceCheckDecided(check: LimitCheck, guard: number, deviation: number): number {
  const beyond = excess(check);
  if (beyond === undefined) return 0;
  return (
    shiftWithin(Number.NEGATIVE_INFINITY, -guard - beyond, deviation) +
    shiftWithin(guard - beyond, Number.POSITIVE_INFINITY, deviation)
  );
}

/** One spot as it was read. */
export interface SpotReadings {
  readonly repeats: number;
  readonly value: Grain;
}

/** The largest u_r² of a part, each spot read at least so often. */
export function spotVarianceWith(
  spots: readonly SpotReadings[],
  gauge: GaugeRandom,
  expansion: number,
  leastRepeats: number,
): number {
  let largest = 0;
  for (const { repeats, value } of spots)
    largest = Math.max(largest, spotVariance(gauge, Math.max(repeats, leastRepeats), expansion, value));
  return largest;
}

/** How many readings that takes. */
export function readingsNeeded(spots: readonly SpotReadings[], leastRepeats: number): number {
  return spots.reduce((sum, { repeats }) => sum + Math.max(0, leastRepeats - repeats), 0);
}

/**
 * The greatest max error of one gauge with which a variance would not be above another.
 * @param variance of the whole, this gauge included
 * @param sensitivity how often the gauge's error counts, with its sign
 * @returns undefined where no gauge is fine enough, the rest being too much
 */
export function maxErrorFor(
  wanted: number,
  variance: number,
  maxError: Grain,
  sensitivity: number,
): number | undefined {
  const rest = variance - (sensitivity * maxError) ** 2 / 3;
  if (sensitivity === 0 || rest > wanted) return undefined;
  return Math.sqrt(3 * (wanted - rest)) / Math.abs(sensitivity);
}

/** The greatest guard with which a fit would be decided as it was read; below 0 where none would. */
export function guardThatDecides(
  { tightest, loosest }: { readonly tightest: Grain; readonly loosest: Grain },
  { min, max, serviceLimit }: FitLimits,
): Grain {
  const roof = serviceLimit ?? max;
  const worn =
    serviceLimit === undefined
      ? Number.NEGATIVE_INFINITY
      : Math.min(tightest - min, loosest - max - 1, serviceLimit - loosest);
  // Outside a limit, the guard must be less than the excess: a whole grain less.
  return Math.max(Math.min(tightest - min, max - loosest), min - tightest - 1, loosest - roof - 1, worn);
}
