/**
 * The two models of classes of a large stock. The outer one relaxes the rules, and gives the bounds. The inner one
 * restricts them: each of its whole-number solutions keeps the rules, and gives sets.
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

/** The stock without a mass spread; what masses do to pairs that ran together is told apart (rodsNeverTogether). */
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

/** A model of classes, with the translation to the sets of the search. */
export interface ModelSide {
  readonly relaxation: Relaxation;
  readonly bridge: Bridge;
}

/** The relaxation without masses: it allows all that the rules allow. */
export function outerSide({ solver, stock, sets }: LargeSearch): ModelSide {
  const model = modelOf(
    problemOf(withoutMasses(stock.outer), { merge: true, neverTogether: rodsNeverTogether(stock.outer) }),
  );
  return {
    relaxation: new Relaxation(solver, model),
    bridge: new Bridge(model, sets.table, twinsOf(stock)),
  };
}

/** Whole cranks of more journals than these take too long to price. */
const MOST_IN_WHOLE_CRANKS = 250;

/** The relaxation with masses: cranks are filled as a whole. Undefined where masses do not matter. */
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

/** The side of a problem of the search's own rows. */
function sideOf({ solver, sets }: LargeSearch, problem: Problem): ModelSide {
  const model = modelOf(problem);
  return { relaxation: new Relaxation(solver, model), bridge: new Bridge(model, sets.table, new Map()) };
}

/** The greedy start among the fits of a model; its sets replace those at hand where they are better. */
function startFrom({ relaxation, bridge }: ModelSide, { sets, remaining }: LargeSearch): void {
  const { model, pool } = relaxation;
  const own = new WorkingSets(new FitTable(model.problem));
  plainSearch(own, remaining);
  const toModel = new Bridge(model, own.table, new Map());
  for (const quad of toModel.quadsOf(own)) pool.add(quad);
  if (compareValues(own.value(), sets.value()) >= 0) return;
  const values = () => {
    const { complete, open, beyond, cost } = sets.value();
    return [-complete, -open, -beyond, cost];
  };
  tryOut(sets, () => bridge.fromTaken(toModel.toTaken(own), sets), values);
}

/** The rods that engines keep in the linear bound of the last aim, where every aim before it reaches its bound. */
function wishesOf(outer: ModelSide, { solver, sets, remaining }: LargeSearch, aims: readonly Aim[]): Wish[] {
  const { model, pool } = outer.relaxation;
  const scout = new Relaxation(solver, model, pool);
  for (const quad of outer.bridge.quadsOf(sets)) pool.add(quad);
  const held: Reached[] = [];
  for (const aim of aims) {
    let best = plainBound(model, aim, sets.value().complete, held);
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

/** Those of them that the sets at hand do not keep. */
export function rodsApart({ bridge }: ModelSide, sets: WorkingSets, columns: readonly Column[]): Wish[] {
  const apart = bridge.reunions(columns).filter((fit) => !sets.isChosen(fit.site, fit));
  return apart.flatMap((fit) => rodOf(sets, fit));
}

/**
 * The restriction that sets come from: the outer side itself where each of its whole-number solutions keeps the
 * rules.
 */
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
  // Looking ahead to the last aim takes time that the first ones need where journals are empty.
  const wishes = sets.isFull() && problem.kept.length > 0 ? wishesOf(outer, search, aims) : [];
  return wishes.length === 0 ? side : grouped(wishes);
}

/** The rods that the engines have. Of alike rods an engine has the one that it keeps, else the first free one. */
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

/** A side of other groups of masses that allow the sets at hand. */
export function regroupedSide(search: LargeSearch, wishes: readonly Wish[], how: Regrouping): ModelSide {
  const { inner } = search.stock;
  const groups = regroup(inner, rodsNow(search.sets), wishes, how);
  return sideOf(search, problemOf(inner, { merge: true, groups }));
}
