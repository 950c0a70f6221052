/** Which parts the sets of a single engine move away from where they are. */
import { nameKey } from '../book/names.js';
import type { FitResult } from './fit.js';
import { type MatchedSet, nounInSet } from './matched-sets.js';
import type { PartResult } from './part-result.js';
import { partsOf } from './placed-fit.js';

export interface MovedPart {
  readonly part: PartResult;
  /** What it is in its set: `upper shell`. */
  readonly kind: string;
  readonly set: MatchedSet;
}

/**
 * The parts of the sets that no fit has at their place now, in the order of the sets. The leader of a set, and a bore
 * that is one with the place, are where they are.
 */
export function movedParts(sets: readonly MatchedSet[], fits: readonly FitResult[]): MovedPart[] {
  const placeOf = (at: { engine: string; fit: string; position: string }) =>
    [at.engine, at.fit, at.position].map(nameKey).join('\u0000');
  const there = new Map<string, PartResult[]>();
  for (const fit of fits) there.set(placeOf(fit), [...(there.get(placeOf(fit)) ?? []), ...partsOf(fit)]);
  return sets.flatMap((set) => {
    const own = [...(there.get(placeOf(set)) ?? [])];
    return set.kind.terms.flatMap((term): MovedPart[] => {
      const part = set.parts[term.slot];
      if (!part) return [];
      const at = own.indexOf(part);
      if (at >= 0) {
        own.splice(at, 1);
        return [];
      }
      return [{ part, kind: nounInSet(term, part), set }];
    });
  });
}
