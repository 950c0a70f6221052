/**
 * Shells that are in a bore which was measured with them.
 *
 * Their walls are in the size of the bore. In the stock they are half-shells without a wall, one of each half for each
 * such bore; they go with such bores alone, and no other shells do. So a fit has the same four parts whatever was
 * measured.
 */
import type { FitParts } from '../clearance.js';
import { CERTAIN, type MeasuredPart } from '../uncertainty.js';
import type { FitKind, StockShell } from './stock.js';

const NO_WALL: MeasuredPart = { size: 0, largest: 0, smallest: 0, ...CERTAIN };

/** The fit of a journal in a bore that was measured with its shells in. */
export function withItsShells(bore: MeasuredPart, journal: MeasuredPart): FitParts<MeasuredPart> {
  return { bore, upper: NO_WALL, lower: NO_WALL, journal };
}

/** @param bores of the kind that were measured with their shells in */
export function broughtShells({ engineType, fit }: FitKind, bores: number): StockShell[] {
  if (bores === 0) return [];
  return (['upper', 'lower'] as const).map((half) => ({
    ...{ engineType, fit, half, name: '', quantity: bores, part: NO_WALL, ran: undefined },
    isBrought: true,
  }));
}

/** Whether two parts go together as far as shells in a bore go: both with them, or both without. */
export function isBroughtAlike(
  a: { readonly isBrought?: boolean },
  b: { readonly isBrought?: boolean },
): boolean {
  return (a.isBrought ?? false) === (b.isBrought ?? false);
}
