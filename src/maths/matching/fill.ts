/** Parts for one empty journal out of what is free. */
import { type Choice, NO_ROD } from './fit-table.js';
import type { WorkingSets } from './working-sets.js';

/** The rods that are free and light or heavy enough for the crank. */
function openRods(sets: WorkingSets, site: number): number[] {
  const { table } = sets;
  const [first, last] = sets.openRanks(site);
  return table.sites[site]!.rods.filter(
    (rod) =>
      rod === NO_ROD ||
      (sets.freeRods(rod) > 0 && table.massRank[rod]! >= first && table.massRank[rod]! <= last),
  );
}

/** @returns whether the journal could be filled */
export function fillFirst(sets: WorkingSets, site: number): boolean {
  if (!sets.boreIsFree(site)) return false;
  const { table } = sets;
  const pairs = table.pairs.get(table.sites[site]!.kind) ?? [];
  for (const rod of openRods(sets, site)) {
    const pair = pairs.find(
      ({ upper, lower }) =>
        sets.bothFree(upper, lower) && Number.isFinite(table.cost(site, rod, upper, lower)),
    );
    if (!pair) continue;
    sets.put(site, { rod, ...pair });
    return true;
  }
  return false;
}

/** Fills the journal at the least cost. @returns whether it could be filled */
export function fillBest(sets: WorkingSets, site: number): boolean {
  if (!sets.boreIsFree(site)) return false;
  const { table } = sets;
  let [least, best]: [number, Choice | undefined] = [Number.POSITIVE_INFINITY, undefined];
  for (const rod of openRods(sets, site)) {
    table.visitPairs(site, rod, (pair, atLeast) => {
      if (atLeast >= least) return true;
      const { upper, lower } = pair;
      if (sets.bothFree(upper, lower)) {
        const cost = table.cost(site, rod, upper, lower);
        if (cost < least) [least, best] = [cost, { rod, upper, lower }];
      }
      return false;
    });
  }
  if (best) sets.put(site, best);
  return best !== undefined;
}
