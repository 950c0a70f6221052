/** One column that the program writes: everything about it stands in one record. */
import type { Grain } from '../../maths/grain.js';
import type { LengthUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import type { OutputFormat } from '../workbook-model.js';
import type { Layout } from './layout.js';

/** What the values of a column are, and so how sheets, page and JSON show them. */
export type ResultQuantity =
  /** Grains. */
  | 'length'
  /** A probability 0..1. */
  | 'chance'
  | 'count'
  /** A word or a number that is shown as it is. */
  | 'word'
  /** A name, as its cell has it: a number or a text. */
  | 'name'
  /** Sentences, joined in a cell. */
  | 'sentences';

export type ResultValue = Grain | number | string | readonly string[] | undefined;

export interface ResultColumn<Row> {
  readonly header: string;
  readonly quantity: ResultQuantity;
  /** In characters, where the header stands in one line. */
  readonly width: number;
  /** In characters on a sheet of the program's own, where headers wrap; as `width` where it is left out. */
  readonly wrappedWidth?: number;
  /** Its key in the JSON document; without one it does not stand there. */
  readonly json?: string;
  /** What the column says, for the documentation. */
  readonly help: string;
  /** What was computed of the row: lengths in grains; undefined is a blank cell. */
  readonly value: (row: Row, assessment: Assessment) => ResultValue;
  /**
   * The formula in custom functions, with its `=`, over the inputs and the columns of its own row:
   * `=FIT_GRADE([Size],[classes])`. Its value is held against `value`.
   */
  readonly engine?: string;
  /** Whether the formula gives the value of a row. */
  readonly isComputed?: (row: Row, assessment: Assessment) => boolean;
  /** The formula in built-in functions, without `=`; undefined where the cell is plain. */
  readonly live?: (row: Row, layout: Layout) => string | undefined;
  /** In which table of the page it stands: what was measured, what was chosen; nowhere where it is left out. */
  readonly page?: 'measured' | 'chosen';
}

/** Seven decimals of an inch and the room beside them, in a wide face. */
const LEAST_INCH_WIDTH = 12;

/** The width of a column in a book of that unit. */
export function widthOf(
  { quantity, width, wrappedWidth = width }: ResultColumn<never>,
  unit: LengthUnit,
  isWrapped = false,
): number {
  const own = isWrapped ? wrappedWidth : width;
  return quantity === 'length' && unit === 'in' ? Math.max(own, LEAST_INCH_WIDTH) : own;
}

/** How the cells of a column look in a book of that unit. */
export function formatOf({ quantity }: ResultColumn<never>, unit: LengthUnit): OutputFormat {
  switch (quantity) {
    case 'length':
      return unit === 'in' ? 'in' : 'mm';
    case 'chance':
      return 'chance';
    case 'count':
      return 'whole';
    case 'name':
      return 'name';
    case 'sentences':
      return 'text';
    case 'word':
      return 'plain';
  }
}
