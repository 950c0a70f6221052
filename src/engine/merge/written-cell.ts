/**
 * What is written of a cell into a workbook of other units. A number that the workbook's own unit has a decimal for
 * is a number; any other is a text with the unit it was typed in.
 */
import { decimalText, exact, exactDouble, type Ratio } from '../../maths/decimal.js';
import { fromCelsius, fromMm, isTemperatureUnit, toCelsius, toMm } from '../../maths/units.js';
import { scanNumber } from '../book/number-text.js';
import { scanRange } from '../book/read-torque.js';
import { type BookUnits, isLength, isMmOrIn } from '../book/table.js';
import type { InputQuantity, TextUnit } from '../input-sheets/quantities.js';
import type { Cell, CellContent } from '../workbook-model.js';

/** The unit of a number that names none, in a column that names none. */
export function unitWithoutSaying(quantity: InputQuantity, units: BookUnits): TextUnit | undefined {
  switch (quantity.kind) {
    case 'length':
    case 'exact length':
      return units.length;
    case 'temperature':
      return units.temperature;
    case 'torque':
    case 'number':
      return quantity.units[0];
    default:
      return undefined;
  }
}

/** A cell as it stands; of a formula, its value. */
export function typedCell(cell: Cell): Cell | undefined {
  if (cell.formula === undefined) return cell;
  return cell.content && { content: cell.content };
}

/** An exact number, read from a cell. */
export interface TypedAmount {
  readonly value: Ratio;
  readonly unit: TextUnit | undefined;
  /** What stood in the cell. */
  readonly content: CellContent;
}

/** @param unit of the column that the cell is written in */
export function amountCell({ value, unit: own, content }: TypedAmount, unit: TextUnit | undefined): Cell {
  const double = exactDouble(converted(value, own, unit));
  if (double !== undefined) return { content: { kind: 'number', value: double } };
  // Every decimal in inches is one in millimetres, and every one in °C one in °F.
  const others: readonly (TextUnit | undefined)[] = isLength(own) ? [own, 'mm'] : [own];
  for (const other of others) {
    const digits = decimalText(converted(value, own, other));
    if (digits !== undefined) return textCell(withUnit(plainDigits(digits, other), other));
  }
  return own === unit ? { content } : textCell(withUnit(String(content.value), own));
}

/**
 * A cell that its rule refuses, so that it is refused where it is written, too: a unit that its header or its book gave
 * it stands in the cell, and a formula that has no value is an error.
 */
export function refusedCell(cell: Cell, own: TextUnit | undefined, unit: TextUnit | undefined): Cell {
  const { content } = cell;
  if (!content) return { content: { kind: 'error', value: '#N/A' } };
  const isNumber = content.kind === 'number' || (content.kind === 'text' && scanNumber(content.value));
  return isNumber && own !== unit ? textCell(withUnit(String(content.value), own)) : { content };
}

/** A torque keeps the unit that it was typed in, which then stands in the cell where the column is of another. */
export function torqueCell(
  content: CellContent,
  own: TextUnit | undefined,
  unit: TextUnit | undefined,
): Cell {
  if (own === unit) return { content };
  if (content.kind === 'number') {
    const digits = decimalText(exact(content.value));
    return textCell(`${plainDigits(digits ?? String(content.value), own)} ${own}`);
  }
  const text = String(content.value).trim();
  const namesUnit = (scanNumber(text) ?? scanRange(text))?.unit !== undefined;
  return textCell(namesUnit ? text : `${text} ${own}`);
}

function converted(value: Ratio, from: TextUnit | undefined, to: TextUnit | undefined): Ratio {
  if (from === to) return value;
  if (isLength(from) && isLength(to)) return fromMm(toMm(value, from), to);
  if (from && to && isTemperatureUnit(from) && isTemperatureUnit(to)) {
    return fromCelsius(toCelsius(value, from), to);
  }
  throw new RangeError(`${from} is no unit of what is in ${to}`);
}

/** A point before three digits could be a thousands mark, where the unit does not rule that out. */
function plainDigits(digits: string, unit: TextUnit | undefined): string {
  return !isMmOrIn(unit) && /\.\d{3}$/.test(digits) ? `${digits}0` : digits;
}

function withUnit(text: string, unit: TextUnit | undefined): string {
  return unit === undefined || scanNumber(text)?.unit !== undefined ? text : `${text} ${unit}`;
}

function textCell(value: string): Cell {
  return { content: { kind: 'text', value } };
}
