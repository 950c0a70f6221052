/** What is to be bought: new shells that the sets need and the stock does not have, and fasteners to be renewed. */
import { exact, multiply, toNumber } from '../../maths/decimal.js';
import type { StockNewShell } from '../../maths/matching/stock.js';
import type { LengthUnit } from '../../maths/units.js';
import type { FastenerRow } from '../book/fasteners.js';
import { nameKey } from '../book/names.js';
import { groupBy } from './context.js';
import type { FastenerResult } from './fastener.js';
import { fastenerMark } from './fastener-words.js';
import type { MatchedSet } from './matched-sets.js';

/** The shells, or the pairs, of one row of New shells, or fasteners that are alike. */
export interface Bought {
  readonly engineType: string;
  /** Of a fastener its Group. */
  readonly fit: string;
  /** `fastener` where it is one. */
  readonly half: string;
  /** Of a fastener its Thread and Length. */
  readonly mark: string;
  readonly quantity: number;
  /** Of one; undefined of a fastener whose Price is blank. */
  readonly price: number | undefined;
  readonly priceInAll: number | undefined;
  /** Where they go. */
  readonly places: readonly string[];
}

/** One entry a shell of New shells, in the order in which the sets take them. */
export function toBuy(sets: readonly MatchedSet[]): Bought[] {
  const bought = new Map<StockNewShell, Bought>();
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

/** One entry a Group, Thread and Length of an engine type, in the order of the rows. */
export function fastenersToBuy(fasteners: readonly FastenerResult[], unit: LengthUnit): Bought[] {
  const renewed = fasteners.flatMap(({ row, status }) => (status === 'renew' ? [row] : []));
  const keyOf = ({ engineType = '', group, thread = '', length, price }: FastenerRow) =>
    JSON.stringify([...[engineType, group, thread].map(nameKey), length, price]);
  return [...groupBy(renewed, keyOf).values()].map((rows) => {
    const first = rows[0]!;
    const { engineType = '', group, price } = first;
    const quantity = rows.reduce((sum, row) => sum + row.quantity, 0);
    return {
      ...{ engineType, fit: group, half: 'fastener', mark: fastenerMark(first, unit), quantity, price },
      priceInAll: price === undefined ? undefined : timesPrice(price, quantity),
      places: [
        ...new Set(rows.map((row) => [row.engine, row.group].filter((name) => name !== '').join(' '))),
      ],
    };
  });
}

/** A price times a count, in decimals: three at 0.1 are 0.3. */
export function timesPrice(price: number, count: number): number {
  return toNumber(multiply(exact(price), exact(count)));
}
