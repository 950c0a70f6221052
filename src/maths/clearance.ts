/**
 * The clearance of a fit as a signed sum of its parts.
 *
 *   clearance = Σ s·size
 *   tightest  = Σ (s > 0: smallest; s < 0: −largest)
 *   loosest   = Σ (s > 0: largest; s < 0: −smallest)
 *
 * Of a journal in a bore through two half-shells, diametral:
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

/** One part of a fit, and the sign with which it enters the sum. */
export interface SignedTerm<Part> {
  readonly sign: 1 | -1;
  readonly part: Part;
}

/** The four parts of a shell bearing, each half-shell its own. */
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

/** The clearance that signed parts make: of the means, and of the extremes. */
export function fitOf(terms: readonly SignedTerm<Sizes>[]): Clearance {
  let [clearance, tightest, loosest] = [0, 0, 0];
  for (const { sign, part } of terms) {
    clearance += sign * part.size;
    tightest += sign > 0 ? part.smallest : -part.largest;
    loosest += sign > 0 ? part.largest : -part.smallest;
  }
  return { clearance, tightest, loosest };
}

/** The parts of a shell bearing with their signs. */
export function bearingTerms<Part>({ bore, upper, lower, journal }: FitParts<Part>): SignedTerm<Part>[] {
  return [
    { sign: 1, part: bore },
    { sign: -1, part: upper },
    { sign: -1, part: lower },
    { sign: -1, part: journal },
  ];
}

export function clearanceOf(parts: FitParts<Sizes>): Clearance {
  return fitOf(bearingTerms(parts));
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
