/**
 * The live cell that says whether a reading has changed since the run. Matched sets cannot be live, so
 * they must be able to say that they are stale.
 */
import type { Assessment } from '../assess/assess.js';
import type { Table } from '../book/table.js';
import { MEASURED } from '../input-sheets/common-columns.js';
import { inputSheets } from '../input-sheets/index.js';
import { columnLetters, type OutputCell } from '../workbook-model.js';
import { fitting, quotedSheet, sheetCell } from './live-terms.js';

const MOST_CONDITIONS = 255;

/** Rows below the last that are watched too, so that a part typed after the run is noticed. */
const ROWS_BELOW = 500;

/** The last decimal of the sums that are compared. Weighted by at least 1, one grain in any cell shows. */
const DECIMALS = 6;

const CHANGED = 'changed: run again';

/**
 * Weights tell cells apart, so that readings which change places are noticed: two sums weigh the rows, by remainders of
 * two primes, and one the columns. Two cells weigh the same in all three only in one column, 8633 rows apart.
 */
const ROW_WEIGHTS = [97, 89] as const;

/** One of the sums, as a formula and as its value at the run. */
class Sum {
  private readonly terms: string[] = [];
  private value = 0;

  add(term: string): void {
    this.terms.push(term);
  }

  count(value: number, weight: number): void {
    this.value += value * weight;
  }

  get condition(): string {
    const total = this.terms.length === 1 ? this.terms[0]! : `(${this.terms.join('+')})`;
    return `ROUND(${total}-${Number(this.value.toFixed(DECIMALS))},${DECIMALS})=0`;
  }
}

const rowWeight = (row: number, prime: number) => ((row + 1) % prime) + 1;

export function readingsUnchanged({ book }: Assessment): OutputCell {
  const ofRows = ROW_WEIGHTS.map((prime) => ({ prime, sum: new Sum() }));
  const ofColumns = new Sum();
  let columnWeight = 0;
  let count = 0;
  const counts: string[] = [];
  /** Conditions on cells that no sum takes in. */
  const singles: string[] = [];
  for (const { name } of inputSheets().filter(({ readings }) => readings)) {
    const table = book.tables.get(name);
    if (!table) continue;
    const columns = table.readingColumns.map(({ column }) => column);
    for (const { header } of [MEASURED.temperature, MEASURED.setTo]) {
      const known = table.columns.get(header);
      if (known) columns.push(known.column);
    }
    for (const column of columns) {
      columnWeight += 1;
      const { first, last } = rowsOf(table);
      const rangeOf = (from: number, to: number) =>
        `${quotedSheet(table.sheet.name)}!${columnLetters(column)}${from + 1}:${columnLetters(column)}${to + 1}`;
      for (const [from, to] of withoutRefused(table, column, first, last)) {
        const range = rangeOf(from, to);
        // Given as its own argument, SUMPRODUCT counts a text cell as 0.
        for (const { prime, sum } of ofRows) sum.add(`SUMPRODUCT(${range},MOD(ROW(${range}),${prime})+1)`);
        ofColumns.add(`${columnWeight}*SUM(${range})`);
      }
      counts.push(`COUNTA(${rangeOf(first, last)})`);
      for (let row = first; row <= last; row++) {
        const content = table.sheet.rows[row]?.[column]?.content;
        if (!content) continue;
        count += 1;
        if (content.kind === 'number' || content.kind === 'date') {
          for (const { prime, sum } of ofRows) sum.count(content.value, rowWeight(row, prime));
          ofColumns.count(content.value, columnWeight);
        } else if (content.kind === 'text') {
          const cell = sheetCell(table.sheet.name, row, column);
          singles.push(`EXACT(${cell},"${content.value.replaceAll('"', '""')}")`);
        } else {
          const cell = sheetCell(table.sheet.name, row, column);
          singles.push(content.kind === 'error' ? `ISERROR(${cell})` : `ISLOGICAL(${cell})`);
        }
      }
    }
  }
  if (columnWeight === 0) return { value: 'unchanged', format: 'plain' };
  const others = [`${counts.join('+')}=${count}`, ...singles];
  const [rows, otherRows] = ofRows.map(({ sum }) => sum.condition);
  // Where many cells are refused there is no room for every sum.
  const formula =
    watching([rows!, otherRows!, ofColumns.condition, ...others]) ??
    watching([rows!, ofColumns.condition, ...others]) ??
    watching([rows!, ...others]);
  return { value: formula ? 'unchanged' : 'not watched: run again after a change', format: 'plain', formula };
}

/** Undefined where it would be longer than programs take: AND takes at most 255 conditions in every one. */
function watching(conditions: readonly string[]): string | undefined {
  if (conditions.length > MOST_CONDITIONS) return undefined;
  return fitting(`IFERROR(IF(AND(${conditions.join(',')}),"unchanged","${CHANGED}"),"${CHANGED}")`);
}

function rowsOf(table: Table): { first: number; last: number } {
  const last = Math.max(table.headerRow + 1, table.sheet.rows.length - 1);
  return { first: table.headerRow + 1, last: last + ROWS_BELOW };
}

/**
 * The rows of a column in stretches, without cells that hold an error, which would spoil the sum, or a
 * boolean, which one spreadsheet program counts as 1 and another as 0.
 */
function withoutRefused(table: Table, column: number, first: number, last: number): [number, number][] {
  const stretches: [number, number][] = [];
  let from = first;
  for (let row = first; row <= last + 1; row++) {
    const kind = table.sheet.rows[row]?.[column]?.content?.kind;
    if (row <= last && kind !== 'error' && kind !== 'boolean') continue;
    if (row > from) stretches.push([from, row - 1]);
    from = row + 1;
  }
  return stretches;
}
