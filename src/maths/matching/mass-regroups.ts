/**
 * Groups (mass-groups.ts) about sets at hand, so that these are among the sets that the groups allow: cranks are
 * put together whose rods lie in one window.
 */
import { type GroupsOfType, type MassGroups, oneGroupElse, rodsByGroup, type Wish } from './mass-groups.js';
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

function groupsOfType(
  rods: readonly StockRod[],
  { rankOf, windows }: MassRanks,
  cranks: readonly CrankRods[],
  how: Regrouping,
): GroupsOfType {
  const fits = ({ first, last }: MassWindow, crank: CrankRods) =>
    crank.rods.every((rod) => first <= rankOf(rod.mass!) && rankOf(rod.mass!) <= last);
  const ofEngine = new Map<number, number>();
  const groups: MassWindow[] = [];
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
    for (const { engine } of first.own) ofEngine.set(engine, groups.length);
    groups.push(first.window);
    left = left.filter((crank) => !first.own.includes(crank));
  }
  return { ofRod: rodsByGroup(rods, rankOf, groups), ofEngine };
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
