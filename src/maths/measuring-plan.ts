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
 * guards of u'. All in grains and grains².
 */
import type { FitLimits, LimitCheck } from './conformity.js';
import { excess, openEnded } from './conformity.js';
import { GRAINS_PER_MM, type Grain } from './grain.js';
import type { Guards } from './guards.js';
import { normalProbability } from './normal.js';
import { type GaugeRandom, readVariance } from './uncertainty.js';

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
 * @param guards of the fit after the new readings
 * @param deviation standard deviation of the shift
 */
export function chanceFitDecided(
  { tightest, loosest }: { readonly tightest: Grain; readonly loosest: Grain },
  limits: FitLimits,
  { inside, outside }: Guards,
  deviation: number,
): number {
  const { serviceLimit } = limits;
  const { min, max } = openEnded(limits);
  const within = (from: number, to: number) => shiftWithin(from, to, deviation);
  const tight = within(Number.NEGATIVE_INFINITY, min - outside - tightest);
  const loose = within((serviceLimit ?? max) + outside - loosest, Number.POSITIVE_INFINITY);
  const inRange = within(min + inside - tightest, max - inside - loosest);
  const worn =
    serviceLimit === undefined
      ? 0
      : within(Math.max(min + inside - tightest, max + outside - loosest), serviceLimit - inside - loosest);
  return Math.min(1, tight + loose + inRange + worn);
}

/** The probability that one check of a part passes or fails once its value has moved by a normal shift. */
export function chanceCheckDecided(
  check: LimitCheck,
  { inside, outside }: Guards,
  deviation: number,
): number {
  const beyond = excess(check);
  if (beyond === undefined) return 0;
  return (
    shiftWithin(Number.NEGATIVE_INFINITY, -inside - beyond, deviation) +
    shiftWithin(outside - beyond, Number.POSITIVE_INFINITY, deviation)
  );
}

/** u_i² of a part, each spot read at least so often. */
export function readVarianceWith(
  repeats: readonly number[],
  gauge: GaugeRandom,
  leastRepeats: number,
): number {
  return readVariance(gauge, Math.max(leastRepeats, Math.min(...repeats)));
}

/** How many readings that takes. */
export function readingsNeeded(repeats: readonly number[], leastRepeats: number): number {
  return repeats.reduce((sum, own) => sum + Math.max(0, leastRepeats - own), 0);
}

/** No workshop's gauge errs by less. Common practice, no published source. */
export const FINEST_GAUGE: Grain = 0.0005 * GRAINS_PER_MM;

/**
 * The greatest max error with which something would be decided, by halving.
 * @param maxError with which it is not
 * @param isDecided with a max error; a smaller one decides no less
 * @returns undefined where no workshop's gauge is fine enough
 */
export function maxErrorFor(maxError: Grain, isDecided: (maxError: Grain) => boolean): Grain | undefined {
  if (maxError <= FINEST_GAUGE || !isDecided(FINEST_GAUGE)) return undefined;
  let [fine, coarse] = [FINEST_GAUGE, maxError];
  while (coarse - fine > 1) {
    const middle = Math.floor((fine + coarse) / 2);
    if (isDecided(middle)) fine = middle;
    else coarse = middle;
  }
  return fine;
}
