/** What a typed text says at a spot, by the rules by which a typed cell is read. */
import { decimalText, exact, parseDecimal, type Ratio, toNumber } from '../../maths/decimal.js';
import { grainOfRatio } from '../../maths/grain.js';
import type { LengthUnit } from '../../maths/units.js';
import { lengthText } from '../assess/words.js';
import { readScanned, scanNumber } from '../book/number-text.js';
import { readingRule } from '../book/parts.js';
import { quoted } from '../book/problems.js';
import { Row } from '../book/row.js';
import { isLength, type ReadingColumn, Table } from '../book/table.js';
import { MEASURED } from '../input-sheets/common-columns.js';
import { type ReadExactLength, SETTING } from '../input-sheets/quantities.js';
import type { Cell } from '../workbook-model.js';

/** A typed reading as it goes into its cell. */
export interface TypedReading {
  readonly mm: Ratio;
  /** What goes into the cell of a row whose gauge was set to a size. */
  readonly deviation?: Ratio;
  /** A number in the column's unit, or the text with its own unit. */
  readonly value: number | string;
}

/** The size to which a gauge's zero was set, as it goes into its cell. */
export interface TypedSetting extends ReadExactLength {
  readonly value: number | string;
}

export interface Fault {
  readonly fault: string;
}

/** A kilometre: not even a missing decimal point makes a part so long. */
const LONGEST_MM = 1e6;

/** One step of a comparator or a dial: 0.001 mm, on a column of inches 0.0001 in. Common practice, no published source. */
const STEPS: Readonly<Record<LengthUnit, Ratio>> = {
  mm: { numerator: 1n, denominator: 1000n },
  µm: { numerator: 1n, denominator: 1n },
  in: { numerator: 1n, denominator: 10_000n },
};

/** A deviation of more than this part of the size was meant for a size. */
const LARGEST_SHARE = 0.1;

const WHOLE = /^([+-]?)\s*(\d{1,6})$/;

/**
 * What a cell with this text says.
 * @returns a sentence where the text is no reading
 */
export function readTyped(
  table: Table,
  row: number,
  column: ReadingColumn,
  typed: string,
  setTo?: ReadExactLength,
): TypedReading | Fault {
  const own = rowWith(table, row, column.column, typed);
  const rule = readingRule(table.record.readings, column);
  const read = setTo ? own.deviation(column, setTo) : own.reading(column, rule);
  const [bad] = own.bad;
  if (!read || bad) {
    return { fault: `found ${bad?.found ?? 'nothing'}; expected ${bad?.expected ?? 'a length'}` };
  }
  const size = toNumber(read.mm);
  if (!(rule.isAllowed(size) && Math.abs(size) < LONGEST_MM)) {
    return { fault: `found ${quoted(typed)}; expected the length of a part` };
  }
  const { mm, deviation } = read;
  return { mm, ...(deviation && { deviation }), value: plainValue(typed, column.unit) ?? typed.trim() };
}

/**
 * What a line at the bench says: of a row whose gauge was set to a size `+12` is 12 steps, `+0.012` a length.
 * @returns a sentence where the text is no reading
 */
export function readAtBench(
  table: Table,
  row: number,
  column: ReadingColumn,
  typed: string,
  setTo?: ReadExactLength,
): TypedReading | Fault {
  const [, sign, digits] = WHOLE.exec(typed.trim().replaceAll(/[‐‑‒–−]/g, '-')) ?? [];
  const isWhole = digits !== undefined && Number(digits) > 0;
  if (!setTo) {
    const isSigned = table.record.readings === 'gaps' || table.record.readings === 'dial';
    if (isSigned || !isWhole || sign === '') return readTyped(table, row, column, typed);
    return {
      fault: `found ${quoted(typed)}; expected a size; steps count from the size that the gauge is set to: z 43.000`,
    };
  }
  if (isWhole && sign === '') {
    return {
      fault: `found ${quoted(typed)}; expected +${digits} or -${digits} for steps, or a length such as +0.012`,
    };
  }
  const text = isWhole ? stepsText(`${sign}${digits}`, column.unit) : typed;
  const read = readTyped(table, row, column, text, setTo);
  if ('fault' in read || Math.abs(toNumber(read.deviation!)) <= LARGEST_SHARE * toNumber(setTo.mm))
    return read;
  const zero = lengthText(grainOfRatio(setTo.mm), table.units.length);
  return { fault: `found ${quoted(typed)}; expected the deviation from ${zero}; for sizes type z off first` };
}

function stepsText(steps: string, unit: LengthUnit): string {
  const { numerator, denominator } = STEPS[unit];
  const count = parseDecimal(steps)!;
  return decimalText({ numerator: count.numerator * numerator, denominator })!;
}

/** The size that follows `z`, as its cell is read. */
export function readSetting(table: Table, row: number, typed: string): TypedSetting | Fault {
  const { header } = MEASURED.setTo;
  const known = table.columns.get(header)!;
  const own = rowWith(table, row, known.column, typed);
  const read = own.exactLength(header, SETTING);
  const [bad] = own.bad;
  if (!read || bad)
    return { fault: `found ${bad?.found ?? 'nothing'}; expected the size that the gauge is set to` };
  const unit = isLength(known.unit) ? known.unit : table.units.length;
  return { ...read, value: plainValue(typed, unit) ?? typed.trim() };
}

/** A row that holds the text and nothing else. */
function rowWith(table: Table, row: number, column: number, typed: string): Row {
  const cells: Cell[] = [];
  cells[column] = { content: { kind: 'text', value: typed } };
  const rows: (Cell | undefined)[][] = [];
  rows[table.headerRow] = table.sheet.rows[table.headerRow]!;
  rows[row] = cells;
  return new Row(new Table(table.record, { name: table.sheet.name, rows }, table.units), row);
}

/** The number in the column's unit, where the text names no other unit and the number has the same value. */
function plainValue(typed: string, unit: LengthUnit): number | undefined {
  const scan = scanNumber(typed);
  if (!scan || scan.fraction || (scan.unit !== undefined && scan.unit !== unit)) return undefined;
  const read = readScanned(scan, unit !== 'µm', undefined);
  if (typeof read !== 'object' || !('value' in read)) return undefined;
  const value = toNumber(read.value);
  const again = exact(value);
  const isSame = again.numerator * read.value.denominator === read.value.numerator * again.denominator;
  return isSame ? value : undefined;
}
