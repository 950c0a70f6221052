/** One call of a function: from what stands in cells of HyperFormula to what the cell of the call holds. */
import { CellError, CellValueDetailedType, EmptyValue, ErrorType, SimpleRangeValue } from 'hyperformula';
import { ArgumentRefusal, type FunctionRecord } from '../../../functions/definition.js';
import type { FunctionUnits } from '../../../functions/expected.js';
import { messages } from '../../../functions/messages.js';
import { inUnit } from '../../maths/units.js';
import type { FormattedNumber, Given, Scalar } from './given.js';
import type { ArgumentReader } from './read-arguments.js';

/** Thrown inside a call to hand on an error value that stood in one of its arguments. */
class ErrorInArgument {
  constructor(readonly error: CellError) {}
}

const FORMATS: Readonly<Record<string, FormattedNumber['format']>> = {
  [CellValueDetailedType.NUMBER_DATE]: 'date',
  [CellValueDetailedType.NUMBER_DATETIME]: 'date',
  [CellValueDetailedType.NUMBER_TIME]: 'time',
  [CellValueDetailedType.NUMBER_CURRENCY]: 'currency',
  [CellValueDetailedType.NUMBER_PERCENT]: 'percent',
};

/**
 * What a cell of HyperFormula holds.
 * @throws ErrorInArgument where that is an error value.
 */
export function scalarOf(value: unknown): Scalar {
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value;
  if (value === EmptyValue || value === undefined || value === null) return undefined;
  if (value instanceof CellError) throw new ErrorInArgument(value);
  const number = value as { val: number; getDetailedType(): string };
  const format = FORMATS[number.getDetailedType()];
  return format === undefined ? number.val : { format, value: number.val };
}

/** @throws ErrorInArgument where a cell of a range holds an error value. */
export function givenOf(value: unknown): Given {
  return value instanceof SimpleRangeValue ? value.data.map((row) => row.map(scalarOf)) : scalarOf(value);
}

/**
 * A function applied to what stands in cells. It never throws, though `given` may throw what `scalarOf` throws: a method
 * that throws, or returns null, undefined or an object, would end the whole of HyperFormula.
 */
export function callRecord(
  record: FunctionRecord,
  given: () => readonly Given[],
  reader: ArgumentReader,
  units: FunctionUnits,
): number | string | CellError {
  try {
    return resultOf(resultInBook(record.result, record.body(...reader.readAll(record, given())), units));
  } catch (thrown) {
    return errorOf(record.name, thrown);
  }
}

/** A result in the book's unit. */
function resultInBook(
  { quantity }: FunctionRecord['result'],
  value: number | string | undefined,
  { lengthUnit }: FunctionUnits,
): number | string {
  if (value === undefined) return '';
  const isLength = quantity === 'length' || quantity === 'unrounded length';
  return isLength && typeof value === 'number' ? inUnit(value, lengthUnit) : value;
}

/** What a cell can hold: no number that is not finite, and no −0. */
function resultOf(value: number | string): number | string {
  if (typeof value === 'string') return value;
  if (!Number.isFinite(value))
    throw new ArgumentRefusal('NUM', messages.unforeseen('the result is not a number'));
  return value === 0 ? 0 : value;
}

/** The error value that stands for what was thrown. */
export function errorOf(name: string, thrown: unknown): CellError {
  if (thrown instanceof ErrorInArgument) return thrown.error;
  if (thrown instanceof ArgumentRefusal)
    return new CellError(ErrorType[thrown.code], `${name}: ${thrown.message}`);
  const reason = thrown instanceof Error ? thrown.message : String(thrown);
  return new CellError(ErrorType.VALUE, `${name}: ${messages.unforeseen(reason)}`);
}
