/**
 * The models of classes that a large stock is searched with: one that allows all that the rules allow,
 * for the bounds, and one whose every whole-number solution keeps the rules, for the sets.
 */
import type { Aim } from './aims.js';
import { Bridge, twinsOf } from './bridge.js';
import { aimValueOf, tryOut } from './counts.js';
import { FitTable } from './fit-table.js';
import type { StockOnGrid } from './grid.js';
import { plainBound } from './known-bounds.js';
import { massGroupsOf, type Wish } from './mass-groups.js';
import { type Regrouping, regroup } from './mass-regroups.js';
import { massRanks, rodsNeverTogether } from './mass-windows.js';
import { type Column, modelOf } from './model-columns.js';
import { plainSearch } from './plain-search.js';
import { type Problem, problemOf } from './problem.js';
import { Relaxation } from './relaxation.js';
import type { Reunion } from './reunions.js';
import { NO_ROD } from './sites.js';
import type { Solver } from './solver.js';
import type { Reached } from './stage.js';
import type { Stock, StockRod } from './stock.js';
import { compareValues, WorkingSets } from './working-sets.js';

export interface LargeSearch {
  readonly solver: Solver;
  readonly stock: StockOnGrid;
  readonly sets: WorkingSets;
  readonly remaining: () => number;
}

/** The stock as if the masses of its rods played no part; what they say of kept pairs is told apart. */
function withoutMasses(stock: Stock): Stock {
  const weighed = new Set(
    stock.kinds.filter(({ massSpread }) => massSpread !== undefined).map(({ engineType }) => engineType),
  );
  return {
    ...stock,
    kinds: stock.kinds.map((kind) => ({ ...kind, massSpread: undefined })),
    rods: stock.rods.filter(({ engineType, mass }) => mass !== undefined || !weighed.has(engineType)),
  };
}

/** A model of classes, joined to the sets of the search. */
export interface ModelSide {
  readonly relaxation: Relaxation;
  readonly bridge: Bridge;
}

/** What no sets can beat: a model that allows all that the rules allow, and where masses are concerned more. */
export function outerSide({ solver, stock, sets }: LargeSearch): ModelSide {
  const model = modelOf(
    problemOf(withoutMasses(stock.outer), { merge: true, neverTogether: rodsNeverTogether(stock.outer) }),
  );
  return {
    relaxation: new Relaxation(solver, model),
    bridge: new Bridge(model, sets.table, twinsOf(stock)),
  };
}

/** Of a stock of more journals whole cranks would take longer to price than their bound is worth. */
const MOST_IN_WHOLE_CRANKS = 250;

/** What no sets can beat, masses and all: every crank is filled as a whole. Undefined where no masses matter. */
export function wholeSide({ solver, stock, sets }: LargeSearch): ModelSide | undefined {
  if (sets.table.sites.length > MOST_IN_WHOLE_CRANKS) return undefined;
  if (![...massRanks(stock.outer).values()].some(({ windows }) => windows.length > 1)) return undefined;
  const problem = problemOf(stock.outer, { merge: true, wholeCranks: true });
  const model = modelOf(problem);
  return {
    relaxation: new Relaxation(solver, model),
    bridge: new Bridge(model, sets.table, twinsOf(stock)),
  };
}

/** A model whose every whole-number solution is sets that keep the rules. */
function sideOf({ solver, sets }: LargeSearch, problem: Problem): ModelSide {
  const model = modelOf(problem);
  return { relaxation: new Relaxation(solver, model), bridge: new Bridge(model, sets.table, new Map()) };
}

/** The plain search among the fits of a model; its sets stand where they are better than those at hand. */
function startFrom({ relaxation, bridge }: ModelSide, { sets, remaining }: LargeSearch): void {
  const { model, pool } = relaxation;
  const own = new WorkingSets(new FitTable(model.problem));
  plainSearch(own, remaining);
  const toModel = new Bridge(model, own.table, new Map());
  for (const quad of toModel.quadsOf(own)) pool.add(quad);
  if (compareValues(own.value(), sets.value()) >= 0) return;
  const values = () => {
    const { complete, beyond, cost } = sets.value();
    return [-complete, -beyond, cost];
  };
  tryOut(sets, () => bridge.fromTaken(toModel.toTaken(own), sets), values);
}

