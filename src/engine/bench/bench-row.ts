/** A row with readings: a part of a fit, or a fastener. */
import { readingsAsked } from '../assess/fastener-remeasure.js';
import type { Book, PartRow } from '../book/book.js';
import { type FastenerRow, isOfLength } from '../book/fasteners.js';
import type { ReadingColumn } from '../book/table.js';
import { inputSheets } from '../input-sheets/index.js';
import type { InputSheet } from '../input-sheets/input-sheet.js';

export type BenchRow = PartRow | FastenerRow;

export function isFastener(row: BenchRow): row is FastenerRow {
  return 'group' in row;
}

export function benchRows({ parts, fasteners }: Book): BenchRow[] {
  return [...parts.all(), ...fasteners];
}

/** The sheets whose rows have readings. */
export function measuredSheets(): readonly InputSheet[] {
  return inputSheets().filter(({ readings }) => readings !== undefined);
}

/** Whether a reading of a row can decide anything: of a fastener only what its limits and Renew ask for. */
export function isAskedFor(row: BenchRow, column: ReadingColumn): boolean {
  return !isFastener(row) || readingsAsked(row).includes(isOfLength(column) ? 'Length' : 'Neck');
}

/** Whether two columns of a sheet are readings of one size of a row. */
export function areAlike(row: BenchRow, a: ReadingColumn, b: ReadingColumn): boolean {
  return !isFastener(row) || isOfLength(a) === isOfLength(b);
}
