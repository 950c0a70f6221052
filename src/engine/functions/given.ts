/** What is given for an argument of a function: the values of cells, told apart and put in words. */
import { type AllowedRange, ArgumentRefusal, type ErrorCode } from '../../../functions/definition.js';
import { messages } from '../../../functions/messages.js';

/** A number whose format says that it is no plain one. */
export interface FormattedNumber {
  readonly format: 'date' | 'time' | 'currency' | 'percent';
  readonly value: number;
}

/** What one cell holds; undefined is a blank. */
export type Scalar = number | string | boolean | FormattedNumber | undefined;

/** What was given for one argument: one value, or the rows of a range. */
export type Given = Scalar | readonly (readonly Scalar[])[];

/** A cell to be read: the words for its place and for what it should hold. */
export interface GivenPlace {
  readonly where: string;
  readonly expected: string;
}

const QUOTED_CHARACTERS = 40;

export function isRange(given: Given): given is readonly (readonly Scalar[])[] {
  return Array.isArray(given);
}

/** A formula that returns "" leaves a blank. */
export function isBlankScalar(scalar: Scalar): boolean {
  return scalar === undefined || (typeof scalar === 'string' && scalar.trim() === '');
}

/** The cell of a range of one cell; anything else as it is. */
export function unwrapCell(given: Given): Given {
  return isRange(given) && given.length === 1 && given[0]!.length === 1 ? given[0]![0] : given;
}

/** What was given, in words. */
export function describeGiven(given: Given): string {
  if (isRange(given)) return `a range of ${given.length} × ${given[0]?.length ?? 0} cells`;
  if (given === undefined || isBlankScalar(given)) return 'blank';
  if (typeof given === 'boolean') return given ? 'TRUE' : 'FALSE';
  if (typeof given === 'number') return plainDigits(given);
  if (typeof given === 'string') {
    return `the text "${given.length > QUOTED_CHARACTERS ? `${given.slice(0, QUOTED_CHARACTERS)}…` : given}"`;
  }
  return given.format === 'percent' ? `${plainDigits(given.value * 100)} %` : `a ${given.format}`;
}

/** 0.000023, not 2.3e-5. */
function plainDigits(value: number): string {
  const size = Math.abs(value);
  if (size !== 0 && (size < 1e-12 || size >= 1e15)) return String(value);
  return value.toLocaleString('en', { useGrouping: false, maximumSignificantDigits: 15 });
}

/** @throws ArgumentRefusal that names the place, what was given there and what was expected. */
export function refuseGiven(code: ErrorCode, { where, expected }: GivenPlace, given: Given): never {
  throw new ArgumentRefusal(code, messages.found(where, describeGiven(given), expected));
}

export function isOutside(value: number, { above, from, to }: AllowedRange): boolean {
  return (
    (above !== undefined && value <= above) ||
    (from !== undefined && value < from) ||
    (to !== undefined && value > to)
  );
}

/** The place of one cell after the other of a range. Its words are made on demand, as most cells need none. */
class PlaceInRange implements GivenPlace {
  /** From 1, row by row. */
  number = 0;

  constructor(
    private readonly name: string,
    readonly expected: string,
    private readonly rows: readonly (readonly Scalar[])[],
  ) {}

  get where(): string {
    const count = this.rows.reduce((sum, { length }) => sum + length, 0);
    return messages.cellOf(this.name, this.number, count);
  }
}

/** Reads every cell of a range, row by row; a single value is a range of one cell. */
export function readEachCell<Value>(
  given: Given,
  { where, expected }: GivenPlace,
  readCell: (scalar: Scalar, place: GivenPlace) => Value,
): Value[] {
  const values: Value[] = [];
  const rows = isRange(given) ? given : [[given]];
  const place = new PlaceInRange(where, expected, rows);
  for (const cells of rows) {
    for (const scalar of cells) {
      place.number += 1;
      values.push(readCell(scalar, place));
    }
  }
  return values;
}
