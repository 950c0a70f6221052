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

function freePairs(sets: WorkingSets, site: number) {
  const pairs = sets.table.pairs.get(sets.table.sites[site]!.kind) ?? [];
  return pairs.filter(({ upper, lower }) => sets.bothFree(upper, lower));
}

/** @returns whether the journal could be filled */
export function fillFirst(sets: WorkingSets, site: number): boolean {
  if (!sets.boreIsFree(site)) return false;
  const pairs = freePairs(sets, site);
  for (const rod of openRods(sets, site)) {
    const pair = pairs.find(({ upper, lower }) => Number.isFinite(sets.table.cost(site, rod, upper, lower)));
    if (!pair) continue;
    sets.put(site, { rod, ...pair });
    return true;
  }
  return false;
}

/** Fills the journal at the least cost. @returns whether it could be filled */
export function fillBest(sets: WorkingSets, site: number): boolean {
  if (!sets.boreIsFree(site)) return false;
  const pairs = freePairs(sets, site);
  let [least, best]: [number, Choice | undefined] = [Number.POSITIVE_INFINITY, undefined];
  for (const rod of openRods(sets, site)) {
    for (const { upper, lower } of pairs) {
      const cost = sets.table.cost(site, rod, upper, lower);
      if (cost >= least) continue;
      [least, best] = [cost, { rod, upper, lower }];
    }
  }
  if (best) sets.put(site, best);
  return best !== undefined;
}
