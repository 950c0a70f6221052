/**
 * The aims of a large stock.
 *
 * Its sets come from the same search as those of a small one. Its bounds come from a linear program
 * in which journals of equal values are one class whatever their engine, so that it grows with the
 * kinds of parts and not with their number; the mass of rods is left out of it, which can only make
 * the bound better than what is possible, never worse. No whole-number program is tried.
 */
import { type Aim, greatestCommonDivisor } from './aims.js';
import { countOf, tryOut } from './counts.js';
import { improveByKicks, improveByReunions } from './kicks.js';
import type { Wish } from './mass-groups.js';
import { REGROUPINGS, type Regrouping } from './mass-regroups.js';
import type { Column } from './model-columns.js';
import { distanceStep } from './problem.js';
import type { Bounded } from './relaxation.js';
import {
  innerSide,
  type LargeSearch,
  outerSide,
  regroupedSide,
  rodsApart,
  rodsKept,
  type Side,
} from './sides.js';
import { FIRST_KICKS, LATER_SHARE, MORE_KICKS, plainBound, type Reached } from './stages.js';
import type { WorkingSets } from './working-sets.js';

/** Share of the time that the first kicks may take, where the plain search leaves journals empty. */
const FIRST_SHARE = 0.3;

/** Share of the time left that a bound may take. */
const BOUND_SHARE = 0.6;

/** Share of the time left that a whole-number program may take. */
const PROGRAM_SHARE = 0.5;

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

/** The rods wished for are tried in so many parts. */
const BATCHES = 8;

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
  if (!sets.isFull()) {
    const share = remaining() * (1 - FIRST_SHARE);
    improveByKicks(sets, {
      idle: FIRST_KICKS,
      remaining: () => remaining() - share,
      done: () => sets.isFull(),
    });
  }
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
      // What the bound leaves open is the programs' and the kicks': they get their share.
      const rest = left() * (1 - BOUND_SHARE);
      return relaxation.bound(aim, stages, value(), () => left() - rest);
    };
    const tryGroups = (wishes: readonly Wish[], how: Regrouping) => {
      if (!isOpen()) return;
      const side = regroupedSide(search, wishes, how);
      const open = boundOf(side);
      if (open) improveByPrograms(side, open, sets, left, values);
    };
    /** Other groups about the sets at hand: for all wished rods at once, then for some of those not had yet, until none helps. */
    const regroupAll = (columns: readonly Column[]) => {
      if (sets.table.problem.windows.size === 0) return;
      for (const how of REGROUPINGS) tryGroups(rodsKept(outer, sets, columns), how);
      for (let before = Number.POSITIVE_INFINITY; isOpen() && value() < before; ) {
        before = value();
        const apart = rodsApart(outer, sets, columns);
        const size = Math.max(1, Math.ceil(apart.length / BATCHES));
        for (let start = 0; start < apart.length; start += size)
          tryGroups(apart.slice(start, start + size), 'fullest');
      }
    };
    if (isOpen()) {
      const bounded = boundOf(outer);
      if (bounded) bound = Math.max(bound, Math.ceil(bounded.linear.bound));
      const open = inner === outer || !isOpen() ? bounded : boundOf(inner);
      if (open && isOpen()) improveByPrograms(inner, open, sets, left, values);
      regroupAll(bounded?.linear.likely ?? []);
      if (bounded && isOpen()) improveByReunions(sets, outer.bridge.reunions(bounded.linear.likely), left);
      if (isOpen()) improveByKicks(sets, { idle: MORE_KICKS, remaining: left, done: () => !isOpen() });
      regroupAll(bounded?.linear.likely ?? []);
      if (bounded) outer.relaxation.narrow(bounded, value());
      if (open && inner !== outer) inner.relaxation.narrow(open, value());
    }
    const reached = value();
    stages.push({ aim, reached, bound });
    yield { aim, reached, bound };
  }
}
