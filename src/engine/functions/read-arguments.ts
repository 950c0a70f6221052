/**
 * Turns what stands in cells into what the bodies of the functions take: lengths on the grain, exact
 * temperatures, tables. Everything else is refused by name; a blank never becomes 0.
 */
import { type ArgumentRecord, ArgumentRefusal, type FunctionRecord } from '../../../functions/definition.js';
import { expectedOf, type FunctionUnits } from '../../../functions/expected.js';
import { messages } from '../../../functions/messages.js';
import {
  describeGiven,
  type Given,
  type GivenPlace,
  isBlankScalar,
  isRange,
  readEachCell,
  refuseGiven,
  unwrapCell,
} from './given.js';
import { readGrain, readMark, readNumber, readQuantity, readUnroundedGrains } from './read-quantity.js';
import { readClasses, readSelection } from './read-tables.js';

/** Reads the arguments of the functions in one book. */
export class ArgumentReader {
  private readonly expected = new Map<ArgumentRecord, string>();
  /** Tables, names and angles already read: the calls of a column may all be given the same ones. */
  private readonly tables = new Map<ArgumentRecord, WeakMap<object, unknown>>();

  constructor(private readonly units: FunctionUnits) {}

  /** @throws ArgumentRefusal that names the argument, or the cell of it, which cannot be used. */
  readAll(record: FunctionRecord, given: readonly Given[]): unknown[] {
    const { arguments: known } = record;
    const values = known.map((argument, place) =>
      place < given.length ? this.read(argument, given[place]) : this.leftOut(argument),
    );
    for (const [low, high] of record.ordered ?? []) checkOrder(record, given, values, low, high);
    return values;
  }

  private expectedOf(argument: ArgumentRecord): string {
    let words = this.expected.get(argument);
    if (words === undefined) {
      words = expectedOf(argument, this.units);
      this.expected.set(argument, words);
    }
    return words;
  }

  private leftOut(argument: ArgumentRecord): unknown {
    if (argument.optional) return argument.default;
    throw new ArgumentRefusal('NA', messages.missing(argument.name, this.expectedOf(argument)));
  }

  private read(argument: ArgumentRecord, given: Given): unknown {
    const { units } = this;
    const place: GivenPlace = { where: argument.name, expected: this.expectedOf(argument) };
    const allowed = argument.allowed ?? {};
    if (!isRange(given) && isBlankScalar(given) && argument.blank === 'refused')
      refuseGiven('VALUE', place, given);
    switch (argument.quantity) {
      case 'lengths':
        return readEachCell(given, place, (scalar, cell) => readGrain(scalar, cell, allowed, units));
      case 'spots':
        return readEachCell(given, place, (scalar, cell) =>
          isBlankScalar(scalar) ? undefined : readGrain(scalar, cell, allowed, units),
        );
      case 'unrounded lengths':
        return readEachCell(given, place, (scalar, cell) =>
          isBlankScalar(scalar) ? undefined : readUnroundedGrains(scalar, cell, allowed, units),
        ).filter((contribution) => contribution !== undefined);
      case 'names':
        return this.onceOf(argument, given, () =>
          readEachCell(given, place, (scalar, cell) =>
            isBlankScalar(scalar) ? undefined : readMark(scalar, cell).toLowerCase(),
          ),
        );
      case 'angles':
        return this.onceOf(argument, given, () =>
          readEachCell(given, place, (scalar, cell) =>
            isBlankScalar(scalar) ? undefined : readNumber(scalar, cell),
          ),
        );
      case 'classes':
        return this.onceOf(argument, given, () => readClasses(argument, given, place, units));
      case 'selection':
        return this.onceOf(argument, given, () => readSelection(argument, given, place, units));
      default:
        return this.readOne(argument, given, place);
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

  private readOne(argument: ArgumentRecord, given: Given, place: GivenPlace): unknown {
    const scalar = unwrapCell(given);
    if (isRange(scalar)) return refuseGiven('VALUE', place, scalar);
    if (isBlankScalar(scalar)) {
      return argument.blank === 'allowed' ? argument.default : refuseGiven('VALUE', place, scalar);
    }
    return readQuantity(argument.quantity, scalar, place, argument.allowed ?? {}, this.units);
  }
}

/** @throws ArgumentRefusal where the first of two arguments lies above the second. */
function checkOrder(
  { arguments: known }: FunctionRecord,
  given: readonly Given[],
  values: readonly unknown[],
  low: string,
  high: string,
): void {
  const [lowPlace, highPlace] = [low, high].map((name) => known.findIndex((known) => known.name === name));
  const [lowValue, highValue] = [values[lowPlace!], values[highPlace!]];
  if (typeof lowValue !== 'number' || typeof highValue !== 'number' || lowValue <= highValue) return;
  const [lowWords, highWords] = [given[lowPlace!], given[highPlace!]].map((one) =>
    describeGiven(unwrapCell(one)),
  );
  throw new ArgumentRefusal('NUM', messages.crossed(low, lowWords!, high, highWords!));
}
