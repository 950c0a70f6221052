/** What a typed text says at a spot, by the rules by which a typed cell is read. */
import { exact, type Ratio, toNumber } from '../../maths/decimal.js';
import { readScanned, scanNumber } from '../book/number-text.js';
import { readingRule } from '../book/parts.js';
import { quoted } from '../book/problems.js';
import { Row } from '../book/row.js';
import { type ReadingColumn, Table } from '../book/table.js';
import type { Cell } from '../workbook-model.js';

/** A typed reading as it goes into its cell. */
export interface TypedReading {
  readonly mm: Ratio;
  /** A number in the column's unit, or the text with its own unit. */
  readonly value: number | string;
}

/** A kilometre: not even a missing decimal point makes a part so long. */
const LONGEST_MM = 1e6;

/** @returns a sentence where the text is no reading */
export function readTyped(
  table: Table,
  row: number,
  column: ReadingColumn,
  typed: string,
): TypedReading | { readonly fault: string } {
  const cells: Cell[] = [];
  cells[column.column] = { content: { kind: 'text', value: typed } };
  const rows: (Cell | undefined)[][] = [];
  rows[table.headerRow] = table.sheet.rows[table.headerRow]!;
  rows[row] = cells;
  const alone = new Table(table.record, { name: table.sheet.name, rows }, table.units);
  const own = new Row(alone, row);
  const rule = readingRule(table.record.readings, column);
  const read = own.reading(column, rule);
  const [bad] = own.bad;
  if (!read || bad) {
    return { fault: `found ${bad?.found ?? 'nothing'}; expected ${bad?.expected ?? 'a length'}` };
  }
  const size = toNumber(read.mm);
  if (!(rule.isAllowed(size) && Math.abs(size) < LONGEST_MM)) {
    return { fault: `found ${quoted(typed)}; expected the length of a part` };
  }
  return { mm: read.mm, value: plainValue(typed, column) ?? typed.trim() };
}

/** The number in the column's unit, where the text names no other unit and the number has the same value. */
function plainValue(typed: string, column: ReadingColumn): number | undefined {
  const scan = scanNumber(typed);
  if (!scan || scan.fraction || (scan.unit !== undefined && scan.unit !== column.unit)) return undefined;
  const read = readScanned(scan, column.unit !== 'µm', undefined);
  if (typeof read !== 'object' || !('value' in read)) return undefined;
  const value = toNumber(read.value);
  const again = exact(value);
  const isSame = again.numerator * read.value.denominator === read.value.numerator * again.denominator;
  return isSame ? value : undefined;
}
