/**
 * Exchanges: the same journals stay filled, and one kind of part is reassigned among all of them at once.
 *
 * With bores and lower shells fixed, the uppers are an assignment problem, which is solved exactly; so are the
 * lowers, the rods, and whole pairs of shells. No exchange makes the sets worse.
 */
import { assign } from './assignment.js';
import type { FitTable } from './fit-table.js';
import { type Choice, NO_ROD } from './sites.js';
import type { WorkingSets } from './working-sets.js';

/** An empty journal with parts for it; the part to be exchanged may be in use. */
interface Tentative {
  readonly site: number;
  readonly choice: Choice;
}

interface Exchange {
  readonly sites: readonly number[];
  readonly columns: readonly Partial<Choice>[];
  readonly capacity: readonly number[];
  /** Whether the site at an index of the list may take the column. */
  readonly open?: (row: number, column: Partial<Choice>) => boolean;
}

/** @returns whether there is a part for each journal, the tentative one included */
function exchange(
  sets: WorkingSets,
  { sites: filledSites, columns, capacity, open }: Exchange,
  tentative?: Tentative,
): boolean {
  const { table } = sets;
  const sites = tentative ? [...filledSites, tentative.site] : filledSites;
  if (sites.length === 0) return false;
  const choices = sites.map((site) => (site === tentative?.site ? tentative.choice : sets.choices[site]!));
  const costs = new Float64Array(sites.length * columns.length);
  let place = 0;
  for (const [row, site] of sites.entries()) {
    const now = choices[row]!;
    for (const column of columns) {
      const { rod = now.rod, upper = now.upper, lower = now.lower } = column;
      costs[place++] =
        open && !open(row, column) ? Number.POSITIVE_INFINITY : table.cost(site, rod, upper, lower);
    }
  }
  const found = assign({ rows: sites.length, columns: columns.length, costs, capacity });
  if (!found) return false;
  const next = choices.map((choice, row) => ({ ...choice, ...columns[found[row]!]! }));
  for (const site of sites) sets.put(site, undefined);
  for (const [row, site] of sites.entries()) sets.put(site, next[row]);
  return true;
}

const filled = ({ choices }: WorkingSets, sites: readonly number[]) =>
  sites.filter((site) => choices[site] !== undefined);

function exchangeRods(
  sets: WorkingSets,
  sites: readonly number[],
  lean: number,
  tentative?: Tentative,
): boolean {
  const { table } = sets;
  const own = filled(sets, sites).filter((site) => sets.choices[site]!.rod !== NO_ROD);
  const rows = tentative ? [...own, tentative.site] : own;
  const rods = [...table.rodsOf(rows)];
  const used = new Map<number, number>();
  for (const site of own) used.set(sets.choices[site]!.rod, (used.get(sets.choices[site]!.rod) ?? 0) + 1);
  const ranks = rows.map((site) => sets.windowOf(site, lean));
  const all: Exchange = {
    sites: own,
    columns: rods.map((rod) => ({ rod })),
    capacity: rods.map((rod) => sets.freeRods(rod) + (used.get(rod) ?? 0)),
    open: (row, { rod }) => {
      const [first, last] = ranks[row]!;
      return table.massRank[rod!]! >= first && table.massRank[rod!]! <= last;
    },
  };
  return exchange(sets, all, tentative);
}

type ShellSide = 'upper' | 'lower';

function exchangeShells(
  sets: WorkingSets,
  sites: readonly number[],
  half: ShellSide,
  classes: readonly number[],
  tentative?: Tentative,
): boolean {
  const own = filled(sets, sites).filter((site) => !sets.table.isAsOne(sets.choices[site]!));
  const used = new Map<number, number>();
  for (const site of own) used.set(sets.choices[site]![half], (used.get(sets.choices[site]![half]) ?? 0) + 1);
  // The tentative journal holds the shell of its other half.
  const held = tentative?.choice[half === 'upper' ? 'lower' : 'upper'];
  const all: Exchange = {
    sites: own,
    columns: classes.map((shell) => ({ [half]: shell })),
    capacity: classes.map(
      (shell) => sets.freeShells(shell) + (used.get(shell) ?? 0) - Number(shell === held),
    ),
  };
  return exchange(sets, all, tentative);
}

/** @param asOne the pairs of the kind that are used as one, the free ones too */
function exchangePairs(
  sets: WorkingSets,
  sites: readonly number[],
  asOne: readonly number[],
  tentative?: Tentative,
): boolean {
  const own = filled(sets, sites);
  const counts = new Map<string, { pair: { upper: number; lower: number }; count: number }>();
  for (const site of own) {
    const { upper, lower } = sets.choices[site]!;
    const known = counts.get(`${upper},${lower}`) ?? { pair: { upper, lower }, count: 0 };
    known.count++;
    counts.set(`${upper},${lower}`, known);
  }
  for (const pair of asOne) {
    const key = `${pair},${pair}`;
    const count = (counts.get(key)?.count ?? 0) + Math.floor(sets.freeShells(pair) / 2);
    if (count > 0) counts.set(key, { pair: { upper: pair, lower: pair }, count });
  }
  const pairs = [...counts.values()];
  const all: Exchange = {
    sites: own,
    columns: pairs.map(({ pair }) => pair),
    capacity: pairs.map(({ count }) => count),
  };
  return exchange(sets, all, tentative);
}

/**
 * Sites by the kind of their fit. Only one kind of an engine type takes rods, so that all rods of a type are
 * exchanged together.
 */
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
 * @param lean picks among the windows of mass that hold a crank's rods: 0 the lightest, 1 the heaviest
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
    exchangePairs(sets, sites, table.asOne.get(kind) ?? []);
    exchangeShells(sets, sites, 'lower', table.lowers.get(kind) ?? []);
  }
}

/**
 * Fills an empty journal: all of its parts but one are free, and that one comes by an exchange among the journals of
 * its kind. A pair that is used as one counts as one part.
 * @param sites journals of its kind
 * @param parts the parts to try: one of them is exchanged
 * @returns whether it is filled
 */
export function fillByExchange(
  sets: WorkingSets,
  site: number,
  sites: readonly number[],
  parts: Choice,
  exchanged: 'rod' | 'pair' | ShellSide,
  lean: number,
): boolean {
  const { table } = sets;
  const { kind } = table.sites[site]!;
  const tentative = { site, choice: parts };
  if (exchanged === 'rod') return exchangeRods(sets, sites, lean, tentative);
  if (exchanged === 'pair') return exchangePairs(sets, sites, table.asOne.get(kind) ?? [], tentative);
  const classes = (exchanged === 'upper' ? table.uppers : table.lowers).get(kind) ?? [];
  return exchangeShells(sets, sites, exchanged, classes, tentative);
}
