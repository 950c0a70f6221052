/** Spaces: bore less journal, before any shells. */
import type { Grain } from '../grain.js';
import type { MeasuredPart } from '../uncertainty.js';
import type { Home } from './homes.js';
import { BIG_END, type JournalClass, keyOfKind, type RodClass } from './part-classes.js';
import { type SizeTerms, sizeTerms } from './size-terms.js';
import { type MeasuredAlike, measuredAlike, type ProvableLimits } from './verdicts.js';

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
  /** Whether every fit of it is undecided. */
  readonly isUncorrected: boolean;
  readonly alike: MeasuredAlike;
  readonly terms: SizeTerms;
  /**
   * Where the rods of its fits stay: the journals of its class with the rods of its class that ran on them; a fit is of
   * one of these. Undefined where any journal and rod of the classes will do.
   */
  readonly homes: readonly Home[] | undefined;
  /** Whether another space allows the same fits, and counts no rod that stays. */
  readonly isTwin: boolean;
}

/** The homes by the classes of their journals and rods; those that are told apart each in a list of its own. */
function homesByClasses(
  journals: readonly JournalClass[],
  rods: readonly RodClass[],
  homes: readonly Home[],
  isApart: (home: Home) => boolean,
): ReadonlyMap<string, readonly Home[][]> {
  const journalOf = new Map(journals.flatMap((each, place) => each.journals.map((own) => [own, place])));
  const rodOf = new Map(rods.flatMap((each, place) => each.rods.map((own) => [own, place])));
  const lists = new Map<string, Home[][]>();
  for (const home of homes) {
    const [journal, rod] = [journalOf.get(home.journal), rodOf.get(home.rod)];
    if (journal === undefined || rod === undefined) continue;
    const key = `${journal},${rod}`;
    const known = lists.get(key) ?? [];
    lists.set(key, known);
    const open = isApart(home) ? undefined : known.find(([first]) => !isApart(first!));
    if (open) open.push(home);
    else known.push([home]);
  }
  return lists;
}

/**
 * The spaces of every journal class with each bore that it may take.
 * @param limits by the key of the kind, of the kinds that have them
 * @param isApart whether a home has a space of its own
 */
export function spacesOf(
  journals: readonly JournalClass[],
  rods: readonly RodClass[],
  limits: ReadonlyMap<string, ProvableLimits>,
  homes: readonly Home[],
  isApart: (home: Home) => boolean,
): Space[] {
  const homesAt = homesByClasses(journals, rods, homes, isApart);
  const spaces: Space[] = [];
  for (const [journal, { part, caseBore, journals: alike, ...own }] of journals.entries()) {
    const { isUncorrected, hasShells, engineType: typeOfJournal, fit } = own;
    const kind = { engineType: typeOfJournal, fit };
    const key = keyOfKind(kind);
    const kindLimits = limits.get(key);
    if (!kindLimits) continue;
    const space = (
      bore: MeasuredPart,
      rod: number | undefined,
      isBrought: boolean,
      homesHere?: readonly Home[],
      isTwin = false,
    ): Space => ({
      journal,
      rod,
      kind: key,
      isBrought,
      limits: kindLimits,
      size: bore.size - part.size,
      tightest: bore.smallest - part.largest,
      loosest: bore.largest - part.smallest,
      isUncorrected,
      alike: measuredAlike(bore, part),
      terms: sizeTerms([
        { sign: 1, part: bore },
        { sign: -1, part },
      ]),
      homes: homesHere,
      isTwin,
    });
    if (caseBore) spaces.push(space(caseBore, undefined, hasShells));
    else if (kind.fit === BIG_END) {
      for (const [rod, { engineType, part: bore, servesAt, hasShells: isIn, rods: same }] of rods.entries()) {
        if (engineType !== kind.engineType) continue;
        const lists = homesAt.get(`${journal},${rod}`) ?? [];
        // Of one journal and one rod that ran on it there is no other fit.
        const isOnlyHome = lists.length > 0 && alike.length === 1 && same.length === 1;
        const isOpen = !isOnlyHome && servesAt === undefined;
        if (isOpen) spaces.push(space(bore, rod, isIn));
        for (const list of lists) spaces.push(space(bore, rod, isIn, list, isOpen));
      }
    }
  }
  return spaces;
}
