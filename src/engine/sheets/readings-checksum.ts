/**
 * The live cell that says whether a reading has changed since the run. Matched sets cannot be live, so
 * they must be able to say that they are stale.
 */
import type { Assessment } from '../assess/assess.js';
import type { PartSheet } from '../book/book.js';
import type { Table } from '../book/table.js';
import { quotedSheet } from '../columns/live-terms.js';
import type { OutputCell } from '../workbook-model.js';
import { columnLetters } from '../workbook-model.js';

const SHEETS: readonly PartSheet[] = ['Journals', 'Rods', 'Cases', 'Shells'];

/** Rows below the last that are watched too, so that a part typed after the run is noticed. */
const ROWS_BELOW = 500;

/** The last decimal of the sum that is compared. Weighted by at least 1, one grain in any cell shows. */
const DECIMALS = 5;

/** Weights tell the cells of a range apart, so that two readings which change places are noticed. */
const ROW_WEIGHTS = 97;

function weightOf(column: number): number {
  return 1 + ((column * 101) % 89);
}

export function readingsUnchanged({ book }: Assessment): OutputCell {
  const sums: string[] = [];
  let sum = 0;
  let count = 0;
  const counts: string[] = [];
  for (const name of SHEETS) {
    const table = book.tables.get(name);
    if (!table) continue;
    const columns = table.readingColumns.map(({ column }) => column);
    const temperature = table.columns.get('Temperature');
    if (temperature) columns.push(temperature.column);
    for (const column of columns) {
      const { first, last } = rowsOf(table);
      const range = `${quotedSheet(table.sheet.name)}!${columnLetters(column)}${first + 1}:${columnLetters(column)}${last + 1}`;
      // Given as its own argument, SUMPRODUCT counts a text cell as 0.
      sums.push(`SUMPRODUCT(${range},MOD(ROW(${range}),${ROW_WEIGHTS})+${weightOf(column)})`);
      counts.push(`COUNTA(${range})`);
      for (let row = first; row <= last; row++) {
        const content = table.sheet.rows[row]?.[column]?.content;
        if (!content) continue;
        count += 1;
        if (content.kind === 'number' || content.kind === 'date') {
          sum += content.value * (((row + 1) % ROW_WEIGHTS) + weightOf(column));
        }
      }
    }
  }
  if (sums.length === 0) return { value: 'unchanged', format: 'plain' };
  const total = sums.length === 1 ? sums[0]! : `(${sums.join('+')})`;
  const formula = `IF(AND(ROUND(${total}-${Number(sum.toFixed(DECIMALS))},${DECIMALS})=0,${counts.join('+')}=${count}),"unchanged","changed: run again")`;
  return { value: 'unchanged', format: 'plain', formula };
}

function rowsOf(table: Table): { first: number; last: number } {
  const last = Math.max(table.headerRow + 1, table.sheet.rows.length - 1);
  return { first: table.headerRow + 1, last: last + ROWS_BELOW };
}
