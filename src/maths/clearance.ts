/**
 * Diametral oil clearance of a journal in a bore through two half-shells.
 *
 *   clearance = B − u − l − J
 *
 *   B   housing bore without shells, caps torqued
 *   u   wall of the upper half-shell at its crown
 *   l   wall of the lower half-shell at its crown
 *   J   journal
 *
 * Source: the arithmetic of printed bearing tables; e.g. TM 9-2815-202-34 with its companions, where
 * bore, wall and journal limits give the printed clearance range in both worst cases.
 */
import type { Grain } from './grain.js';

/** The three sizes of a part that a fit uses. */
export interface Sizes {
  readonly size: Grain;
  readonly largest: Grain;
  readonly smallest: Grain;
}

/** The four parts of a fit, each half-shell its own. */
export interface FitParts<Part> {
  readonly bore: Part;
  readonly upper: Part;
  readonly lower: Part;
  readonly journal: Part;
}

export interface Clearance {
  readonly clearance: Grain;
  readonly tightest: Grain;
  readonly loosest: Grain;
}

export function clearanceOf({ bore, upper, lower, journal }: FitParts<Sizes>): Clearance {
  return {
    clearance: bore.size - upper.size - lower.size - journal.size,
    tightest: bore.smallest - upper.largest - lower.largest - journal.largest,
    loosest: bore.largest - upper.smallest - lower.smallest - journal.smallest,
  };
}

/** The largest difference of clearance between neighbours in a row; undefined with fewer than two. */
export function neighbourSpread(clearances: readonly (Grain | undefined)[]): Grain | undefined {
  let spread: Grain | undefined;
  for (let place = 1; place < clearances.length; place++) {
    const [before, after] = [clearances[place - 1], clearances[place]];
    if (before === undefined || after === undefined) continue;
    spread = Math.max(spread ?? 0, Math.abs(after - before));
  }
  return spread;
}
