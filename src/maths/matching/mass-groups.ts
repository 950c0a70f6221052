/**
 * Cranks put together in groups, each with one window of mass that their rods come from: so every crank keeps
 * the mass spread, whichever of these rods it gets.
 *
 * Fewer sets are possible so than the rule allows, but a model of classes can hold them: alike
 * journals of all the cranks of a group are one class, and so are alike rods that serve the same groups.
 */
import { assign } from './assignment.js';
import { type MassRanks, type MassWindow, massRanks } from './mass-windows.js';
import { BIG_END } from './part-classes.js';
import type { Stock, StockRod } from './stock.js';

/** A group is a whole number. */
export interface MassGroups {
  /** The groups whose window holds the rod, in order. */
  readonly ofRod: (rod: StockRod) => readonly number[];
  /** By the place of the engine: the group that its rods of one engine type are for; undefined: in none. */
  readonly ofEngine: (engine: number, engineType: string) => number | undefined;
}

/** The groups of one engine type. */
export interface GroupsOfType {
  readonly ofRod: ReadonlyMap<StockRod, readonly number[]>;
  readonly ofEngine: ReadonlyMap<number, number>;
}

/** Every rod to all the groups whose window holds it. */
export function rodsByGroup(
  rods: readonly StockRod[],
  rankOf: MassRanks['rankOf'],
  groups: readonly MassWindow[],
): Map<StockRod, readonly number[]> {
  return new Map(
    rods.map((rod) => {
      const rank = rankOf(rod.mass!);
      return [
        rod,
        [...groups.keys()].filter((group) => groups[group]!.first <= rank && rank <= groups[group]!.last),
      ];
    }),
  );
}

/** A rod that an engine would like to have. */
export interface Wish {
  readonly engine: number;
  readonly rod: StockRod;
}

/**
 * Windows that have no mass in common and hold whole cranks' worths of rods, as many as can be; of equally
 * good ones the fewest.
 * @param counts of rods, by rank of mass
 * @param pins of one crank
 */
export function windowsApart(
  counts: readonly number[],
  windows: readonly MassWindow[],
  pins: number,
): MassWindow[] {
  const before = [0];
  for (const count of counts) before.push(before.at(-1)! + count);
  const best: { cranks: number; groups: MassWindow[] }[] = [{ cranks: 0, groups: [] }];
  let widest = 0;
  for (let end = 1; end <= counts.length; end++) {
    // The first rank that shares a window with the last one.
    while (windows[widest]!.last < end - 1) widest++;
    let found = best[end - 1]!;
    for (let first = windows[widest]!.first; first < end; first++) {
      const { cranks, groups } = best[first]!;
      const more = cranks + Math.floor((before[end]! - before[first]!) / pins);
      const fewer = more === found.cranks && groups.length + 1 < found.groups.length;
      if (more > found.cranks || fewer) {
        found = { cranks: more, groups: [...groups, { first, last: end - 1 }] };
      }
    }
    best.push(found);
  }
  return best.at(-1)!.groups;
}

/** How many cranks of each group, so that every group keeps about the same share of spare rods. */
function quotas(rods: readonly number[], pins: number, cranks: number): number[] {
  const taken = rods.map(() => 0);
  for (let crank = 0; crank < cranks; crank++) {
    const share = (group: number) => (rods[group]! - taken[group]! * pins) / rods[group]!;
    const open = [...rods.keys()].filter((group) => rods[group]! >= (taken[group]! + 1) * pins);
    if (open.length === 0) break;
    const roomiest = open.reduce((best, group) => (share(group) > share(best) ? group : best));
    taken[roomiest] = taken[roomiest]! + 1;
  }
  return taken;
}

interface Crank {
  readonly engine: number;
  readonly pins: number;
}

function cranksOf({ engines }: Stock, engineType: string): Crank[] {
  return engines.flatMap(({ journals }, engine) => {
    const own = journals.filter((each) => each.fit === BIG_END && each.engineType === engineType);
    const pins = own.filter(({ caseBore }) => !caseBore).length;
    return pins === 0 ? [] : [{ engine, pins }];
  });
}

