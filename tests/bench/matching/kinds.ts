/** The kinds of stock that the bench tries, of one shelf: 25 cranks of four pins. */
import type { WorkshopSize } from '../../maths/matching/random-stock.js';

export interface StockOfBench {
  readonly name: string;
  readonly says: string;
  readonly size: WorkshopSize;
}

const shelf = { cranks: 25, pins: 4, mains: 0 };

export const KINDS: readonly StockOfBench[] = [
  {
    name: 'plentiful',
    says: '130 rods and 500 half-shells, range 30 to 50 µm, wear 7 µm',
    size: { ...shelf, rods: 130, shells: 500, wear: 7000, range: [30_000, 50_000] },
  },
  {
    name: 'few spare parts',
    says: '104 rods and 210 half-shells, range 30 to 50 µm, wear 4.5 µm',
    size: { ...shelf, rods: 104, shells: 210, wear: 4500, range: [30_000, 50_000] },
  },
  {
    name: 'few spare parts, much worn',
    says: '104 rods and 210 half-shells, range 28 to 52 µm, wear 9 µm',
    size: { ...shelf, rods: 104, shells: 210, wear: 9000, range: [28_000, 52_000] },
  },
];
