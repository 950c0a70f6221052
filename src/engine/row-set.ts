/** Rows of a sheet, of which there may be a hundred thousand. */
export class RowSet {
  /** @param rows in ascending order */
  constructor(private readonly rows: readonly number[]) {}

  /** The same rows and one before them. */
  with(first: number): RowSet {
    return new RowSet([first, ...this.rows]);
  }

  has(row: number): boolean {
    return this.hasBetween(row, row);
  }

  /** Whether one of the rows lies between two, both included. */
  hasBetween(top: number, bottom: number): boolean {
    const { rows } = this;
    let [from, to] = [0, rows.length];
    while (from < to) {
      const middle = (from + to) >> 1;
      if (rows[middle]! < top) from = middle + 1;
      else to = middle;
    }
    return from < rows.length && rows[from]! <= bottom;
  }
}
