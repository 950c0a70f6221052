/** Random whole numbers that are the same at every run. */

export interface Random {
  /** A whole number from least to greatest, both included. */
  between(least: number, greatest: number): number;
  pick<Item>(items: readonly Item[]): Item;
}

/** Mulberry32: 32 bits of state, whole-number arithmetic only, the same on every machine. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
  const between = (least: number, greatest: number) => least + (next() % (greatest - least + 1));
  return { between, pick: (items) => items[between(0, items.length - 1)]! };
}
