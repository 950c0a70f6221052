/** A sequence that looks random and is the same in every run, so that one stock gives one result. */
export type Sequence = () => number;

/** Numbers from 0 up to but not including 1. Mulberry32, a 32-bit mixing generator in the public domain. */
export function sequenceOf(seed: number): Sequence {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export function shuffled<Item>(next: Sequence, items: readonly Item[]): Item[] {
  const result = [...items];
  for (let last = result.length - 1; last > 0; last--) {
    const other = Math.floor(next() * (last + 1));
    [result[last], result[other]] = [result[other]!, result[last]!];
  }
  return result;
}
