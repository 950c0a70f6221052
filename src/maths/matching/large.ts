/**
 * The aims of a large stock.
 *
 * Its sets come from the same search as those of a small one. Its bounds come from a linear program
 * in which journals of equal values are one class whatever their engine, so that it grows with the
 * kinds of parts and not with their number; the mass of rods is left out of it, which can only make
 * the bound better than what is possible, never worse. No whole-number program is tried.
 */
import { type Aim, greatestCommonDivisor } from './aims.js';
import { Bridge, twinsOf } from './bridge.js';
import { FitTable } from './fit-table.js';
import type { StockOnGrid } from './grid.js';
import { improveByKicks, improveByReunions } from './kicks.js';
import { massGroupsOf, type Wish } from './mass-groups.js';
import { type Column, type Model, modelOf } from './model-columns.js';
import { plainSearch } from './plain-search.js';
import { distanceStep, type Problem, problemOf } from './problem.js';
import { type Bounded, Relaxation } from './relaxation.js';
import type { Solver } from './solver.js';
import { LATER_SHARE, MORE_KICKS, plainBound, type Reached } from './stages.js';
import type { Stock, StockRod } from './stock.js';
import { compareValues, WorkingSets } from './working-sets.js';

/** The stock as if the masses of its rods played no part. */
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

/** What the sets amount to for an aim, in its steps, minimised. */
function countOf({ amount, sign, step }: Aim, sets: WorkingSets): number {
  const { table, choices } = sets;
  const { complete, beyond } = sets.value();
  if (amount === 'completeEngines') return 0 - complete;
  if (amount === 'filledBeyond') return 0 - beyond;
  const sum = choices.reduce((total, choice, site) => {
    if (!choice) return total;
    if (amount === 'price') return total + table.price(choice.upper, choice.lower);
    if (amount === 'distance') return total + table.distance(site, choice);
    return total + Number(table.isKept(site, choice.rod, choice.upper, choice.lower));
  }, 0);
  return (sign * sum) / step + 0;
}

/** Share of the time left that a whole-number program may take. */
const PROGRAM_SHARE = 0.5;

/** Whether the first value that differs is lower. */
function isBetter(values: readonly number[], than: readonly number[]): boolean {
  const place = values.findIndex((value, at) => value !== than[at]);
  return place >= 0 && values[place]! < than[place]!;
}

/** Lets a change stand only where it makes the sets better. */
function tryOut(sets: WorkingSets, change: () => void, values: () => readonly number[]): void {
  const before = [...sets.choices];
  const old = values();
  change();
  if (!isBetter(values(), old)) sets.copyFrom(before);
}

export interface LargeSearch {
  readonly solver: Solver;
  readonly stock: StockOnGrid;
  readonly sets: WorkingSets;
  readonly remaining: () => number;
}

/** A model of classes, joined to the sets of the search. */
interface Side {
  readonly relaxation: Relaxation;
  readonly bridge: Bridge;
}

/** What no sets can beat: a model that allows all that the rules allow, and where masses are concerned more. */
function outerSide({ solver, stock, sets }: LargeSearch): Side {
  const model = modelOf(problemOf(withoutMasses(stock.outer), { merge: true }));
  return {
    relaxation: new Relaxation(solver, model),
    bridge: new Bridge(model, sets.table, twinsOf(stock)),
  };
}

/** A model whose every whole-number solution is sets that keep the rules. */
function sideOf({ solver, sets }: LargeSearch, problem: Problem): Side {
  const model = modelOf(problem);
  return { relaxation: new Relaxation(solver, model), bridge: new Bridge(model, sets.table, new Map()) };
}

/** The plain search among the fits of a model; its sets stand where they are better than those at hand. */
function startFrom({ relaxation, bridge }: Side, { sets, remaining }: LargeSearch): void {
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
  tryOut(sets, () => bridge.fromTaken(toModel.toTaken(own, pool), pool, sets), values);
}

