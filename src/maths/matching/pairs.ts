/**
 * Pairs of half-shells, and their shapes: classes of pairs that no space can tell apart.
 *
 * 150 uppers and 150 lowers make 22,500 pairs, and only some hundred shapes. A shape is the sums of the two walls
 * (size, largest, smallest), their gauges, and the random variance as far as it changes a rounded guard.
 */
import type { Grain } from '../grain.js';
import { keyOfKind, type ShellClass } from './part-classes.js';
import type { Space } from './spaces.js';
import { type GaugePair, type Guards, gaugePair, type ProvableLimits } from './verdicts.js';

/** Classes of the two shells; `upper` = `lower` takes two of one class. */
export interface ShellPair {
  readonly upper: number;
  readonly lower: number;
}

export interface PairShape {
  readonly kind: string;
  readonly size: Grain;
  readonly largest: Grain;
  readonly smallest: Grain;
  readonly gauges: GaugePair;
  /** Least and greatest random variance of its pairs; every space rounds both to one guard. */
  leastVariance: number;
  greatestVariance: number;
  readonly pairs: ShellPair[];
}

function canPair(a: ShellClass, b: ShellClass, halfDifference: Grain | undefined): boolean {
  return halfDifference === undefined || Math.abs(a.part.size - b.part.size) <= halfDifference;
}

/** The pairs of one kind; two `either` classes make one pair, not two. */
function* pairsOf(
  shells: readonly ShellClass[],
  kind: string,
  { halfDifference }: ProvableLimits,
): Generator<ShellPair> {
  const own = [...shells.keys()].filter((shell) => keyOfKind(shells[shell]!) === kind);
  for (const upper of own) {
    const up = shells[upper]!;
    if (up.half === 'lower') continue;
    for (const lower of own) {
      const down = shells[lower]!;
      if (down.half === 'upper') continue;
      if (up.half === 'either' && down.half === 'either' && lower < upper) continue;
      if (upper === lower && up.count < 2) continue;
      if (canPair(up, down, halfDifference)) yield { upper, lower };
    }
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

/** The variances of a pair at which the rounded guard of some space changes, sorted. */
function guardSteps(
  spaces: readonly Space[],
  guards: Guards,
  gauges: GaugePair,
  [least, greatest]: readonly [number, number],
): number[] {
  const steps = new Set<number>();
  for (const space of spaces) {
    const other = space.spotVariance + guards.gaugeVariance(space.gauges, gauges);
    for (const step of guards.stepsBetween(other + least, other + greatest)) steps.add(step - other);
  }
  return [...steps].sort((a, b) => a - b);
}

interface MeasuredPair {
  readonly pair: ShellPair;
  readonly variance: number;
}

/** All shapes of one kind. Their order depends on the order of the shells alone. */
export function shapesOf(
  shells: readonly ShellClass[],
  kind: string,
  limits: ProvableLimits,
  spaces: readonly Space[],
  guards: Guards,
): PairShape[] {
  const byGauges = new Map<string, { gauges: GaugePair; pairs: MeasuredPair[] }>();
  for (const pair of pairsOf(shells, kind, limits)) {
    const [up, down] = [shells[pair.upper]!.part, shells[pair.lower]!.part];
    const gauges = gaugePair(up, down);
    const group = byGauges.get(gauges.key) ?? { gauges, pairs: [] };
    group.pairs.push({ pair, variance: up.spotVariance + down.spotVariance });
    byGauges.set(gauges.key, group);
  }
  const shapes: PairShape[] = [];
  for (const { gauges, pairs } of byGauges.values()) {
    const least = pairs.reduce((low, { variance }) => Math.min(low, variance), Number.POSITIVE_INFINITY);
    const greatest = pairs.reduce((high, { variance }) => Math.max(high, variance), 0);
    const steps = guardSteps(spaces, guards, gauges, [least, greatest]);
    const known = new Map<string, PairShape>();
    for (const { pair, variance } of pairs) {
      const [up, down] = [shells[pair.upper]!.part, shells[pair.lower]!.part];
      const size = up.size + down.size;
      const largest = up.largest + down.largest;
      const smallest = up.smallest + down.smallest;
      const key = `${size},${largest},${smallest},${stepsBelow(steps, variance)}`;
      let shape = known.get(key);
      if (!shape) {
        const variances = { leastVariance: variance, greatestVariance: variance };
        shape = { kind, size, largest, smallest, gauges, ...variances, pairs: [] };
        known.set(key, shape);
        shapes.push(shape);
      }
      shape.leastVariance = Math.min(shape.leastVariance, variance);
      shape.greatestVariance = Math.max(shape.greatestVariance, variance);
      shape.pairs.push(pair);
    }
  }
  return shapes;
}
