/** Fills one empty journal from the parts that are free. */
import type { Sequence } from './random.js';
import { fillByExchange } from './reassign.js';
import { type Choice, NO_ROD } from './sites.js';
import type { WorkingSets } from './working-sets.js';

/** The free rods whose mass the crank's other rods allow. */
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
  // Parts that ran together first. All other fits cost no less than their lower bound without what a kept pair is
  // worth.
  for (const { rod, upper, lower } of table.togetherAt(site)) {
    if (!sets.fits(site, { rod, upper, lower })) continue;
    const cost = table.cost(site, rod, upper, lower);
    if (cost < least) [least, best] = [cost, { rod, upper, lower }];
  }
  for (const rod of openRods(sets, site)) {
    table.visitPairs(site, rod, (pair, atLeast) => {
      if (atLeast + table.weights.kept >= least) return true;
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

const anyOf = <Item>(next: Sequence, items: readonly Item[]) => items[Math.floor(next() * items.length)];

/** What a draw leaves to an exchange; a pair is used as one. */
type Exchanged = 'rod' | 'upper' | 'lower' | 'pair';

/**
 * Fills a journal that no free parts fit, by passing parts on from journal to journal: of rod, upper and lower, or of
 * rod and pair, all but one are drawn at random from the free ones, and the last comes by an exchange.
 * @param sites journals of its kind to exchange with
 * @param tries most draws
 */
export function fillByLot(
  sets: WorkingSets,
  site: number,
  sites: readonly number[],
  tries: number,
  next: Sequence,
): boolean {
  if (!sets.boreIsFree(site)) return false;
  const { table } = sets;
  const { kind, rods } = table.sites[site]!;
  const free = (shells: readonly number[]) => shells.filter((shell) => sets.freeShells(shell) > 0);
  const uppers = table.uppers.get(kind) ?? [];
  const lowers = table.lowers.get(kind) ?? [];
  const pairs = table.asOne.get(kind) ?? [];
  const [openRod, openUpper, openLower] = [openRods(sets, site), free(uppers), free(lowers)];
  const openPair = pairs.filter((pair) => sets.bothFree(pair, pair));
  const kinds: Exchanged[] = [
    ...(rods[0] === NO_ROD ? [] : (['rod'] as const)),
    ...(uppers.length > 0 && lowers.length > 0 ? (['upper', 'lower'] as const) : []),
    ...(pairs.length > 0 ? (['pair'] as const) : []),
  ];
  /** A pair used as one as often as its share of the free pairs says. */
  const drawPair = () => {
    const halves = Math.min(openUpper.length, openLower.length);
    if (Math.floor(next() * (halves + openPair.length)) < halves)
      return { upper: anyOf(next, openUpper), lower: anyOf(next, openLower) };
    const pair = anyOf(next, openPair);
    return { upper: pair, lower: pair };
  };
  for (let time = 0; time < tries && kinds.length > 0; time++) {
    const exchanged = kinds[time % kinds.length]!;
    const rod = anyOf(next, exchanged === 'rod' ? rods : openRod);
    const { upper, lower } =
      exchanged === 'rod'
        ? drawPair()
        : exchanged === 'pair'
          ? { upper: pairs[0], lower: pairs[0] }
          : {
              upper: anyOf(next, exchanged === 'upper' ? uppers : openUpper),
              lower: anyOf(next, exchanged === 'lower' ? lowers : openLower),
            };
    if (rod === undefined || upper === undefined || lower === undefined) continue;
    if (exchanged === 'rod' && !sets.bothFree(upper, lower)) continue;
    const parts = { rod, upper, lower };
    const choices: readonly Partial<Choice>[] = {
      rod: rods.map((each) => ({ rod: each })),
      upper: uppers.map((each) => ({ upper: each })),
      lower: lowers.map((each) => ({ lower: each })),
      pair: pairs.map((each) => ({ upper: each, lower: each })),
    }[exchanged];
    const fits = (part: Partial<Choice>) => {
      const choice = { ...parts, ...part };
      return Number.isFinite(table.cost(site, choice.rod, choice.upper, choice.lower));
    };
    if (!choices.some(fits)) continue;
    if (fillByExchange(sets, site, sites, parts, exchanged, next())) return true;
  }
  return false;
}
