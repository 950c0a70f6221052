/** What a sheet's edit wants of each row, row by row from the top. */
import type { CellContent, OutputCell, PlacedCell, SheetEdit } from '../../engine/workbook-model.js';

/** What the cells of one row are to become, by column. */
export interface RowEdit {
  readonly cells: Map<number, OutputCell>;
  readonly storedValues: Map<number, CellContent>;
}

/** One row after the other, with a look at which comes next. */
export class RowEdits {
  private readonly rows: Iterator<readonly [number, RowEdit]>;
  private ahead: readonly [number, RowEdit] | undefined;

  constructor(edit: SheetEdit) {
    this.rows = rowsOf(edit);
    this.step();
  }

  /** The next row that something is wanted of. */
  get next(): number | undefined {
    return this.ahead?.[0];
  }

  take(): RowEdit {
    const [, edit] = this.ahead!;
    this.step();
    return edit;
  }

  private step(): void {
    const { done, value } = this.rows.next();
    this.ahead = done ? undefined : value;
  }
}

function* rowsOf({ cells, storedValues }: SheetEdit): Generator<readonly [number, RowEdit]> {
  const stored = new Map<number, Map<number, CellContent>>();
  for (const { row, column, content } of storedValues) {
    const known = stored.get(row) ?? new Map<number, CellContent>();
    stored.set(row, known.set(column, content));
  }
  const pending = [...stored.keys()].sort((a, b) => a - b);
  let at = 0;
  const storedBefore = function* (row: number) {
    for (; at < pending.length && pending[at]! < row; at++) {
      yield [pending[at]!, { cells: new Map(), storedValues: stored.get(pending[at]!)! }] as const;
    }
  };
  for (const [row, own] of grouped(cells)) {
    yield* storedBefore(row);
    if (pending[at] === row) at++;
    yield [row, { cells: own, storedValues: stored.get(row) ?? new Map() }] as const;
  }
  yield* storedBefore(Number.POSITIVE_INFINITY);
}

/** Cells that are made as they are written come in the order of the rows; others are sorted first. */
function* grouped(cells: SheetEdit['cells']): Generator<readonly [number, Map<number, OutputCell>]> {
  const ordered: Iterable<PlacedCell> = 'bounds' in cells ? cells : cells.toSorted((a, b) => a.row - b.row);
  let row = -1;
  let own = new Map<number, OutputCell>();
  for (const placed of ordered) {
    if (placed.row !== row) {
      if (own.size > 0) yield [row, own];
      row = placed.row;
      own = new Map();
    }
    own.set(placed.column, placed.cell);
  }
  if (own.size > 0) yield [row, own];
}
