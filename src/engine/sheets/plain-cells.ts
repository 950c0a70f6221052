/** Cells without their formulas, and rows that are made as they are written. */
import type { OutputCell, OutputSheet, PlacedCell, PlacedCells } from '../workbook-model.js';

function plain({ value, format }: OutputCell): OutputCell {
  return { value, format };
}

export function plainCells(cells: PlacedCells): PlacedCells {
  const plainCell = (placed: PlacedCell) => ({ ...placed, cell: plain(placed.cell) });
  if (!('bounds' in cells)) return cells.map(plainCell);
  const { bounds, formats } = cells;
  return { bounds, formats, ...againAndAgain(() => mapped(cells, plainCell)) };
}

export function plainRows(rows: OutputSheet['rows']): OutputSheet['rows'] {
  return againAndAgain(() => mapped(rows, (row) => row.map((cell) => cell && plain(cell))));
}

/** An iterable that begins anew whenever it is gone through. */
export function againAndAgain<Value>(begin: () => Iterator<Value>): Iterable<Value> {
  return { [Symbol.iterator]: begin };
}

function* mapped<Value, Result>(values: Iterable<Value>, map: (value: Value) => Result): Generator<Result> {
  for (const value of values) yield map(value);
}
