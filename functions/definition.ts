/**
 * What one function of the sheet is: a record from which its registration, the checks of its
 * arguments, its help, its row in the README and its tests are made.
 *
 * Lengths reach a body as whole grains (0.001 µm), and a body returns grains; the conversion from and
 * to the unit of the book is done once, around every body.
 */
import type { SizeClass } from '../src/maths/classes.js';
import type { Ratio } from '../src/maths/decimal.js';
import type { Grain } from '../src/maths/grain.js';
import type { SelectionRow } from '../src/maths/tables.js';

/** The quantities an argument may have, and what a body receives for each. */
export interface QuantityValues {
  /** One length, rounded to the grain. */
  length: Grain;
  /** One length or a range of them without blanks. */
  lengths: readonly Grain[];
  /** A range of lengths, blank where a place was not measured. */
  spots: readonly (Grain | undefined)[];
  /** One length as it was read: exact millimetres, not rounded. */
  reading: Ratio;
  /** One small length such as a standard uncertainty, in grains but not rounded. */
  'unrounded length': number;
  /** A range of these, blanks left out. */
  'unrounded lengths': readonly number[];
  /** Exact degrees Celsius. */
  temperature: Ratio;
  /** 1e-6 per K. */
  expansion: number;
  /** A whole number. */
  count: number;
  /** A level of confidence as 0..1; 0.95, 95 and `95 %` are one. */
  confidence: number;
  flag: boolean;
  /** The mark of a size class; a number is taken as its text. */
  mark: string;
  /** A range of names, blank where there is none. */
  names: readonly (string | undefined)[];
  /** A range of angles in degrees, blank where there is none. */
  angles: readonly (number | undefined)[];
  /** Rows of Mark, From, To. */
  classes: readonly SizeClass[];
  /** Rows of Journal mark, Bore mark, Shell mark. */
  selection: readonly SelectionRow[];
}

export type Quantity = keyof QuantityValues;

/** An allowed range, in mm, °C or the plain unit of the quantity. */
export interface AllowedRange {
  /** Lower end, excluded. */
  readonly above?: number;
  /** Lower end, included. */
  readonly from?: number;
  /** Upper end, included. */
  readonly to?: number;
}

export interface ArgumentRecord {
  readonly name: string;
  readonly meaning: string;
  readonly quantity: Quantity;
  readonly allowed?: AllowedRange;
  /** Whether a blank is an error that names the argument, or has the meaning that `blankMeans` states. */
  readonly blank: 'refused' | 'allowed';
  readonly blankMeans?: string;
  /** True where the argument may be left out at the end of the list. */
  readonly optional?: boolean;
  /** What the body receives for a blank or left-out argument; without it, undefined. */
  readonly default?: number | boolean;
}

type ValueOf<A> = A extends { readonly quantity: infer Q extends Quantity }
  ? A extends { readonly blank: 'refused' } | { readonly default: number | boolean }
    ? QuantityValues[Q]
    : QuantityValues[Q] | undefined
  : never;

export type ValuesOf<Arguments extends readonly ArgumentRecord[]> = {
  [Place in keyof Arguments]: ValueOf<Arguments[Place]>;
};

export type ErrorCode = 'VALUE' | 'NUM' | 'NA';

export interface ResultRecord {
  readonly meaning: string;
  /** `length` is on the grain; `unrounded length` is not; both are given in the book's unit. */
  readonly quantity: 'length' | 'unrounded length' | 'probability' | 'text';
  /** When the result is the empty text. */
  readonly emptyWhen?: string;
}

export interface ErrorRecord {
  readonly code: ErrorCode;
  readonly when: string;
  /** A message as a cell shows it, that of one of the examples. */
  readonly message: string;
}

export type ExampleCell = number | string | boolean | null;

export interface Example {
  readonly kind: 'ordinary' | 'edge' | 'refused';
  readonly says: string;
  /** Cells from A1 on; null is a blank cell, a text that starts with `=` a formula. */
  readonly grid?: readonly (readonly ExampleCell[])[];
  readonly formula: string;
  readonly expected: number | string | { readonly error: ErrorCode; readonly message: string };
  /** How far a number may be off; 0 where it is left out. */
  readonly tolerance?: number;
  /** The unit of lengths in this example; mm where it is left out. */
  readonly lengthUnit?: 'mm' | 'in';
  readonly temperatureUnit?: 'C' | 'F';
}

/** What a body returns: a number or text, or undefined where nothing can be formed (the empty text). */
export type BodyResult = number | string | undefined;

interface Described<Arguments extends readonly ArgumentRecord[]> {
  readonly name: string;
  /** `workshop`: for cells that users type; `columns`: what the columns of the written workbook need. */
  readonly group: 'workshop' | 'columns';
  readonly sentence: string;
  readonly arguments: Arguments;
  /** Pairs of arguments of which the first must not lie above the second. */
  readonly ordered?: readonly (readonly [low: string, high: string])[];
  readonly result: ResultRecord;
  readonly errors: readonly ErrorRecord[];
  readonly examples: readonly Example[];
  readonly source: string;
  readonly since: string;
  readonly related: readonly string[];
}

export interface FunctionRecord extends Described<readonly ArgumentRecord[]> {
  readonly body: (...values: readonly unknown[]) => BodyResult;
}

/** Ties the types of a body's parameters to its argument records. */
export function defineFunction<const Arguments extends readonly ArgumentRecord[]>(
  record: Described<Arguments> & { readonly body: (...values: ValuesOf<Arguments>) => BodyResult },
): FunctionRecord {
  return record as unknown as FunctionRecord;
}

/** Thrown where an argument cannot be used; becomes the error value of the cell. */
export class ArgumentRefusal extends Error {
  constructor(
    readonly code: ErrorCode,
    message: string,
  ) {
    super(message);
    this.name = 'ArgumentRefusal';
  }
}
