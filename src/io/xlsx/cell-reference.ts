/** Addresses of cells and ranges, as indices from 0. */
import type { CellBounds, PlacedCells } from '../../engine/workbook-model.js';
import { LIMITS } from '../gate/limits.js';

export const MAX_ROWS = LIMITS.rows;
export const MAX_COLUMNS = LIMITS.columns;

export type Rect = CellBounds;

/** The index of a column's letters: A is 0. */
export function columnIndex(letters: string): number {
  let index = 0;
  for (let i = 0; i < letters.length; i++) index = index * 26 + (letters.charCodeAt(i) & 31);
  return index - 1;
}

/** `B3` as row 2, column 1; undefined for what is no address. Larger than any sheet is still an address. */
export function parseAddress(address: string): { row: number; column: number } | undefined {
  const match = /^\$?([A-Za-z]{1,7})\$?([1-9]\d{0,9})$/.exec(address);
  return match ? { row: Number(match[2]) - 1, column: columnIndex(match[1]!) } : undefined;
}

/** `A1:C3`, or one cell, as a rectangle; undefined for what is no range. */
export function parseRange(range: string): Rect | undefined {
  const [from, to] = range.split(':').map(parseAddress);
  if (!from) return undefined;
  if (range.includes(':') && !to) return undefined;
  const end = to ?? from;
  return {
    top: Math.min(from.row, end.row),
    left: Math.min(from.column, end.column),
    bottom: Math.max(from.row, end.row),
    right: Math.max(from.column, end.column),
  };
}

export function contains(rect: Rect, row: number, column: number): boolean {
  return row >= rect.top && row <= rect.bottom && column >= rect.left && column <= rect.right;
}

export function overlap(a: Rect, b: Rect): boolean {
  return a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;
}

/** The smallest rectangle around cells and, where given, around another rectangle. */
export function boundsOf(cells: PlacedCells, around?: Rect): Rect | undefined {
  if ('bounds' in cells)
    return around && cells.bounds ? union(around, cells.bounds) : (around ?? cells.bounds);
  let bounds = around;
  for (const { row, column } of cells) {
    if (bounds && contains(bounds, row, column)) continue;
    const cell = { top: row, left: column, bottom: row, right: column };
    bounds = bounds ? union(bounds, cell) : cell;
  }
  return bounds;
}

/** The very rectangle `a` where it holds `b`. */
function union(a: Rect, b: Rect): Rect {
  if (contains(a, b.top, b.left) && contains(a, b.bottom, b.right)) return a;
  return {
    top: Math.min(a.top, b.top),
    left: Math.min(a.left, b.left),
    bottom: Math.max(a.bottom, b.bottom),
    right: Math.max(a.right, b.right),
  };
}
