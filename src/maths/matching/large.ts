/**
 * The aims of a large stock.
 *
 * Its sets come from the same search as those of a small one. Its bounds come from a linear program
 * in which journals of equal values are one class whatever their engine, so that it grows with the
 * kinds of parts and not with their number; the mass of rods is left out of it, but for pairs that no
 * crank can keep both of, which can only make the bound better than what is possible, never worse. Where that
 * leaves a gap and the cranks are not too many, a second one fills them as a whole, masses and all.
 * Whole-number programs find sets; one that leaves no fit of use out, where masses play no part, proves them too.
 */
import { type Aim, greatestCommonDivisor } from './aims.js';
import { improveByKicks, improveByReunions } from './kicks.js';
import { knownBound, plainBound } from './known-bounds.js';
import { OpenAim } from './open-aim.js';
import { improveByPortions, MOST_IN_PORTION } from './portions.js';
import { distanceStep } from './problem.js';
import type { Bounded } from './relaxation.js';
import { innerSide, type LargeSearch, type ModelSide, outerSide, wholeSide } from './sides.js';
import type { Reached } from './stage.js';
import { FIRST_KICKS, FIRST_SHARE, LATER_SHARE, MORE_KICKS } from './stages.js';

/** Spaces of the first wide programs, some of every kind, and of the last ones. */
const SOME_SPACES = 5_000;
const ALL_SPACES = 50_000;

interface Sides {
  readonly outer: ModelSide;
  readonly inner: ModelSide;
  /** Made when it is first asked for. */
  readonly whole: () => ModelSide | undefined;
}

function sidesOf(search: LargeSearch, outer: ModelSide, aims: readonly Aim[]): Sides {
  let whole: { readonly side: ModelSide | undefined } | undefined;
  return {
    outer,
    inner: innerSide(search, outer, aims),
    whole: () => {
      whole ??= { side: wholeSide(search) };
      return whole.side;
    },
  };
}

/** Better sets for one aim and better bounds of it, until they meet or nothing helps any more. */
function close(search: LargeSearch, { outer, inner, whole }: Sides, open: OpenAim): void {
  const { sets } = search;
  const { left } = open;
  const bounded = open.boundOf(outer);
  if (bounded) open.prove(bounded.linear.bound);
  const ofInner = inner === outer ? bounded : open.isOpen() ? open.boundOf(inner) : undefined;
  const likely = bounded?.linear.likely ?? [];
  const reunions = outer.bridge.reunions(likely);
  const widely = (ofSide: Bounded, spaces: number) => {
    const proven = open.improveWidely(inner, ofSide, spaces);
    if (inner === outer) open.prove(proven);
  };
  // Journals that stay empty need fits of all kinds; else those of the linear program mostly do.
  if (ofInner && !sets.isFull()) widely(ofInner, SOME_SPACES);
  if (ofInner) open.improveByPrograms(inner, ofInner);
  const many = search.stock.inner.engines.length >= 2 * MOST_IN_PORTION;
  if (many) improveByPortions(search, open, reunions);
  open.regroupAtOnce(outer, likely);
  const ofWhole = open.isOpen() ? whole() : undefined;
  const boundedWhole = ofWhole && open.boundOf(ofWhole);
  if (boundedWhole) open.prove(boundedWhole.linear.bound);
  open.regroupAll(outer, likely);
  if (!many) improveByPortions(search, open, reunions);
  if (open.isOpen()) improveByReunions(sets, reunions, left);
  if (open.isOpen()) improveByKicks(sets, { idle: MORE_KICKS, remaining: left, done: () => !open.isOpen() });
  open.regroupAll(outer, likely);
  if (ofInner) widely(ofInner, ALL_SPACES);
  if (bounded) outer.relaxation.narrow(bounded, open.value());
  if (ofInner && inner !== outer) inner.relaxation.narrow(ofInner, open.value());
}

/**
 * Pursues the aims in order, beginning with the sets at hand; pauses after each.
 * @param known what an earlier search has proven of the first aims: of each, if those before it are reached alike
 */
export function* pursueLarge(
  search: LargeSearch,
  given: readonly Aim[],
  known: readonly Reached[] = [],
): Generator<Reached, void> {
  const { sets, remaining } = search;
  const outer = outerSide(search);
  const { model } = outer.relaxation;
  const step = distanceStep(model.problem);
  // The bound has fits that the search has not: its distances may need a smaller step.
  const aims = given.map((aim) =>
    aim.amount === 'distance' ? { ...aim, step: greatestCommonDivisor([aim.step, step]) } : aim,
  );
  const sides = sidesOf(search, outer, aims);
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
    const rest = place === aims.length - 1 ? 0 : remaining() * LATER_SHARE;
    const open = new OpenAim(search, aims.slice(0, place + 1), stages, () => remaining() - rest);
    open.prove(plainBound(model, aim, sets.value().complete));
    const before = knownBound(aim, known, stages);
    if (before !== undefined) open.prove(before);
    if (open.isOpen()) close(search, sides, open);
    const stage = open.reached();
    stages.push(stage);
    yield stage;
  }
}
