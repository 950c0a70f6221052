/**
 * Large neighbourhood search of a large stock (Pisinger and Ropke, 2010), by a fixed sequence.
 *
 * A neighbourhood is a portion of the stock: a few engines with the parts that they have, and all free parts. It is
 * small enough for its whole-number programs.
 */
import { aimValueOf, tryOut } from './counts.js';
import { FitTable } from './fit-table.js';
import { namedFits } from './named-fits.js';
import { OpenAim } from './open-aim.js';
import { problemOf } from './problem.js';
import { putFits } from './put-fits.js';
import { sequenceOf, shuffled } from './random.js';
import type { Reunion } from './reunions.js';
import { type LargeSearch, outerSide } from './sides.js';
import type { MatchedFit, Stock, StockShell } from './stock.js';
import { WorkingSets } from './working-sets.js';

/** Engines of a portion: the most, and the fewest; never more than half of all. */
export const MOST_IN_PORTION = 25;
const FEWEST_ENGINES = 6;

/** Most nodes of a whole-number program of one portion: more seldom improve the sets. */
const NODES = 50;

/** Most rounds without gain, one after the other. */
const IDLE_ROUNDS = 3;

/** The fits of the sets, each with the index of its engine. */
type FitsOf = readonly { readonly engine: number; readonly fit: MatchedFit }[];

function fitsOf(sets: WorkingSets): FitsOf {
  const place = new Map(sets.table.sites.map(({ journal, engine }) => [journal, engine]));
  return namedFits(sets).map((fit) => ({ engine: place.get(fit.journal)!, fit }));
}

/** The stock of some engines: all parts that no other engine has. */
function stockOfEngines(stock: Stock, chosen: ReadonlySet<number>, fits: FitsOf) {
  const elsewhere = fits.filter(({ engine }) => !chosen.has(engine)).map(({ fit }) => fit);
  // A case may have the name of a rod.
  const rodsTaken = new Set(elsewhere.flatMap(({ journal, bore }) => (journal.caseBore ? [] : [bore.name])));
  const taken = new Map<object, number>();
  for (const { upper, lower } of elsewhere)
    for (const { shell } of [upper, lower]) taken.set(shell, (taken.get(shell) ?? 0) + 1);
  const originals = new Map<object, object>();
  const shells = stock.shells.flatMap((shell): StockShell[] => {
    const quantity = shell.quantity - (taken.get(shell) ?? 0);
    if (quantity <= 0) return [];
    if (quantity === shell.quantity) return [shell];
    const rest = { ...shell, quantity };
    originals.set(rest, shell);
    return [rest];
  });
  const engines = stock.engines.filter((_, place) => chosen.has(place));
  const rods = stock.rods.filter(({ name }) => !rodsTaken.has(name));
  return { stock: { ...stock, engines, rods, shells }, originals };
}

/** @returns whether the sets are better for it */
function improvePortion(search: LargeSearch, open: OpenAim, chosen: ReadonlySet<number>): boolean {
  const { sets, solver, stock } = search;
  const fits = fitsOf(sets);
  const portion = stockOfEngines(stock.inner, chosen, fits);
  const own = new WorkingSets(new FitTable(problemOf(portion.stock, { merge: true })));
  const copies = new Map([...portion.originals].map(([copy, row]) => [row, copy]));
  const now = fits.filter(({ engine }) => chosen.has(engine)).map(({ fit }) => fit);
  const engines = new Set(portion.stock.engines.map(({ name }) => name));
  putFits(own, engines, now, (row) => copies.get(row) ?? row);
  const ownStock = { grid: stock.grid, inner: portion.stock, outer: portion.stock };
  const ownSearch = { solver, stock: ownStock, sets: own, remaining: open.left };
  const held = open.aims.slice(0, -1).map((aim) => {
    const reached = aimValueOf(aim, own);
    return { aim, reached, bound: reached };
  });
  const ownOpen = new OpenAim(ownSearch, open.aims, held, open.left, NODES);
  const before = ownOpen.value();
  const outer = outerSide(ownSearch);
  const bounded = ownOpen.boundOf(outer);
  if (!bounded) {
    open.isCut = true;
    return false;
  }
  // The rest of the stock stays as it is, so that a gain by the whole gap is enough.
  ownOpen.bound = Math.max(Math.ceil(bounded.linear.bound), before - (open.value() - open.bound));
  if (!ownOpen.isOpen()) return false;
  if (own.table.problem.windows.size === 0) ownOpen.improveByPrograms(outer, bounded);
  else ownOpen.regroupAll(outer, bounded.linear.likely);
  if (ownOpen.isCut) open.isCut = true;
  if (ownOpen.value() >= before) return false;
  const value = open.value();
  tryOut(
    sets,
    () => putFits(sets, engines, namedFits(own), (row) => portion.originals.get(row) ?? row),
    () => open.values(),
  );
  return open.value() < value;
}

/** The engine of a fit of parts that ran together, and the engines that have these parts. */
function concerned({ table }: WorkingSets, fits: FitsOf, { site, kept }: Reunion): number[] {
  const { rod, upper, lower } = table.problem.kept[kept]!;
  const holds = ({ fit }: FitsOf[number]) =>
    (rod !== undefined && !fit.journal.caseBore && fit.bore.name === rod.name) ||
    [fit.upper, fit.lower].some(({ shell }) => shell === upper || shell === lower);
  return [table.sites[site]!.engine, ...fits.filter(holds).map(({ engine }) => engine)];
}

/** The engines with the incomplete ones spread evenly among the complete ones. */
function mixed(engines: readonly number[], isComplete: (engine: number) => boolean): number[] {
  const incomplete = engines.filter((engine) => !isComplete(engine));
  const every = Math.max(1, Math.floor(engines.length / (incomplete.length + 1)));
  const among = engines
    .filter(isComplete)
    .flatMap((engine, at) => (at % every === 0 ? [...incomplete.splice(0, 1), engine] : [engine]));
  return [...among, ...incomplete];
}

/**
 * Goes through all engines, portion by portion, until no round helps. It does nothing where there are few engines.
 * @param reunions fits of parts that ran together which the linear bound takes
 */
export function improveByPortions(search: LargeSearch, open: OpenAim, reunions: readonly Reunion[]): void {
  const { sets } = search;
  const engines = [...new Set(sets.table.sites.map(({ engine }) => engine))];
  const size = Math.min(MOST_IN_PORTION, Math.floor(engines.length / 2));
  // A case bore that two engines share may be in use outside the portion.
  if (size < FEWEST_ENGINES || sets.table.problem.sharedBores.size > 0) return;
  const next = sequenceOf(3);
  for (let idle = 0; idle < IDLE_ROUNDS && open.isOpen(); idle++) {
    const apart = reunions.filter((fit) => !sets.isChosen(fit.site, fit));
    const fits = fitsOf(sets);
    const first = open.aim.amount === 'kept' ? apart.map((fit) => concerned(sets, fits, fit)) : [];
    const others = mixed(shuffled(next, engines), (engine) => sets.isCompleteEngine(engine));
    const order = [...first, ...others.map((engine) => [engine])];
    const tried = new Set<number>();
    let chosen = new Set<number>();
    for (const some of order) {
      if (!open.isOpen()) return;
      if (some.every((engine) => tried.has(engine))) continue;
      for (const engine of some) {
        chosen.add(engine);
        tried.add(engine);
      }
      if (chosen.size < size) continue;
      if (improvePortion(search, open, chosen)) idle = -1;
      chosen = new Set();
    }
  }
}
