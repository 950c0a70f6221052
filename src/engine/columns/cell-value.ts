/** Results as cells hold them. */
import { inUnit, type LengthUnit } from '../../maths/units.js';
import type { ResultColumn, ResultValue } from './result-column.js';

/** A value in the book's unit, sentences in one text; undefined is a blank cell. */
export function cellValue(
  { quantity }: Pick<ResultColumn<never>, 'quantity'>,
  value: ResultValue,
  unit: LengthUnit,
): string | number | undefined {
  if (typeof value === 'number') return quantity === 'length' ? inUnit(value, unit) : value;
  if (typeof value === 'string' || value === undefined) return value;
  return value.join('; ') || undefined;
}

/** The same as words for a message. */
export function valueText(
  column: Pick<ResultColumn<never>, 'quantity'>,
  value: ResultValue,
  unit: LengthUnit,
): string | undefined {
  const shown = cellValue(column, value, unit);
  return shown === undefined || shown === '' ? undefined : String(shown);
}
