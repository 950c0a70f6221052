/**
 * Better sets with the same journals filled, by exchanging one kind of part among all of them at once.
 *
 * With bores and lower shells left where they are, the uppers are an assignment problem, solved
 * exactly; so are the lowers, the rods, and whole pairs of shells. None of them ever makes the sets worse.
 */
import { assign } from './assignment.js';
import { type Choice, type FitTable, NO_ROD } from './fit-table.js';
import type { WorkingSets } from './working-sets.js';

interface Exchange {
  readonly sites: readonly number[];
  readonly columns: readonly Partial<Choice>[];
  readonly capacity: readonly number[];
  /** Whether the site at a place of the list may take the column at all. */
  readonly open?: (row: number, column: Partial<Choice>) => boolean;
}

function exchange(sets: WorkingSets, { sites, columns, capacity, open }: Exchange): void {
  const { table, choices } = sets;
  if (sites.length === 0) return;
  const costs = new Float64Array(sites.length * columns.length);
  let place = 0;
  for (const [row, site] of sites.entries()) {
    const now = choices[site]!;
    for (const column of columns) {
      const { rod = now.rod, upper = now.upper, lower = now.lower } = column;
      costs[place++] =
        open && !open(row, column) ? Number.POSITIVE_INFINITY : table.cost(site, rod, upper, lower);
    }
  }
  const found = assign({ rows: sites.length, columns: columns.length, costs, capacity });
  if (!found) return;
  const next = sites.map((site, row) => ({ ...choices[site]!, ...columns[found[row]!]! }));
  for (const site of sites) sets.put(site, undefined);
  for (const [row, site] of sites.entries()) sets.put(site, next[row]);
}

const filled = ({ choices }: WorkingSets, sites: readonly number[]) =>
  sites.filter((site) => choices[site] !== undefined);

function exchangeRods(sets: WorkingSets, sites: readonly number[], lean: number): void {
  const { table } = sets;
  const own = filled(sets, sites).filter((site) => sets.choices[site]!.rod !== NO_ROD);
  const rods = [...table.rodsOf(own)];
  const used = new Map<number, number>();
  for (const site of own) used.set(sets.choices[site]!.rod, (used.get(sets.choices[site]!.rod) ?? 0) + 1);
  const ranks = own.map((site) => sets.windowOf(site, lean));
  exchange(sets, {
    sites: own,
    columns: rods.map((rod) => ({ rod })),
    capacity: rods.map((rod) => sets.freeRods(rod) + (used.get(rod) ?? 0)),
    open: (row, { rod }) => {
      const [first, last] = ranks[row]!;
      return table.massRank[rod!]! >= first && table.massRank[rod!]! <= last;
    },
  });
}

type Half = 'upper' | 'lower';

function exchangeShells(sets: WorkingSets, sites: readonly number[], half: Half, classes: readonly number[]) {
  const own = filled(sets, sites);
  const used = new Map<number, number>();
  for (const site of own) used.set(sets.choices[site]![half], (used.get(sets.choices[site]![half]) ?? 0) + 1);
  exchange(sets, {
    sites: own,
    columns: classes.map((shell) => ({ [half]: shell })),
    capacity: classes.map((shell) => sets.freeShells(shell) + (used.get(shell) ?? 0)),
  });
}

function exchangePairs(sets: WorkingSets, sites: readonly number[]): void {
  const own = filled(sets, sites);
  const counts = new Map<string, { pair: { upper: number; lower: number }; count: number }>();
  for (const site of own) {
    const { upper, lower } = sets.choices[site]!;
    const known = counts.get(`${upper},${lower}`) ?? { pair: { upper, lower }, count: 0 };
    known.count++;
    counts.set(`${upper},${lower}`, known);
  }
  const pairs = [...counts.values()];
  exchange(sets, {
    sites: own,
    columns: pairs.map(({ pair }) => pair),
    capacity: pairs.map(({ count }) => count),
  });
}

/** Sites by the kind of their fit; an engine type has one kind that takes rods, so that rods stay in one group. */
export function sitesByKind(
  { sites }: FitTable,
  places: readonly number[],
): ReadonlyMap<string, readonly number[]> {
  const kinds = new Map<string, number[]>();
  for (const place of places) {
    const { kind } = sites[place]!;
    const own = kinds.get(kind);
    if (own) own.push(place);
    else kinds.set(kind, [place]);
  }
  return kinds;
}

/**
 * One round of exchanges of every kind of part.
 * @param lean which of the windows of mass that hold a crank's rods: 0 the lightest, 1 the heaviest
 */
export function reassign(
  sets: WorkingSets,
  kinds: ReadonlyMap<string, readonly number[]>,
  lean: number,
): void {
  const { table } = sets;
  for (const [kind, sites] of kinds) {
    exchangeRods(sets, sites, lean);
    exchangeShells(sets, sites, 'upper', table.uppers.get(kind) ?? []);
    exchangePairs(sets, sites);
    exchangeShells(sets, sites, 'lower', table.lowers.get(kind) ?? []);
  }
}
