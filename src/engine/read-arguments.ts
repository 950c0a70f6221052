/**
 * Turns what stands in cells into what the bodies of the functions take: lengths on the grain, exact
 * temperatures, tables. Everything else is refused by name; a blank never becomes 0.
 */
import {
  type AllowedRange,
  type ArgumentRecord,
  type ErrorCode,
  type FunctionRecord,
  type Quantity,
  Refusal,
} from '../../functions/definition.js';
import { type BookUnits, expectedOf } from '../../functions/expected.js';
import { messages } from '../../functions/messages.js';
import type { SizeClass } from '../maths/classes.js';
import { exact, type Ratio, toNumber } from '../maths/decimal.js';
import { type Grain, grainOfMm } from '../maths/grain.js';
import type { SelectionRow } from '../maths/tables.js';
import { grainOf, inUnit, toCelsius, toMm, unroundedGrains } from '../maths/units.js';

/** A number whose format says that it is no plain one. */
export interface FormattedNumber {
  readonly format: 'date' | 'time' | 'currency' | 'percent';
  readonly value: number;
}

/** What one cell holds; undefined is a blank. */
export type Scalar = number | string | boolean | FormattedNumber | undefined;

/** What was given for one argument: one value, or the rows of a range. */
export type Given = Scalar | readonly (readonly Scalar[])[];

/** No part and no clearance is a kilometre long; sums of smaller lengths are exact. */
const LONGEST: Grain = grainOfMm(1e6);
const QUOTED_CHARACTERS = 40;

/** A cell to be read: the words for its place and for what it should hold. */
interface Place {
  readonly where: string;
  readonly expected: string;
}

