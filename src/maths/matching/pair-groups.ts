/** Pairs of shells as a search goes through them: the cheapest price first, of one price by size. */

export interface PairOfKind {
  readonly upper: number;
  readonly lower: number;
}

/** Pairs of one kind and one price, by the sum of their sizes. */
export interface PairGroup {
  readonly price: number;
  readonly pairs: readonly PairOfKind[];
  readonly sizes: Float64Array;
}

export function pairGroupsOf(
  pairs: readonly PairOfKind[],
  priceOf: (pair: PairOfKind) => number,
  sizeOf: (pair: PairOfKind) => number,
): PairGroup[] {
  const byPrice = new Map<number, PairOfKind[]>();
  for (const pair of pairs) {
    const price = priceOf(pair);
    const own = byPrice.get(price);
    if (own) own.push(pair);
    else byPrice.set(price, [pair]);
  }
  return [...byPrice]
    .sort(([a], [b]) => a - b)
    .map(([price, own]) => {
      own.sort((a, b) => sizeOf(a) - sizeOf(b) || a.upper - b.upper || a.lower - b.lower);
      return { price, pairs: own, sizes: Float64Array.from(own, sizeOf) };
    });
}

/** Place of the first size that is no less than another; the length of the list where all are less. */
export function firstAtLeast(sizes: Float64Array, size: number): number {
  let [low, high] = [0, sizes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sizes[middle]! >= size) high = middle;
    else low = middle + 1;
  }
  return low;
}