/** The rods that engines keep where every aim reaches its bound; none where that is not to be seen. */
function wishesOf(outer: ModelSide, { solver, sets, remaining }: LargeSearch, aims: readonly Aim[]): Wish[] {
  const { model, pool } = outer.relaxation;
  const scout = new Relaxation(solver, model, pool);
  for (const quad of outer.bridge.quadsOf(sets)) pool.add(quad);
  const held: Reached[] = [];
  for (const aim of aims) {
    let best = plainBound(model, aim, sets.value().complete);
    if (aimValueOf(aim, sets) > best) {
      const bounded = scout.bound(aim, held, Number.POSITIVE_INFINITY, remaining);
      if (!bounded) return [];
      best = Math.max(best, Math.ceil(bounded.linear.bound));
      if (aim.amount === 'kept') return rodsKept(outer, sets, bounded.linear.likely);
      scout.narrow(bounded, best);
    }
    held.push({ aim, reached: best, bound: best });
  }
  return [];
}

const rodOf = ({ table }: WorkingSets, { site, kept }: Reunion): Wish[] => {
  const { rod } = table.problem.kept[kept]!;
  return rod ? [{ engine: table.sites[site]!.engine, rod }] : [];
};

/** The rods behind columns of parts that ran together. */
export function rodsKept({ bridge }: ModelSide, sets: WorkingSets, columns: readonly Column[]): Wish[] {
  return bridge.reunions(columns).flatMap((fit) => rodOf(sets, fit));
}

/** Those of them that are not kept by the sets at hand. */
export function rodsApart({ bridge }: ModelSide, sets: WorkingSets, columns: readonly Column[]): Wish[] {
  const apart = bridge.reunions(columns).filter((fit) => !sets.isChosen(fit.site, fit));
  return apart.flatMap((fit) => rodOf(sets, fit));
}

/** The side that sets are made from: the outer one where its every whole-number solution keeps the rules. */
export function innerSide(search: LargeSearch, outer: ModelSide, aims: readonly Aim[]): ModelSide {
  const { stock, sets } = search;
  const { problem } = sets.table;
  if (problem.windows.size === 0) return stock.inner === stock.outer ? outer : sideOf(search, problem);
  const grouped = (wishes: readonly Wish[]) => {
    const groups = massGroupsOf(stock.inner, wishes);
    const side = sideOf(search, problemOf(stock.inner, { merge: true, groups }));
    startFrom(side, search);
    return side;
  };
  const side = grouped([]);
  // The last aim is worth a look ahead only where the first ones do not need the time.
  const wishes = sets.isFull() && problem.kept.length > 0 ? wishesOf(outer, search, aims) : [];
  return wishes.length === 0 ? side : grouped(wishes);
}

/** The rods that the engines have; of alike ones each has its own where it keeps it, else the first that is free. */
function rodsNow(sets: WorkingSets): Wish[] {
  const { sites, problem, together } = sets.table;
  const named = new Map<number, StockRod>();
  for (const fit of together) {
    const { rod } = problem.kept[fit.kept]!;
    if (rod && sets.isChosen(fit.site, fit)) named.set(fit.site, rod);
  }
  const taken = new Set(named.values());
  const free = problem.rods.map(({ rods }) => rods.filter((rod) => !taken.has(rod)));
  return sets.choices.flatMap((choice, site) => {
    if (!choice || choice.rod === NO_ROD) return [];
    const rod = named.get(site) ?? free[choice.rod]!.shift();
    return rod ? [{ engine: sites[site]!.engine, rod }] : [];
  });
}

/** A side of other groups of masses, about the sets at hand. */
export function regroupedSide(search: LargeSearch, wishes: readonly Wish[], how: Regrouping): ModelSide {
  const { inner } = search.stock;
  const groups = regroup(inner, rodsNow(search.sets), wishes, how);
  return sideOf(search, problemOf(inner, { merge: true, groups }));
}