/** @returns the group of each crank, in the order given */
function placeCranks(
  cranks: readonly Crank[],
  room: readonly number[],
  wishes: (engine: number, group: number) => number,
): (number | undefined)[] {
  const total = room.reduce((sum, cranks) => sum + cranks, 0);
  // One column more for the cranks that no group has room for.
  const groups = [...room.keys(), room.length];
  const costs = Float64Array.from(
    cranks.flatMap(({ engine }) =>
      groups.map((group) => (group === room.length ? cranks.length * 100 : -wishes(engine, group))),
    ),
  );
  const capacity = [...room, Math.max(0, cranks.length - total)];
  const found = assign({ rows: cranks.length, columns: groups.length, costs, capacity })!;
  return [...found].map((group) => (group === room.length ? undefined : group));
}

/** The window that holds all of a part of it and, of these, most rods. */
function widened(part: MassWindow, windows: readonly MassWindow[], counts: readonly number[]): MassWindow {
  const held = ({ first, last }: MassWindow) => {
    let sum = 0;
    for (let rank = first; rank <= last; rank++) sum += counts[rank]!;
    return sum;
  };
  return windows
    .filter(({ first, last }) => first <= part.first && part.last <= last)
    .reduce((best, window) => (held(window) > held(best) ? window : best), part);
}

function groupsOfType(
  stock: Stock,
  engineType: string,
  { rankOf, windows }: MassRanks,
  wishes: readonly Wish[],
): GroupsOfType {
  const rods = stock.rods.filter((rod) => rod.engineType === engineType && rod.mass !== undefined);
  const cranks = cranksOf(stock, engineType);
  if (rods.length === 0 || cranks.length === 0) return { ofEngine: new Map(), ofRod: new Map() };
  const counts = new Array<number>(windows.at(-1)!.last + 1).fill(0);
  for (const { mass } of rods) counts[rankOf(mass!)]!++;
  const pins = cranks.reduce((most, crank) => Math.max(most, crank.pins), 0);
  // Windows with no rod in common say how many cranks find their rods for sure.
  const apart = windowsApart(counts, windows, pins);
  const sizes = apart.map(({ first, last }) =>
    counts.slice(first, last + 1).reduce((sum, count) => sum + count, 0),
  );
  const ofRod = rodsByGroup(
    rods,
    rankOf,
    apart.map((part) => widened(part, windows, counts)),
  );
  const wished = new Map<string, number>();
  for (const { engine, rod } of wishes) {
    for (const group of ofRod.get(rod) ?? []) {
      const key = `${engine},${group}`;
      wished.set(key, (wished.get(key) ?? 0) + 1);
    }
  }
  const places = placeCranks(
    cranks,
    quotas(sizes, pins, cranks.length),
    (engine, group) => wished.get(`${engine},${group}`) ?? 0,
  );
  const ofEngine = new Map<number, number>();
  for (const [place, group] of places.entries())
    if (group !== undefined) ofEngine.set(cranks[place]!.engine, group);
  return { ofEngine, ofRod };
}

/** Where no spread is set, all rods and engines of a type are one group. */
export function oneGroupElse(types: ReadonlyMap<string, GroupsOfType>): MassGroups {
  const one = <Value>(engineType: string, group: Value, only: Value) =>
    types.has(engineType) ? group : only;
  return {
    ofRod: (rod) => one(rod.engineType, types.get(rod.engineType)?.ofRod.get(rod) ?? [], [0]),
    ofEngine: (engine, engineType) => one(engineType, types.get(engineType)?.ofEngine.get(engine), 0),
  };
}

/** @param wishes which rods the engines would like to have: an engine goes to the group with most of its own */
export function massGroupsOf(stock: Stock, wishes: readonly Wish[]): MassGroups {
  return oneGroupElse(
    new Map(
      [...massRanks(stock)].map(([engineType, ranks]) => [
        engineType,
        groupsOfType(stock, engineType, ranks, wishes),
      ]),
    ),
  );
}
