/** Fits of parts that ran together on the same journal, by class. */
import type { Problem } from './problem.js';
import { type Choice, NO_ROD, type Site } from './sites.js';

/** A fit of parts that ran together: its journal, its index among the kept fits, and its parts by class. */
export interface Reunion extends Choice {
  readonly site: number;
  readonly kept: number;
}

/** The kept fits of a problem at the sites that can be filled. */
export function reunionsOf({ kept, rods, shells }: Problem, sites: readonly Site[]): Reunion[] {
  const siteOf = new Map(sites.map(({ journal }, place) => [journal, place]));
  const rodOf = new Map(rods.flatMap((each, place) => each.rods.map((rod) => [rod, place] as const)));
  const shellOf = new Map(
    shells.flatMap((each, place) => each.shells.map((shell) => [shell, place] as const)),
  );
  return kept.flatMap(({ journal, rod, upper, lower }, place): Reunion[] => {
    const site = siteOf.get(journal);
    if (site === undefined) return [];
    const choice = {
      rod: rod === undefined ? NO_ROD : rodOf.get(rod)!,
      upper: shellOf.get(upper)!,
      lower: shellOf.get(lower)!,
    };
    return [{ site, kept: place, ...choice }];
  });
}
