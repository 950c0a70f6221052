/**
 * Values that agree with each other: single linkage, in which neighbours in order of size belong together where they
 * lie no farther apart than a margin. Common practice, no published source.
 */
import type { Grain } from './grain.js';

/**
 * Splits values into groups that agree.
 * @returns the places of the values in the list, each group in the order of the list, the groups by their first value
 */
export function agreeingGroups(values: readonly Grain[], margin: Grain): number[][] {
  const bySize = values.map((_, at) => at).sort((a, b) => values[a]! - values[b]! || a - b);
  const groups: number[][] = [];
  bySize.forEach((at, order) => {
    const before = bySize[order - 1];
    if (before !== undefined && values[at]! - values[before]! <= margin) groups.at(-1)!.push(at);
    else groups.push([at]);
  });
  for (const group of groups) group.sort((a, b) => a - b);
  return groups.sort((a, b) => a[0]! - b[0]!);
}

/** A group of sizes, from the least to the greatest of them. */
export interface SizeGroup {
  readonly low: Grain;
  readonly high: Grain;
  readonly count: number;
}

/** The groups of a list of any length, in order of size. */
export function sizeGroups(sizes: readonly Grain[], margin: Grain): SizeGroup[] {
  const groups: { low: Grain; high: Grain; count: number }[] = [];
  for (const size of Float64Array.from(sizes).sort()) {
    const last = groups.at(-1);
    if (last && size - last.high <= margin) {
      last.high = size;
      last.count++;
    } else groups.push({ low: size, high: size, count: 1 });
  }
  return groups;
}

/** The group that a size lies in, or no farther off than a margin; of groups on both sides the lower. */
export function groupAt(groups: readonly SizeGroup[], size: Grain, margin: Grain = 0): SizeGroup | undefined {
  let [from, to] = [0, groups.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (groups[middle]!.high + margin < size) from = middle + 1;
    else to = middle;
  }
  const found = groups[from];
  return found && found.low - margin <= size ? found : undefined;
}

/** The group that holds more sizes than any other; undefined where two hold as many. */
export function largestGroup(groups: readonly SizeGroup[]): SizeGroup | undefined {
  let largest: SizeGroup | undefined;
  let isAlone = true;
  for (const group of groups) {
    if (group.count < (largest?.count ?? 0)) continue;
    isAlone = group.count > (largest?.count ?? 0);
    largest = group;
  }
  return isAlone ? largest : undefined;
}