/** One cell after the other of a range. Words for it are made only where they are needed: most cells are read without. */
class CellPlace implements Place {
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

function isRange(given: Given): given is readonly (readonly Scalar[])[] {
  return Array.isArray(given);
}

/** A formula that returns "" leaves a blank. */
function isBlank(scalar: Scalar): boolean {
  return scalar === undefined || (typeof scalar === 'string' && scalar.trim() === '');
}

function describe(given: Given): string {
  if (isRange(given)) return `a range of ${given.length} × ${given[0]?.length ?? 0} cells`;
  if (given === undefined || isBlank(given)) return 'blank';
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

function refuse(code: ErrorCode, { where, expected }: Place, given: Given): never {
  throw new Refusal(code, messages.found(where, describe(given), expected));
}

function numberIn(scalar: Scalar, place: Place): number {
  return typeof scalar === 'number' ? scalar : refuse('VALUE', place, scalar);
}

function isOutside(value: number, { above, from, to }: AllowedRange): boolean {
  return (
    (above !== undefined && value <= above) ||
    (from !== undefined && value < from) ||
    (to !== undefined && value > to)
  );
}

/** Reads the arguments of one function in one book. */
export class ArgumentReader {
  private readonly expected = new Map<ArgumentRecord, string>();
  /** Tables already read: many calls may be given one and the same. */
  private readonly tables = new Map<ArgumentRecord, WeakMap<object, unknown>>();

  constructor(private readonly units: BookUnits) {}

  private expectedOf(argument: ArgumentRecord): string {
    let words = this.expected.get(argument);
    if (words === undefined) {
      words = expectedOf(argument, this.units);
      this.expected.set(argument, words);
    }
    return words;
  }

  /** @throws Refusal that names the argument, or the cell of it, which cannot be used. */
  readAll(record: FunctionRecord, given: readonly Given[]): unknown[] {
    const { arguments: known } = record;
    const values = known.map((argument, place) =>
      place < given.length ? this.read(argument, given[place]) : this.leftOut(argument),
    );
    for (const [low, high] of record.ordered ?? []) this.checkOrder(record, given, values, low, high);
    return values;
  }

  private checkOrder(
    { arguments: known }: FunctionRecord,
    given: readonly Given[],
    values: readonly unknown[],
    low: string,
    high: string,
  ): void {
    const [lowPlace, highPlace] = [low, high].map((name) => known.findIndex((known) => known.name === name));
    const [lowValue, highValue] = [values[lowPlace!], values[highPlace!]];
    if (typeof lowValue !== 'number' || typeof highValue !== 'number' || lowValue <= highValue) return;
    const [lowWords, highWords] = [given[lowPlace!], given[highPlace!]].map((one) => describe(only(one)));
    throw new Refusal('NUM', messages.crossed(low, lowWords!, high, highWords!));
  }

  private leftOut(argument: ArgumentRecord): unknown {
    if (argument.optional) return argument.default;
    throw new Refusal('NA', messages.missing(argument.name, this.expectedOf(argument)));
  }

  private read(argument: ArgumentRecord, given: Given): unknown {
    const place: Place = { where: argument.name, expected: this.expectedOf(argument) };
    const allowed = argument.allowed ?? {};
    if (!isRange(given) && isBlank(given) && argument.blank === 'refused') refuse('VALUE', place, given);
    const { quantity } = argument;
    switch (quantity) {
      case 'lengths':
        return this.eachCell(given, place, (scalar, cell) => this.length(scalar, cell, allowed));
      case 'spots':
        return this.eachCell(given, place, (scalar, cell) =>
          isBlank(scalar) ? undefined : this.length(scalar, cell, allowed),
        );
      case 'unrounded lengths':
        return this.eachCell(given, place, (scalar, cell) =>
          isBlank(scalar) ? undefined : this.unroundedLength(scalar, cell, allowed),
        ).filter((contribution) => contribution !== undefined);
      case 'names':
        return this.eachCell(given, place, (scalar, cell) =>
          isBlank(scalar) ? undefined : markIn(scalar, cell).toLowerCase(),
        );
      case 'angles':
        return this.eachCell(given, place, (scalar, cell) =>
          isBlank(scalar) ? undefined : numberIn(scalar, cell),
        );
      case 'classes':
        return this.onceOf(argument, given, () => this.classes(argument, given, place));
      case 'selection':
        return this.onceOf(argument, given, () => this.selection(argument, given, place));
      default:
        return this.readOne(argument, quantity, given, place);
    }
  }

  private onceOf<Value>(argument: ArgumentRecord, given: Given, read: () => Value): Value {
    if (!isRange(given)) return read();
    const known = this.tables.get(argument) ?? new WeakMap<object, unknown>();
    this.tables.set(argument, known);
    const value = known.has(given) ? (known.get(given) as Value) : read();
    known.set(given, value);
    return value;
  }

  private readOne(argument: ArgumentRecord, quantity: Quantity, given: Given, place: Place): unknown {
    const scalar = only(given);
    if (isRange(scalar)) return refuse('VALUE', place, scalar);
    if (isBlank(scalar)) {
      return argument.blank === 'allowed' ? argument.default : refuse('VALUE', place, scalar);
    }
    const allowed = argument.allowed ?? {};
    switch (quantity) {
      case 'length':
        return this.length(scalar, place, allowed);
      case 'reading':
        return this.reading(scalar, place, allowed);
      case 'unrounded length':
        return this.unroundedLength(scalar, place, allowed);
      case 'temperature':
        return this.temperature(scalar, place, allowed);
      case 'expansion':
        return expansionIn(scalar, place, allowed);
      case 'count':
        return countIn(scalar, place, allowed);
      case 'confidence':
        return confidenceIn(scalar, place);
      case 'flag':
        return typeof scalar === 'boolean' ? scalar : refuse('VALUE', place, scalar);
      case 'mark':
        return markIn(scalar, place);
      default:
        throw new TypeError(`no reader for ${quantity}`);
    }
  }

  private eachCell<Value>(
    given: Given,
    { where, expected }: Place,
    readCell: (scalar: Scalar, cell: Place) => Value,
  ): Value[] {
    const values: Value[] = [];
    const rows = isRange(given) ? given : [[given]];
    const cell = new CellPlace(where, expected, rows);
    for (const cells of rows) {
      for (const scalar of cells) {
        cell.number += 1;
        values.push(readCell(scalar, cell));
      }
    }
    return values;
  }

  private length(scalar: Scalar, place: Place, allowed: AllowedRange): Grain {
    const value = numberIn(scalar, place);
    const grain = grainOf(value, this.units.lengthUnit);
    checkLength(value, grain, place, allowed);
    return grain;
  }

  private reading(scalar: Scalar, place: Place, allowed: AllowedRange): Ratio {
    this.length(scalar, place, allowed);
    return toMm(exact(numberIn(scalar, place)), this.units.lengthUnit);
  }

  private unroundedLength(scalar: Scalar, place: Place, allowed: AllowedRange): number {
    const value = numberIn(scalar, place);
    const grains = unroundedGrains(value, this.units.lengthUnit);
    checkLength(value, grains, place, allowed);
    return grains;
  }

  private temperature(scalar: Scalar, place: Place, allowed: AllowedRange): Ratio {
    const celsius = toCelsius(exact(numberIn(scalar, place)), this.units.temperatureUnit);
    if (isOutside(toNumber(celsius), allowed)) refuse('NUM', place, scalar);
    return celsius;
  }

  /** The rows of a three-column table, blank ones left out. */
  private *tableRows(given: Given, place: Place): Generator<{ row: number; cells: readonly Scalar[] }> {
    if (!isRange(given)) return refuse('VALUE', place, given);
    if (given.some((cells) => cells.length !== 3)) refuse('VALUE', place, given);
    if (given.every((cells) => cells.every(isBlank))) refuse('VALUE', place, undefined);
    for (const [index, cells] of given.entries()) {
      if (!cells.every(isBlank)) yield { row: index + 1, cells };
    }
  }

  private classes(argument: ArgumentRecord, given: Given, place: Place): SizeClass[] {
    const allowed = argument.allowed ?? {};
    const length = expectedOf({ ...argument, quantity: 'length' }, this.units);
    const mark = expectedOf({ ...argument, quantity: 'mark' }, this.units);
    return Array.from(this.tableRows(given, place), ({ row, cells }) => {
      const at = (column: string) => messages.cellAt(argument.name, row, column);
      const isHeader = row === 1 && cells.every((cell) => typeof cell === 'string');
      const expected = isHeader ? messages.withoutHeader(length) : length;
      return {
        mark: markIn(cells[0], { where: at('Mark'), expected: mark }),
        from: this.length(cells[1], { where: at('From'), expected }, allowed),
        to: this.length(cells[2], { where: at('To'), expected }, allowed),
      };
    });
  }

  private selection(argument: ArgumentRecord, given: Given, place: Place): SelectionRow[] {
    const expected = expectedOf({ ...argument, quantity: 'mark' }, this.units);
    return Array.from(this.tableRows(given, place), ({ row, cells }) => {
      const mark = (cell: Scalar, column: string) =>
        markIn(cell, { where: messages.cellAt(argument.name, row, column), expected });
      return {
        journalMark: mark(cells[0], 'Journal mark'),
        boreMark: mark(cells[1], 'Bore mark'),
        shellMark: mark(cells[2], 'Shell mark'),
      };
    });
  }
}

/** A range of one cell is that cell. */
function only(given: Given): Given {
  return isRange(given) && given.length === 1 && given[0]!.length === 1 ? given[0]![0] : given;
}

function checkLength(value: number, grains: number, place: Place, allowed: AllowedRange): void {
  if (Math.abs(grains) > LONGEST) {
    refuse('NUM', { where: place.where, expected: messages.tooLong(place.expected) }, value);
  }
  if (isOutside(grains, allowed)) refuse('NUM', place, value);
}

function expansionIn(scalar: Scalar, place: Place, allowed: AllowedRange): number {
  const value = numberIn(scalar, place);
  if (isOutside(value, allowed)) refuse('NUM', place, value);
  // No material expands so little; 0 switches the correction off.
  if (value > 0 && value < 0.01) {
    refuse('NUM', { where: place.where, expected: messages.perKelvin(place.expected) }, value);
  }
  return value;
}

function countIn(scalar: Scalar, place: Place, allowed: AllowedRange): number {
  const value = numberIn(scalar, place);
  if (!Number.isInteger(value) || isOutside(value, allowed)) refuse('NUM', place, value);
  return value;
}

const PERCENT_TEXT = /^(\d+(?:[.,]\d+)?)\s*(%?)$/;

function confidenceIn(scalar: Scalar, place: Place): number {
  let level: number;
  if (typeof scalar === 'number') level = scalar <= 1 ? scalar : scalar / 100;
  else if (typeof scalar === 'object' && scalar.format === 'percent') level = scalar.value;
  else {
    const match = typeof scalar === 'string' ? PERCENT_TEXT.exec(scalar.trim()) : null;
    if (!match) return refuse('VALUE', place, scalar);
    const value = Number(match[1]!.replace(',', '.'));
    level = match[2] === '%' || value > 1 ? value / 100 : value;
  }
  return level >= 0.5 && level <= 0.9999 ? level : refuse('NUM', place, scalar);
}

function markIn(scalar: Scalar, place: Place): string {
  if (typeof scalar === 'number') return String(scalar);
  return typeof scalar === 'string' && !isBlank(scalar) ? scalar.trim() : refuse('VALUE', place, scalar);
}

/** A result in the book's unit. */
export function resultInBook(
  { quantity }: FunctionRecord['result'],
  value: number | string | undefined,
  { lengthUnit }: BookUnits,
): number | string {
  if (value === undefined) return '';
  const isLength = quantity === 'length' || quantity === 'unrounded length';
  return isLength && typeof value === 'number' ? inUnit(value, lengthUnit) : value;
}
