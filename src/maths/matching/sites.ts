/** The journals that some allowed fit can fill, and what fills one: a rod and two shells, all by class. */
import { keyOfKind } from './part-classes.js';
import type { Problem } from './problem.js';
import type { StockJournal } from './stock.js';

/** One journal to be filled. Rods and shells are classes of the problem. */
export interface Site {
  readonly journal: StockJournal;
  readonly journalClass: number;
  readonly engine: number;
  readonly kind: string;
  /** The rods that some allowed fit of it takes; [NO_ROD] for a case bore. */
  readonly rods: readonly number[];
  /** Its case bore among those that several journals claim; −1 for none. */
  readonly sharedBore: number;
}

/** A rod and two shells, by class. */
export interface Choice {
  readonly rod: number;
  readonly upper: number;
  readonly lower: number;
}

/** The rod of a journal that sits in a case. */
export const NO_ROD = -1;

/** The sites of a problem, in the order of the stock. */
export function sitesOf({ journals, spaces, stock, sharedBores }: Problem): Site[] {
  const shared = [...sharedBores];
  const rodsOf = journals.map(() => new Set<number>());
  for (const { journal, rod = NO_ROD } of spaces) rodsOf[journal]!.add(rod);
  const lists = rodsOf.map((rods) => [...rods]);
  const sites = journals.flatMap(({ engines, journals: alike, ...kind }, journalClass) =>
    alike.map(
      (journal, at): Site => ({
        journal,
        journalClass,
        engine: engines[at]!,
        kind: keyOfKind(kind),
        rods: lists[journalClass]!,
        sharedBore: shared.indexOf(journal.caseBore?.name ?? ''),
      }),
    ),
  );
  const order = new Map(
    stock.engines.flatMap(({ journals: own }) => own).map((journal, place) => [journal, place]),
  );
  return sites
    .filter(({ rods }) => rods.length > 0)
    .sort((a, b) => order.get(a.journal)! - order.get(b.journal)!);
}

/** By site: the spaces whose rods stay on its journal, by the class of the rod. */
export function homeSpacesOf(
  { spaces }: Problem,
  sites: readonly Site[],
): readonly ReadonlyMap<number, number>[] {
  const siteOf = new Map(sites.map(({ journal }, place) => [journal, place]));
  const homes = sites.map(() => new Map<number, number>());
  for (const [place, space] of spaces.entries()) {
    for (const { journal } of space.homes ?? []) {
      const site = siteOf.get(journal);
      if (site !== undefined) homes[site]!.set(space.rod!, place);
    }
  }
  return homes;
}

/** The sites of each engine, in the order of the stock. */
export function sitesOfEngines(sites: readonly Site[]): readonly (readonly number[])[] {
  const engines = new Map<number, number[]>();
  for (const [place, { engine }] of sites.entries())
    engines.set(engine, [...(engines.get(engine) ?? []), place]);
  return [...engines.values()];
}
