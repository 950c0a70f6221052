/** Lengths in sentences. */
import type { Grain } from '../../maths/grain.js';
import { inUnit, type LengthUnit } from '../../maths/units.js';

/** Decimals at which every length on the grain shows whole: 0.001 µm in mm, a little finer in inches. */
const DECIMALS: Readonly<Record<LengthUnit, number>> = { mm: 6, in: 7, µm: 3 };

/** A length with its unit, without needless zeros: `0.035 mm`. */
export function lengthText(length: Grain, unit: LengthUnit): string {
  const fixed = inUnit(length, unit).toFixed(DECIMALS[unit]);
  return `${fixed.replace(/\.?0+$/, '') || '0'} ${unit}`;
}

/** A count with its noun: `1 engine`, `3 engines`. */
export function countText(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
