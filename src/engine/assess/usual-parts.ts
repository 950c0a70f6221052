/** What the measured parts of one kind are like: their sizes, and the gauge that most of them were measured with. */
import type { Grain } from '../../maths/grain.js';
import type { Measure, Window } from '../../maths/suggestions/windows.js';
import { CERTAIN, readVariance, temperatureVariance } from '../../maths/uncertainty.js';
import { nameKey } from '../book/names.js';
import { groupBy } from './context.js';
import type { PartResult } from './part-result.js';
import { reasonNotUsed } from './stock.js';

/** Parts of the kind itself; where none is measured, the next best ones. */
export function measuredAmong(...choices: (readonly PartResult[])[]): readonly PartResult[] {
  const measured = choices.map((parts) => parts.filter((part) => part.measured));
  return measured.find((parts) => parts.length > 0) ?? [];
}

/** A part that is alike at every spot and read once with the gauge of most of these; of gauges used alike the first by name. */
export function measureOf(parts: readonly PartResult[]): Measure {
  const groups = [...groupBy(parts, ({ row }) => nameKey(row.gauge ?? ''))];
  groups.sort(([a, own], [b, other]) => other.length - own.length || (a < b ? -1 : 1));
  const sample = groups[0]?.[1][0];
  const gauge = sample?.gauge;
  if (!gauge) return (size) => ({ ...CERTAIN, size, largest: size, smallest: size });
  const expansion = sample.expansion?.value ?? 0;
  const { systematic } = gauge;
  const variance = readVariance(gauge.random, 1);
  return (size) => ({
    ...{ ...CERTAIN, size, largest: size, smallest: size, systematic },
    readVariance: variance,
    temperatureVariance: temperatureVariance(expansion, size),
  });
}

/** Sizes of the parts that may be used, sorted. */
export function sizesOf(parts: readonly PartResult[]): Grain[] {
  return parts
    .filter((part) => reasonNotUsed(part) === undefined)
    .flatMap(({ form }) => form?.size ?? [])
    .sort((a, b) => a - b);
}

/** The one in the middle, of an even count the lower. */
export function medianOf(sorted: readonly Grain[]): Grain | undefined {
  return sorted[Math.floor((sorted.length - 1) / 2)];
}

export function rangeOf(sorted: readonly Grain[]): Window | undefined {
  return sorted.length === 0 ? undefined : { from: sorted[0]!, to: sorted.at(-1)! };
}
