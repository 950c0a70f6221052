/** What the sets need that the stock does not have: new shells. */
import { exact, multiply, toNumber } from '../../maths/decimal.js';
import type { StockNewShell } from '../../maths/matching/stock.js';
import type { MatchedSet } from './matched-sets.js';

/** The shells, or the pairs, of one row of New shells. */
export interface BoughtShells {
  readonly engineType: string;
  readonly fit: string;
  readonly half: string;
  readonly mark: string;
  readonly quantity: number;
  /** Of one. */
  readonly price: number;
  readonly priceInAll: number;
  /** Where they go. */
  readonly places: readonly string[];
}

/** One entry a shell of New shells, in the order in which the sets take them. */
export function toBuy(sets: readonly MatchedSet[]): BoughtShells[] {
  const bought = new Map<StockNewShell, BoughtShells>();
  for (const { found, engine, fit, position, journal } of sets) {
    // A pair stands above and below, and is bought once.
    const halves = found.upper.shell.half === 'pair' ? (['upper'] as const) : (['upper', 'lower'] as const);
    for (const half of halves) {
      const taken = found[half];
      if (taken.from !== 'new') continue;
      const { mark, price } = taken.shell;
      const before = bought.get(taken.shell);
      const quantity = (before?.quantity ?? 0) + 1;
      bought.set(taken.shell, {
        engineType: journal.row.engineType ?? '',
        fit,
        half: taken.shell.half,
        mark,
        quantity,
        price,
        priceInAll: timesPrice(price, quantity),
        places: [...new Set([...(before?.places ?? []), `${engine} ${fit} ${position}`])],
      });
    }
  }
  return [...bought.values()];
}

/** A price times a count, in decimals: three at 0.1 are 0.3. */
export function timesPrice(price: number, count: number): number {
  return toNumber(multiply(exact(price), exact(count)));
}
