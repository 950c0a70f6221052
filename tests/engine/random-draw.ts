/** Draws that random books are made of. */
import type { Random } from '../../scripts/demo/random.js';
import { DATE, ERROR, type Plain } from './book-of.js';

/** One engine type and fit. Lengths are whole tenths of a micrometre. */
export interface Kind {
  readonly engineType: string;
  readonly fit: 'big end' | 'main';
  readonly journal: number;
  readonly bore: number;
  readonly wall: number;
  readonly clearance: readonly [number, number];
  readonly marks: Readonly<Record<'journal' | 'bore' | 'shell', readonly string[]>>;
}

/** What one book is drawn with. Lengths are whole tenths of a micrometre. */
export interface Draw {
  readonly random: Random;
  /** Draws of its own, which leave the others as they are. */
  readonly aside: Random;
  readonly isInch: boolean;
  readonly isFahrenheit: boolean;
  readonly kinds: readonly Kind[];
}

export type LengthUnit = 'mm' | 'in' | 'µm';

/** Whether something that happens so often in a hundred times happens now. */
export function chance(random: Random, percent: number): boolean {
  return random.between(1, 1000) <= 10 * percent;
}

/** Tenths of a micrometre as the number that a user reads off a gauge of that unit. */
export function typed(tenths: number, unit: LengthUnit): number {
  if (unit === 'µm') return tenths / 10;
  return unit === 'mm' ? tenths / 10_000 : Number((tenths / 254_000).toFixed(5));
}

export function inBook({ isInch }: Draw, tenths: number): number {
  return typed(tenths, isInch ? 'in' : 'mm');
}

const REFUSED: readonly Plain[] = [DATE, ERROR, true, 'worn', 0, -1.5, '1.2.3', '45 kg'];

export function refused(random: Random): Plain {
  return random.pick(REFUSED);
}
