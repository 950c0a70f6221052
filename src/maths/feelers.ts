/**
 * A gap tried with feelers: it lies somewhere from the thickest blade that goes in to the thinnest that does not.
 *
 *   gap        (Goes + Stops) / 2
 *   tight      Stops + G < min
 *   loose      Goes − G > service limit, or > max where there is none
 *   worn       Goes − G > max and Stops + g ≤ service limit
 *
 * Of readings the extremes are judged on their own sides: the tightest is too tight. Of feelers the whole of what is left
 * of the gap has to lie beyond a limit to break it, so the blades change sides. To keep both limits, it has to lie inside
 * them as the extremes of readings have to.
 *
 * Source: ISO 14253-1:2017 (guards on both sides of a limit); feelers as an interval: common practice, no published source.
 */
import type { Clearance } from './clearance.js';
import { type FitLimits, openEnded, type ProvenFitVerdict } from './conformity.js';
import { type Grain, roundToWhole } from './grain.js';
import type { Guards } from './guards.js';

/** The blades that were tried; a blank one leaves its side of the gap open. */
export interface Feelers {
  /** The thickest that goes in. */
  readonly goes: Grain | undefined;
  /** The thinnest that does not. */
  readonly stops: Grain | undefined;
}

/** The gap between two blades; undefined where one was not tried. */
export function gapOfFeelers({ goes, stops }: Feelers): Clearance | undefined {
  if (goes === undefined || stops === undefined) return undefined;
  return { clearance: roundToWhole((goes + stops) / 2), tightest: goes, loosest: stops };
}

/** What the blades prove about a gap. */
export function feelerVerdict(
  { goes, stops }: Feelers,
  limits: FitLimits,
  { inside, outside }: Guards,
): ProvenFitVerdict {
  const { min, max } = openEnded(limits);
  const { serviceLimit } = limits;
  const least = goes ?? Number.NEGATIVE_INFINITY;
  const greatest = stops ?? Number.POSITIVE_INFINITY;
  if (greatest + outside < min) return 'tight';
  if (least - outside > (serviceLimit ?? max)) return 'loose';
  if (least - inside >= min && greatest + inside <= max) return 'in range';
  const isWorn = serviceLimit !== undefined && least - outside > max && greatest + inside <= serviceLimit;
  return isWorn ? 'within service limit' : 'undecided';
}
