/**
 * Pairs of half-shells, and their shapes: classes of pairs that no space can tell apart.
 *
 * 150 uppers and 150 lowers make 22,500 pairs, and only some hundred shapes. A shape is the sums of the two walls
 * (size, largest, smallest), how they were measured, and the terms that follow their sizes as far as they change a rounded guard.
 */
import type { Grain } from '../grain.js';
import type { MeasuredPart } from '../uncertainty.js';
import { isBroughtAlike } from './brought-shells.js';
import { keyOfKind, type ShellClass } from './part-classes.js';
import { type SizeTerms, sizeTerms, type TermsRange, widened } from './size-terms.js';
import type { Space } from './spaces.js';
import { type MeasuredAlike, measuredAlike, type ProvableLimits, type StockGuards } from './verdicts.js';

/** Classes of the two shells; `upper` = `lower` takes two of one class, or a pair of a class of pairs. */
export interface ShellPair {
  readonly upper: number;
  readonly lower: number;
}

export interface PairShape {
  readonly kind: string;
  /** Both are in a bore that was measured with them. */
  readonly isBrought: boolean;
  readonly size: Grain;
  readonly largest: Grain;
  readonly smallest: Grain;
  readonly alike: MeasuredAlike;
  /** Least and greatest terms of its pairs; every space rounds both to one guard, where walls have no expansion to add. */
  terms: TermsRange;
  readonly pairs: ShellPair[];
}

/** The walls of a pair of two classes, or of one class of pairs. */
function wallsOf(shells: readonly ShellClass[], { upper, lower }: ShellPair): [MeasuredPart, MeasuredPart] {
  const up = shells[upper]!;
  return [up.part, up.half === 'pair' ? up.otherPart : shells[lower]!.part];
}

/** Whether two half-shells may stand with each other, whatever their walls. */
function areMates(a: ShellClass, b: ShellClass, newWithUsed: boolean): boolean {
  if (a.mates !== b.mates || !isBroughtAlike(a, b)) return false;
  return newWithUsed || (a.bought === undefined) === (b.bought === undefined);
}

/** The pairs of one kind; two `either` classes make one pair, not two. */
function* pairsOf(
  shells: readonly ShellClass[],
  kind: string,
  { halfDifference }: ProvableLimits,
  newWithUsed: boolean,
): Generator<ShellPair> {
  const isNear = (pair: ShellPair) => {
    const [up, down] = wallsOf(shells, pair);
    return halfDifference === undefined || Math.abs(up.size - down.size) <= halfDifference;
  };
  const ofKind = [...shells.keys()].filter((shell) => keyOfKind(shells[shell]!) === kind);
  const own = ofKind.filter((shell) => shells[shell]!.half !== 'pair');
  for (const upper of own) {
    const up = shells[upper]!;
    if (up.half === 'lower') continue;
    for (const lower of own) {
      const down = shells[lower]!;
      if (down.half === 'upper') continue;
      if (up.half === 'either' && down.half === 'either' && lower < upper) continue;
      if (upper === lower && up.count < 2) continue;
      if (areMates(up, down, newWithUsed) && isNear({ upper, lower })) yield { upper, lower };
    }
  }
  for (const pair of ofKind) {
    const asOne = { upper: pair, lower: pair };
    if (shells[pair]!.half === 'pair' && isNear(asOne)) yield asOne;
  }
}

/** How many of the sorted steps are below a value. */
function stepsBelow(steps: readonly number[], value: number): number {
  let [low, high] = [0, steps.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (steps[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The own terms of a pair at which a rounded guard of some space changes, sorted. */
function guardSteps(
  spaces: readonly Space[],
  guards: StockGuards,
  alike: MeasuredAlike,
  { least, greatest }: TermsRange,
): number[] {
  const steps = new Set<number>();
  for (const space of spaces) {
    for (const step of guards.stepsBetween(space, alike, least.own, greatest.own)) steps.add(step);
  }
  return [...steps].sort((a, b) => a - b);
}

interface MeasuredPair {
  readonly pair: ShellPair;
  readonly terms: SizeTerms;
}

/** All shapes of one kind. Their order depends on the order of the shells alone. */
export function shapesOf(
  shells: readonly ShellClass[],
  kind: string,
  limits: ProvableLimits,
  spaces: readonly Space[],
  guards: StockGuards,
  newWithUsed: boolean,
): PairShape[] {
  const groups = new Map<
    string,
    { isBrought: boolean; alike: MeasuredAlike; terms: TermsRange; pairs: MeasuredPair[] }
  >();
  for (const pair of pairsOf(shells, kind, limits, newWithUsed)) {
    const [up, down] = wallsOf(shells, pair);
    const alike = measuredAlike(up, down);
    const terms = sizeTerms([
      { sign: -1, part: up },
      { sign: -1, part: down },
    ]);
    const { isBrought } = shells[pair.upper]!;
    const key = `${isBrought}/${alike.key}/${terms.gauges.map(({ gauge }) => gauge).join('/')}`;
    const group = groups.get(key);
    groups.set(key, {
      isBrought,
      alike: group?.alike ?? alike,
      terms: widened(group?.terms, terms),
      pairs: group?.pairs ?? [],
    });
    groups.get(key)!.pairs.push({ pair, terms });
  }
  const shapes: PairShape[] = [];
  for (const { isBrought, alike, terms: range, pairs } of groups.values()) {
    const steps = guardSteps(spaces, guards, alike, range);
    const known = new Map<string, PairShape>();
    for (const { pair, terms } of pairs) {
      const [up, down] = wallsOf(shells, pair);
      const size = up.size + down.size;
      const largest = up.largest + down.largest;
      const smallest = up.smallest + down.smallest;
      const key = `${size},${largest},${smallest},${stepsBelow(steps, terms.own)}`;
      let shape = known.get(key);
      if (!shape) {
        shape = {
          kind,
          isBrought,
          size,
          largest,
          smallest,
          alike,
          terms: widened(undefined, terms),
          pairs: [],
        };
        known.set(key, shape);
        shapes.push(shape);
      }
      shape.terms = widened(shape.terms, terms);
      shape.pairs.push(pair);
    }
  }
  return shapes;
}
