/**
 * Groups of rods (mass-groups.ts) about sets at hand, so that these are among the sets that the groups allow.
 *
 * Any rods within the mass spread make a group, whether their masses lie apart from the others' or
 * not: cranks are put together whose rods lie in one window, and rods left over go where they fit.
 */
import { type MassGroups, oneGroupElse, type Wish } from './mass-groups.js';
import { type MassRanks, type MassWindow, massRanks } from './mass-windows.js';
import type { Stock, StockRod } from './stock.js';

/** The rods that a crank is to have among those of its group. */
interface CrankRods {
  readonly engine: number;
  readonly rods: readonly StockRod[];
}

/** Which cranks are put together first: those of the window that holds most, or the lightest, or the heaviest. */
export const REGROUPINGS = ['fullest', 'lightest', 'heaviest'] as const;
export type Regrouping = (typeof REGROUPINGS)[number];

interface OfType {
  readonly ofRod: ReadonlyMap<StockRod, number>;
  readonly ofEngine: ReadonlyMap<number, number>;
}

/** Rods to the groups that their masses allow, each to the one with the fewest rods a crank. */
function spread(
  spare: readonly StockRod[],
  groups: readonly { readonly window: MassWindow; readonly cranks: number }[],
  rankOf: MassRanks['rankOf'],
  ofRod: Map<StockRod, number>,
): void {
  const counts = groups.map(() => 0);
  for (const group of ofRod.values()) counts[group]!++;
  for (const rod of spare) {
    const rank = rankOf(rod.mass!);
    let best = -1;
    for (const [group, { window, cranks }] of groups.entries()) {
      if (rank < window.first || rank > window.last) continue;
      if (best < 0 || counts[group]! / cranks < counts[best]! / groups[best]!.cranks) best = group;
    }
    if (best < 0) continue;
    ofRod.set(rod, best);
    counts[best]!++;
  }
}

function groupsOfType(
  rods: readonly StockRod[],
  { rankOf, windows }: MassRanks,
  cranks: readonly CrankRods[],
  how: Regrouping,
): OfType {
  const fits = ({ first, last }: MassWindow, crank: CrankRods) =>
    crank.rods.every((rod) => first <= rankOf(rod.mass!) && rankOf(rod.mass!) <= last);
  const [ofRod, ofEngine] = [new Map<StockRod, number>(), new Map<number, number>()];
  const groups: { window: MassWindow; cranks: number }[] = [];
  let left = [...cranks];
  while (left.length > 0) {
    const counted = windows.map((window) => ({
      window,
      own: left.filter((crank) => fits(window, crank)),
    }));
    const open = counted.filter(({ own }) => own.length > 0);
    if (how === 'heaviest') open.reverse();
    const [first] = how === 'fullest' ? open.sort((a, b) => b.own.length - a.own.length) : open;
    if (!first) break;
    for (const { engine, rods: wanted } of first.own) {
      ofEngine.set(engine, groups.length);
      for (const rod of wanted) ofRod.set(rod, groups.length);
    }
    groups.push({ window: first.window, cranks: first.own.length });
    left = left.filter((crank) => !first.own.includes(crank));
  }
  const spare = rods.filter((rod) => !ofRod.has(rod));
  spread(spare, groups, rankOf, ofRod);
  return { ofRod, ofEngine };
}

/**
 * @param now the rods that the engines have
 * @param wishes rods that engines would rather have: the others of such a crank may then be any
 */
export function regroup(
  stock: Stock,
  now: readonly Wish[],
  wishes: readonly Wish[],
  how: Regrouping,
): MassGroups {
  const wished = new Set(wishes.map(({ rod }) => rod));
  const changed = new Set(wishes.map(({ engine, rod }) => `${engine},${rod.engineType}`));
  const kept = now.filter(
    ({ engine, rod }) => !wished.has(rod) && !changed.has(`${engine},${rod.engineType}`),
  );
  const types = new Map(
    [...massRanks(stock)].map(([engineType, ranks]) => {
      const cranks = new Map<number, StockRod[]>();
      for (const { engine, rod } of now) if (rod.engineType === engineType) cranks.set(engine, []);
      for (const { engine, rod } of [...kept, ...wishes]) {
        if (rod.engineType === engineType) cranks.set(engine, [...(cranks.get(engine) ?? []), rod]);
      }
      const rods = stock.rods.filter((rod) => rod.engineType === engineType && rod.mass !== undefined);
      const list = [...cranks].map(([engine, own]) => ({ engine, rods: own }));
      return [engineType, groupsOfType(rods, ranks, list, how)] as const;
    }),
  );
  return oneGroupElse(types);
}
