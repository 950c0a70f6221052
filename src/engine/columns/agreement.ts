/**
 * Every result has two authors: the assessment computes it, and the sheet engine evaluates the formula of its column.
 * Where they differ by more than the grain, one of them is wrong, and nothing may be written.
 */
import { type LengthUnit, snapToGrain } from '../../maths/units.js';
import { UserError } from '../user-error.js';
import { valueText } from './cell-value.js';
import type { ResultColumn, ResultValue } from './result-column.js';
import type { Template } from './template.js';

/** A fault of the program: its two ways to a result do not agree. */
export class DisagreementError extends UserError {}

/** A value of the sheet engine; blank text stands for nothing. */
export type EngineValue = string | number | boolean | null | undefined;

/** Doubles of a probability that two ways compute differ in their last digits. */
const CHANCE_TOLERANCE = 1e-9;

/** @throws DisagreementError naming sheet, row, column and both values */
export function refuseDisagreement<Row>(
  { sheet, rowOf, assessment }: Template<Row>,
  column: ResultColumn<Row>,
  row: Row,
  found: EngineValue,
): void {
  const { book } = assessment;
  const unit = book.setup.lengthUnit;
  const value = column.value(row, assessment);
  if (agree(column, value, found, unit)) return;
  const own = valueText(column.quantity, value, unit);
  throw new DisagreementError(
    `${book.model.file}: sheet ${sheet}, row ${rowOf(row) + 1}, ${column.header}: found ${shown(found)} by the sheet engine ` +
      `and ${own === undefined ? 'nothing' : own} by the program's own arithmetic; expected one value; ` +
      'nothing was written: this is a fault of the program, please report it with the cells of that row.',
  );
}

function agree<Row>(
  { quantity }: ResultColumn<Row>,
  value: ResultValue,
  found: EngineValue,
  unit: LengthUnit,
): boolean {
  if (typeof found !== 'number') return (found ?? '') === (value ?? '');
  if (typeof value !== 'number') return String(found) === value;
  if (quantity === 'length') return snapToGrain(found, unit) === value;
  return quantity === 'chance' ? Math.abs(found - value) <= CHANCE_TOLERANCE : found === value;
}

function shown(found: EngineValue): string {
  return found === undefined || found === null || found === '' ? 'nothing' : String(found);
}
