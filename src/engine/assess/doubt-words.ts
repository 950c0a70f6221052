/** What is said of a doubted reading: what it is, what it would be without the slip, what to do. */
import type { Range, SlipCause } from '../../maths/plausibility.js';
import type { LengthUnit } from '../../maths/units.js';
import type { Book } from '../book/book.js';
import { cellAddress } from '../workbook-model.js';
import type { DoubtedReading } from './doubted-readings.js';
import { lengthText } from './words.js';

export const SLIP_WORDS: Readonly<Record<SlipCause, string>> = {
  'half a turn': 'half a turn of the thimble',
  'a turn': 'a turn of the thimble',
  inches: 'typed in inches',
  millimetres: 'typed in millimetres',
  'decimal point': 'the decimal point misplaced',
  'digits exchanged': 'two digits exchanged',
};

/** `42 to 42.003 mm`. */
export function lengthRangeText({ low, high }: Range, unit: LengthUnit): string {
  const [from, to] = [lengthText(low, unit), lengthText(high, unit)];
  return from === to ? from : `${from.replace(/ \S+$/, '')} to ${to}`;
}

/** Where a doubted reading stands, in the words of the user's workbook. */
export interface DoubtedCell {
  readonly sheet: string;
  readonly cell: string;
  /** The header of its column, `A 0`. */
  readonly spot: string;
}

export function cellOf({ part, reading }: DoubtedReading, book: Book): DoubtedCell {
  const { sheet, row } = part.row;
  return {
    sheet: book.tables.get(sheet)?.sheet.name ?? sheet,
    cell: cellAddress(row, reading.column.column),
    spot: reading.column.header,
  };
}

/** What it would be without the slip, in the unit in which it was meant; undefined where no slip explains it. */
export function withoutSlip({ slip, unit }: DoubtedReading): string | undefined {
  if (!slip) return undefined;
  const meant = slip.cause === 'inches' ? 'in' : slip.cause === 'millimetres' ? 'mm' : unit;
  return lengthText(slip.value, meant);
}

/** `42 mm would agree with the other spots (half a turn of the thimble)`. */
function judgement(doubt: DoubtedReading, bookUnit: LengthUnit): string {
  const { slip, farFrom } = doubt;
  if (slip) return `${withoutSlip(doubt)} would agree with ${farFrom[0]!.what} (${SLIP_WORDS[slip.cause]})`;
  const known = farFrom.map(({ what, range }) => `${what}, ${lengthRangeText(range, bookUnit)}`);
  return `far from ${known.join(', and from ')}`;
}

/** For Why of its part: `A 0 is 42.5 mm: 42 mm would agree with …; read Journals!F3 again`. */
export function doubtReason(doubt: DoubtedReading, book: Book): string {
  const { sheet, cell, spot } = cellOf(doubt, book);
  const alike = doubt.alike.map(({ column }) => column.header);
  const like = alike.length > 0 ? `, like ${alike.join(', ')}` : '';
  const joint = doubt.slip ? ': ' : ', ';
  return `${spot} is ${foundText(doubt)}${like}${joint}${judgement(doubt, book.setup.lengthUnit)}; read ${sheet}!${cell} again`;
}

/** For Re-measure, where sheet, part and spot have columns of their own. */
export function doubtShort(doubt: DoubtedReading, { setup }: Book): string {
  return `found ${foundText(doubt)}; ${judgement(doubt, setup.lengthUnit)}`;
}

/** The whole sentence, for a message that stands alone. */
export function doubtSentence(doubt: DoubtedReading, book: Book): string {
  const { sheet, cell, spot } = cellOf(doubt, book);
  const remedy = doubt.slip ? 'read it again, and correct the cell if it was a slip' : 'read it again';
  const { name } = doubt.part.row;
  return `${book.model.file}: ${sheet}!${cell} (${name === '' ? '' : `${name}, `}${spot}): ${doubtShort(doubt, book)}; ${remedy}.`;
}

function foundText({ found, unit }: DoubtedReading): string {
  return lengthText(found, unit);
}
