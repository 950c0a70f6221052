/** Results as cells hold them. */
import { inUnit, type LengthUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { OutputCell } from '../workbook-model.js';
import type { Layout } from './layout.js';
import { formatOf, type ResultColumn, type ResultQuantity, type ResultValue } from './result-column.js';

/** A value in the book's unit, sentences in one text; undefined is a blank cell. */
export function cellValue(
  quantity: ResultQuantity,
  value: ResultValue,
  unit: LengthUnit,
): string | number | undefined {
  if (typeof value === 'number') return quantity === 'length' ? inUnit(value, unit) : value;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string' || value === undefined) return value;
  return value.join('; ') || undefined;
}

/** The same as words for a message. */
export function valueText(
  quantity: ResultQuantity,
  value: ResultValue,
  unit: LengthUnit,
): string | undefined {
  const shown = cellValue(quantity, value, unit);
  return shown === undefined || shown === '' ? undefined : String(shown);
}

/** What a row has under a column, as a plain cell; undefined is a blank one. */
export function plainCell<Row>(
  column: ResultColumn<Row>,
  row: Row,
  assessment: Assessment,
): OutputCell | undefined {
  const { lengthUnit } = assessment.book.setup;
  const quantity = column.quantityOf?.(row) ?? column.quantity;
  const value = cellValue(quantity, column.value(row, assessment), lengthUnit);
  return value === undefined ? undefined : { value, format: formatOf(quantity, lengthUnit, value) };
}

/** The same with its live formula; where that alone is there, the cell is blank for now. */
export function liveCell<Row>(column: ResultColumn<Row>, row: Row, layout: Layout): OutputCell | undefined {
  const { assessment } = layout;
  const { lengthUnit } = assessment.book.setup;
  const quantity = column.quantityOf?.(row) ?? column.quantity;
  const value = cellValue(quantity, column.value(row, assessment), lengthUnit);
  const formula = column.live?.(row, layout);
  if (value === undefined && formula === undefined) return undefined;
  return { value: value ?? '', format: formatOf(quantity, lengthUnit, value), formula };
}
