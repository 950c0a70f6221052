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
  /** A probability or a share, 0..1. */
  | 'chance'
  | 'count'
  | 'price'
  /** A word or a number that is shown as it is. */
  | 'word'
  /** True or false, shown as `yes` or `no`. */
  | 'yes or no'
  /** A name, as its cell has it: a number or a text. */
  | 'name'
  /** A sentence. */
  | 'sentence'
  /** Sentences, joined in a cell. */
  | 'sentences';

export type ResultValue = Grain | number | string | boolean | readonly string[] | undefined;

export interface ResultColumn<Row> {
  readonly header: string;
  readonly quantity: ResultQuantity;
  /** Of a row, where the rows of the column are of several quantities. */
  readonly quantityOf?: (row: Row) => ResultQuantity;
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
  /** In which tables of the page it stands; nowhere where it is left out. */
  readonly page?: PageTables;
}

/** Tables of the page: of what was counted, measured or chosen. */
export type PageTableOf = 'counted' | 'measured' | 'chosen';

/** A column that names the rows stands in every table of them. */
export type PageTables = PageTableOf | 'every';

/** The columns of a table of the page; of the only table of such rows where none is named. */
export function columnsOnPage<Row>(
  columns: readonly ResultColumn<Row>[],
  table?: PageTableOf,
): readonly ResultColumn<Row>[] {
  return columns.filter(({ page }) => page !== undefined && (page === 'every' || page === table));
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

/** How the cells of a quantity look in a book of that unit; a name that is no number is a text like any other. */
export function formatOf(quantity: ResultQuantity, unit: LengthUnit, value?: unknown): OutputFormat {
  switch (quantity) {
    case 'length':
      return unit === 'in' ? 'in' : 'mm';
    case 'chance':
      return 'chance';
    case 'count':
      return 'whole';
    case 'name':
      return typeof value === 'string' ? 'plain' : 'name';
    case 'sentence':
    case 'sentences':
      return 'text';
    case 'price':
    case 'word':
    case 'yes or no':
      return 'plain';
  }
}

/** Every format that the cells of a column may have in a book of that unit. */
export function formatsOf({ quantity }: ResultColumn<never>, unit: LengthUnit): OutputFormat[] {
  const format = formatOf(quantity, unit);
  return format === 'name' ? [format, 'plain'] : [format];
}
