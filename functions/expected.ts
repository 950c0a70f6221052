/** What an argument takes, in words: for messages of cells and for the help. */
import { type LengthUnit, type TemperatureUnit, temperatureInUnit } from '../src/maths/units.js';
import type { AllowedRange, ArgumentRecord } from './definition.js';

/** The units of every length and temperature that the functions of one book take and give. */
export interface FunctionUnits {
  readonly lengthUnit: LengthUnit;
  readonly temperatureUnit: TemperatureUnit;
}

function lengthRange({ above, from }: AllowedRange): string {
  if (above !== undefined) return ` above ${above}`;
  return from === undefined ? '' : ` of ${from} or more`;
}

function numberRange({ above, from, to }: AllowedRange): string {
  const low = above !== undefined ? ` above ${above}` : from === undefined ? '' : ` from ${from}`;
  if (to === undefined) return low;
  return above === undefined ? `${low} to ${to}` : `${low} and up to ${to}`;
}

/** The range of a temperature in the book's unit. */
function temperatureRange(allowed: AllowedRange, unit: TemperatureUnit): string {
  const inBook: AllowedRange = Object.fromEntries(
    Object.entries(allowed).map(([end, celsius]) => [end, temperatureInUnit(celsius, unit)]),
  );
  return numberRange(inBook);
}

/** `in in` would not read as a unit. */
const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = { mm: 'mm', in: 'inches', µm: 'µm' };

export function expectedOf(argument: ArgumentRecord, { lengthUnit, temperatureUnit }: FunctionUnits): string {
  const { quantity, allowed = {} } = argument;
  const unit = UNIT_WORDS[lengthUnit];
  switch (quantity) {
    case 'length':
    case 'reading':
    case 'unrounded length':
      return `a length in ${unit}${lengthRange(allowed)}`;
    case 'lengths':
      return `a length in ${unit}${lengthRange(allowed)}, or a range of them`;
    case 'spots':
    case 'unrounded lengths':
      return `a range of lengths in ${unit}${lengthRange(allowed)}, blanks allowed`;
    case 'temperature':
      return `a temperature in °${temperatureUnit}${temperatureRange(allowed, temperatureUnit)}`;
    case 'expansion':
      return `an expansion${numberRange(allowed)} in 1e-6 per K`;
    case 'count':
      return `a whole number${numberRange(allowed)}`;
    case 'confidence':
      return 'a confidence from 50 % to 99.99 %, as 0.95, 95 or "95 %"';
    case 'flag':
      return 'TRUE or FALSE';
    case 'mark':
      return 'a mark, text or a number';
    case 'names':
      return 'a range of names, blanks allowed';
    case 'angles':
      return 'a range of angles in degrees, blanks allowed';
    case 'classes':
      return 'rows of three cells: Mark, From, To';
    case 'selection':
      return 'rows of three cells: Journal mark, Bore mark, Shell mark';
  }
}
