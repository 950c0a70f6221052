/** The order in which the fasteners of a group are tightened: 1, 2, 3 … without a gap or a double. No unit. */

/** From and to, both missing. */
export type MissingNumbers = readonly [from: number, to: number];

export interface OrderFaults {
  /** Numbers that stand more than once, in order. */
  readonly doubled: readonly number[];
  readonly missing: readonly MissingNumbers[];
}

/** @param numbers whole numbers from 1 */
export function orderFaults(numbers: readonly number[]): OrderFaults {
  const sorted = [...numbers].sort((a, b) => a - b);
  const doubled = new Set<number>();
  const missing: MissingNumbers[] = [];
  let last = 0;
  for (const number of sorted) {
    if (number === last) doubled.add(number);
    else if (number > last + 1) missing.push([last + 1, number - 1]);
    last = number;
  }
  return { doubled: [...doubled], missing };
}

/**
 * The place of a fastener in the order of loosening, which is that of tightening turned round; undefined where that
 * order is not whole.
 */
export function looseningPlace(number: number, numbers: readonly number[]): number | undefined {
  const { doubled, missing } = orderFaults(numbers);
  return doubled.length > 0 || missing.length > 0 ? undefined : numbers.length + 1 - number;
}
