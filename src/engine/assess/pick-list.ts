/** The parts of the sets in the order in which they are picked: by their bins. */
import { type MatchedSet, nounInSet } from './matched-sets.js';
import type { PartResult } from './part-result.js';

export interface PickedPart {
  readonly part: PartResult;
  /** What it is in its set: `upper shell`. */
  readonly kind: string;
  readonly set: MatchedSet;
}

export function pickList(sets: readonly MatchedSet[]): PickedPart[] {
  const picked = sets.flatMap((set) =>
    set.kind.terms.flatMap((term): PickedPart[] => {
      const part = set.parts[term.slot];
      return part ? [{ part, kind: nounInSet(term, part), set }] : [];
    }),
  );
  const inOrder = (a: string, b: string) => a.localeCompare(b, 'en', { numeric: true });
  return picked.sort(
    (a, b) =>
      inOrder(a.part.row.bin ?? '', b.part.row.bin ?? '') ||
      inOrder(a.kind, b.kind) ||
      inOrder(a.part.row.name, b.part.row.name),
  );
}
