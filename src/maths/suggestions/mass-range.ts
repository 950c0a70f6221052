/** Which mass a further rod of a crank may have. */
import { add, exact, multiply, toNumber } from '../decimal.js';
import type { MassRange } from './plan.js';

/** a − b in decimals: 612.3 − 0.2 is 612.1. */
function difference(a: number, b: number): number {
  return toNumber(add(exact(a), multiply(exact(b), { numerator: -1n, denominator: 1n })));
}

/**
 * @param masses of the rods that the crank has, g
 * @param spread the greatest difference among them, g; undefined: any
 */
export function massRange(masses: readonly number[], spread: number | undefined): MassRange | undefined {
  if (spread === undefined) return undefined;
  if (masses.length === 0) return { from: undefined, to: undefined };
  const [least, greatest] = [Math.min(...masses), Math.max(...masses)];
  return { from: difference(greatest, spread), to: difference(least, -spread) };
}
