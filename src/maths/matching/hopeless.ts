/**
 * Which engines not even the whole stock completes, each alone. Such an engine takes nothing that another could use:
 * its journals are an aim of their own, after those of the others (aims.ts).
 *
 * An engine that is completed by the sets at hand, or by filling it first, is none of them. To each of the others
 * the whole stock is matched alone; it is hopeless where it is proved that no sets complete it.
 */
import { aimsOf } from './aims.js';
import { fillBest, fillFirst } from './fill.js';
import { FitTable } from './fit-table.js';
import type { StockOnGrid } from './grid.js';
import { modelOf } from './model-columns.js';
import { plainSearch } from './plain-search.js';
import { problemOf } from './problem.js';
import type { Solver } from './solver.js';
import { pursue } from './stages.js';
import type { Stock, StockEngine } from './stock.js';
import type { Started } from './whole-stock.js';
import { WorkingSets } from './working-sets.js';

/** Whether an engine is completed where it takes its parts before all others. */
function isFilledFirst(sets: WorkingSets, sites: readonly number[], engine: number): boolean {
  const orders = [sites, [...sites].reverse()];
  return [fillBest, fillFirst].some((fill) =>
    orders.some((order) => {
      for (const site of order) fill(sets, site);
      const isComplete = sets.isCompleteEngine(engine);
      for (const site of order) sets.put(site, undefined);
      return isComplete;
    }),
  );
}

/** Whether it is proved that no sets of a stock complete its only engine. */
function isProvedHopeless(stock: Stock, solver: Solver, remaining: () => number): boolean {
  const problem = problemOf(stock, { merge: false });
  const model = modelOf(problem);
  if (!model.columns.some(({ meaning }) => meaning.is === 'engine')) return true;
  const sets = new WorkingSets(new FitTable(problem));
  plainSearch(sets, remaining);
  if (sets.isCompleteEngine(0)) return false;
  const [complete] = aimsOf(stock, { price: 1, distance: 1 });
  const found = pursue({ solver, model, sets, remaining }, [complete!]).next().value;
  return found !== undefined && found.bound === 0;
}

/**
 * The hopeless engines among those that the sets at hand leave incomplete, by name. On a grid this is a question to the
 * outer copy, so that a hopeless engine is one of the parts themselves.
 * @param remaining seconds left: an engine whose turn does not come is not called hopeless
 */
function hopelessEngines({ stock, sets }: Started, solver: Solver, remaining: () => number): string[] {
  const { table } = sets;
  const alone = new WorkingSets(table);
  const sitesOf = new Map<number, number[]>();
  for (const [site, { engine }] of table.sites.entries())
    sitesOf.set(engine, [...(sitesOf.get(engine) ?? []), site]);
  const isHopeless = (engine: StockEngine, place: number) => {
    if (engine.journals.length === 0 || sets.isCompleteEngine(place) || remaining() <= 0) return false;
    const sites = sitesOf.get(place) ?? [];
    if (sites.length === engine.journals.length && isFilledFirst(alone, sites, place)) return false;
    return isProvedHopeless({ ...stock.outer, engines: [stock.outer.engines[place]!] }, solver, remaining);
  };
  return stock.inner.engines.filter(isHopeless).map(({ name }) => name);
}

/** A stock whose engines of these names are marked as hopeless. */
export function markHopeless(stock: StockOnGrid, names: ReadonlySet<string>): StockOnGrid {
  if (names.size === 0) return stock;
  const marked = (own: Stock): Stock => ({
    ...own,
    engines: own.engines.map((engine) => (names.has(engine.name) ? { ...engine, isHopeless: true } : engine)),
  });
  const inner = marked(stock.inner);
  // The same object in both places says that there is no grid.
  return { ...stock, inner, outer: stock.outer === stock.inner ? inner : marked(stock.outer) };
}

/** The same stock with its hopeless engines marked. */
export function withHopeless(started: Started, solver: Solver, remaining: () => number): StockOnGrid {
  return markHopeless(started.stock, new Set(hopelessEngines(started, solver, remaining)));
}
