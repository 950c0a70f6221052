/** The sheet To buy: new shells that the sets need. */
import { exact, multiply, toNumber } from '../../maths/decimal.js';
import type { OutputSheet } from '../workbook-model.js';
import type { MatchedRow } from './matched-rows.js';
import { ownSheet, type SheetColumn } from './own-sheet.js';

export interface Bought {
  readonly engineType: string;
  readonly fit: string;
  readonly half: string;
  readonly mark: string;
  readonly quantity: number;
  /** Of one. */
  readonly price: number;
  readonly priceInAll: number;
  readonly places: readonly string[];
}

const TO_BUY: SheetColumn<Bought>[] = [
  { header: 'Engine type', width: 14, value: ({ engineType }) => engineType },
  { header: 'Fit', width: 10, value: ({ fit }) => fit },
  { header: 'Half', width: 10, value: ({ half }) => half },
  { header: 'Mark', width: 10, value: ({ mark }) => mark },
  { header: 'Quantity', width: 10, format: 'whole', value: ({ quantity }) => quantity },
  { header: 'Price', width: 10, format: 'plain', value: ({ price }) => price },
  { header: 'For', width: 50, format: 'text', value: forWords },
];

export function toBuySheet(rows: readonly MatchedRow[]): OutputSheet {
  return ownSheet('To buy', TO_BUY, toBuy(rows));
}

/** Where the shells go, and which of the two prices the column Price shows. */
function forWords({ places, price, priceInAll }: Bought): string {
  return `${places.join(', ')}; price ${price} each, ${priceInAll} in all`;
}

/** A price times a count, in decimals: three at 0.1 are 0.3. */
export function timesPrice(price: number, count: number): number {
  return toNumber(multiply(exact(price), exact(count)));
}

/** One row a shell of New shells. */
export function toBuy(rows: readonly MatchedRow[]): Bought[] {
  const bought = new Map<unknown, Bought>();
  for (const { fit, engine, fitName, position, journal } of rows) {
    for (const half of ['upper', 'lower'] as const) {
      const taken = fit[half];
      if (taken.from !== 'new') continue;
      const { mark, price } = taken.shell;
      const before = bought.get(taken.shell);
      const quantity = (before?.quantity ?? 0) + 1;
      bought.set(taken.shell, {
        engineType: journal.row.engineType ?? '',
        fit: fitName,
        half: taken.shell.half,
        mark,
        quantity,
        price,
        priceInAll: timesPrice(price, quantity),
        places: [...new Set([...(before?.places ?? []), `${engine} ${fitName} ${position}`])],
      });
    }
  }
  return [...bought.values()];
}
