/**
 * The aims of a large stock.
 *
 * Its bounds come from a linear program in which journals of equal values are one class, whatever their engine: it
 * grows with the number of different values, not with the number of parts. That program is a relaxation. It knows of
 * the masses of rods only which pairs of rods that ran together no crank can keep. Where it leaves a gap and the
 * cranks are few enough, a second program has a column for each filling of a whole crank, masses included.
 * Whole-number programs find sets. Without a mass spread, one that leaves out no fit which could improve them is a
 * proof as well.
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

/** Spaces in the first wide programs, and in the last ones. */
const SOME_SPACES = 5_000;
const ALL_SPACES = 50_000;

interface Sides {
  readonly outer: ModelSide;
  readonly inner: ModelSide;
  /** Built at its first use. */
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

/** Improves the sets and the bound of one aim until they meet, or until nothing improves them. */
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
  // To fill empty journals a program needs fits of all kinds. Where none is empty, those of the linear program mostly
  // suffice.
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
 * Pursues the aims in order, beginning with the sets at hand; yields what each reached.
 * @param known what an earlier search has proven of the first aims (known-bounds.ts)
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
  // The model of the bound has fits that the search does not have: its distances may need a smaller step.
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
    open.prove(plainBound(model, aim, sets.value().complete, stages));
    const before = knownBound(aim, known, stages);
    if (before !== undefined) open.prove(before);
    if (open.isOpen()) close(search, sides, open);
    const stage = open.reached();
    stages.push(stage);
    for (const { relaxation } of new Set([sides.outer, sides.inner])) relaxation.force(aim, stage.reached);
    yield stage;
  }
}