/** The rods that engines keep where every aim reaches its bound; none where that is not to be seen. */
function wishesOf(outer: Side, { solver, sets, remaining }: LargeSearch, aims: readonly Aim[]): Wish[] {
  const { model, pool } = outer.relaxation;
  const scout = new Relaxation(solver, model, pool);
  for (const quad of outer.bridge.quadsOf(sets)) pool.add(quad);
  const held: Reached[] = [];
  for (const aim of aims) {
    let best = plainBound(model, aim, sets.value().complete);
    if (countOf(aim, sets) > best) {
      const bounded = scout.bound(aim, held, Number.POSITIVE_INFINITY, remaining);
      if (!bounded) return [];
      best = Math.max(best, Math.ceil(bounded.linear.bound));
      if (aim.amount === 'kept') return rodsKept(model, bounded.linear.likely);
      scout.narrow(bounded, best);
    }
    held.push({ aim, reached: best, bound: best });
  }
  return [];
}

function rodsKept({ problem: { kept, stock } }: Model, columns: readonly Column[]): Wish[] {
  return columns.flatMap(({ meaning }) => {
    if (meaning.is !== 'kept') return [];
    const { engine, rod } = kept[meaning.kept]!;
    return rod ? [{ engine: stock.engines.indexOf(engine), rod }] : [];
  });
}

/** The side that sets are made from: the outer one where its every whole-number solution keeps the rules. */
function innerSide(search: LargeSearch, outer: Side, aims: readonly Aim[]): Side {
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
  const wishes = problem.kept.length > 0 ? wishesOf(outer, search, aims) : [];
  const twins = new Map([...twinsOf(stock)].map(([own, other]) => [other, own]));
  if (wishes.length === 0) return side;
  return grouped(wishes.map(({ engine, rod }) => ({ engine, rod: twins.get(rod) as StockRod })));
}

/** Whole-number programs over the fits at hand: first those that sets at the bound could use, then all that could help. */
function improveByPrograms(
  { relaxation, bridge }: Side,
  bounded: Bounded,
  sets: WorkingSets,
  left: () => number,
  values: () => readonly number[],
): void {
  const value = () => values().at(-1)!;
  const best = Math.ceil(bounded.linear.bound);
  for (const tight of [true, false]) {
    if (left() <= 0 || value() <= best) return;
    const start = tight ? [] : bridge.toTaken(sets, relaxation.pool);
    const taken = relaxation.program(bounded, tight ? best : value() - 1, start, {
      seconds: left() * PROGRAM_SHARE,
    });
    if (taken) tryOut(sets, () => bridge.fromTaken(taken, relaxation.pool, sets), values);
  }
}

/** Pursues the aims in order, beginning with the sets at hand; pauses after each. */
export function* pursueLarge(search: LargeSearch, given: readonly Aim[]): Generator<Reached, void> {
  const { sets, remaining } = search;
  const outer = outerSide(search);
  const { model } = outer.relaxation;
  const step = distanceStep(model.problem);
  // The bound has fits that the search has not: its distances may need a smaller step.
  const aims = given.map((aim) =>
    aim.amount === 'distance' ? { ...aim, step: greatestCommonDivisor([aim.step, step]) } : aim,
  );
  const inner = innerSide(search, outer, aims);
  const stages: Reached[] = [];
  for (const [place, aim] of aims.entries()) {
    let bound = plainBound(model, aim, sets.value().complete);
    const values = () => aims.slice(0, place + 1).map((each) => countOf(each, sets));
    const value = () => countOf(aim, sets);
    const rest = place === aims.length - 1 ? 0 : remaining() * LATER_SHARE;
    const left = () => remaining() - rest;
    const isOpen = () => value() > bound && left() > 0;
    const boundOf = ({ relaxation, bridge }: Side) => {
      for (const quad of bridge.quadsOf(sets)) relaxation.pool.add(quad);
      return relaxation.bound(aim, stages, value(), left);
    };
    if (isOpen()) {
      const bounded = boundOf(outer);
      if (bounded) bound = Math.max(bound, Math.ceil(bounded.linear.bound));
      const open = inner === outer || !isOpen() ? bounded : boundOf(inner);
      if (open && isOpen()) improveByPrograms(inner, open, sets, left, values);
      if (bounded && isOpen()) improveByReunions(sets, outer.bridge.reunions(bounded.linear.likely), left);
      if (isOpen()) improveByKicks(sets, { idle: MORE_KICKS, remaining: left, done: () => !isOpen() });
      if (bounded) outer.relaxation.narrow(bounded, value());
      if (open && inner !== outer) inner.relaxation.narrow(open, value());
    }
    const reached = value();
    stages.push({ aim, reached, bound });
    yield { aim, reached, bound };
  }
}
