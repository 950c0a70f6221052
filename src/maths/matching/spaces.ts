/** Spaces: bore less journal, before any shells. */
import type { Grain } from '../grain.js';
import type { MeasuredPart } from '../uncertainty.js';
import { BIG_END, type JournalClass, keyOfKind, type RodClass } from './part-classes.js';
import {
  type MeasuredAlike,
  measuredAlike,
  type ProvableLimits,
  type SizeTerms,
  sizeTerms,
} from './verdicts.js';

export interface Space {
  readonly journal: number;
  /** Class of the rod; undefined for a case bore. */
  readonly rod: number | undefined;
  readonly kind: string;
  /** The bore was measured with its shells in: it takes a pair that is brought, and no other. */
  readonly isBrought: boolean;
  readonly limits: ProvableLimits;
  /** Bore less journal: of the sizes, at the tightest and at the loosest. */
  readonly size: Grain;
  readonly tightest: Grain;
  readonly loosest: Grain;
  /** How bore and journal were measured. */
  readonly alike: MeasuredAlike;
  readonly terms: SizeTerms;
}

/**
 * The spaces of every journal class with each bore that it may take.
 * @param limits by the key of the kind, of the kinds that have them
 */
export function spacesOf(
  journals: readonly JournalClass[],
  rods: readonly RodClass[],
  limits: ReadonlyMap<string, ProvableLimits>,
): Space[] {
  const spaces: Space[] = [];
  for (const [journal, { part, caseBore, hasShells, ...kind }] of journals.entries()) {
    const key = keyOfKind(kind);
    const kindLimits = limits.get(key);
    if (!kindLimits) continue;
    const space = (bore: MeasuredPart, rod: number | undefined, isBrought: boolean): Space => ({
      journal,
      rod,
      kind: key,
      isBrought,
      limits: kindLimits,
      size: bore.size - part.size,
      tightest: bore.smallest - part.largest,
      loosest: bore.largest - part.smallest,
      alike: measuredAlike(bore, part),
      terms: sizeTerms([
        { sign: 1, part: bore },
        { sign: -1, part },
      ]),
    });
    if (caseBore) spaces.push(space(caseBore, undefined, hasShells));
    else if (kind.fit === BIG_END) {
      for (const [rod, { engineType, part: bore, hasShells: isBrought }] of rods.entries()) {
        if (engineType === kind.engineType) spaces.push(space(bore, rod, isBrought));
      }
    }
  }
  return spaces;
}
