/** What a fastener is called. */
import type { LengthUnit } from '../../maths/units.js';
import type { FastenerRow } from '../book/fasteners.js';
import { countText, lengthText } from './words.js';

/** What to order: its thread and its nominal length, `M10x1.25, 48 mm`. */
export function fastenerMark({ thread, length }: FastenerRow, unit: LengthUnit): string {
  const words = [thread, length === undefined ? undefined : lengthText(length, unit)];
  return words.filter((word) => word !== undefined).join(', ');
}

/** `1 fastener to renew`; undefined where none is. */
export function renewText(
  fasteners: readonly { readonly row: FastenerRow; readonly status: string }[],
): string | undefined {
  const count = fasteners.reduce((sum, { row, status }) => sum + (status === 'renew' ? row.quantity : 0), 0);
  return count > 0 ? `${countText(count, 'fastener')} to renew` : undefined;
}
