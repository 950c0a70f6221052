/**
 * The cheapest assignment of rows to columns, each row to one column, each column at most so often.
 *
 * Shortest augmenting paths with potentials (Kuhn, The Hungarian method for the assignment problem,
 * 1955; Edmonds and Karp, 1972), columns with a capacity, one row after the other.
 */

/** Cost of a row in a column; infinite where it cannot go there. */
export interface AssignmentProblem {
  readonly rows: number;
  readonly columns: number;
  /** Row by row. */
  readonly costs: Float64Array;
  /** How many rows each column can take. */
  readonly capacity: ArrayLike<number>;
}

/** Rows by the column that they are in, as linked lists. */
class Places {
  readonly of: Int32Array;
  private readonly lists: Set<number>[];

  constructor({ rows, columns }: AssignmentProblem) {
    this.of = new Int32Array(rows).fill(-1);
    this.lists = Array.from({ length: columns }, () => new Set<number>());
  }

  in(column: number): ReadonlySet<number> {
    return this.lists[column]!;
  }

  move(row: number, column: number): void {
    const before = this.of[row]!;
    if (before >= 0) this.lists[before]!.delete(row);
    this.of[row] = column;
    this.lists[column]!.add(row);
  }
}

/**
 * @returns the column of each row, or undefined where not every row can have one
 */
export function assign(problem: AssignmentProblem): Int32Array | undefined {
  const { rows, columns, costs, capacity } = problem;
  const places = new Places(problem);
  const columnPrice = new Float64Array(columns);
  const distance = new Float64Array(columns);
  const from = new Int32Array(columns);
  const settled = new Uint8Array(columns);
  for (let start = 0; start < rows; start++) {
    distance.fill(Number.POSITIVE_INFINITY);
    settled.fill(0);
    const order: number[] = [];
    const reach = (row: number, offset: number) => {
      const first = row * columns;
      for (let column = 0; column < columns; column++) {
        if (settled[column]) continue;
        const next = offset + costs[first + column]! + columnPrice[column]!;
        if (next < distance[column]!) {
          distance[column] = next;
          from[column] = row;
        }
      }
    };
    reach(start, 0);
    let end = -1;
    while (end < 0) {
      let nearest = -1;
      for (let column = 0; column < columns; column++) {
        if (settled[column] || distance[column] === Number.POSITIVE_INFINITY) continue;
        if (nearest < 0 || distance[column]! < distance[nearest]!) nearest = column;
      }
      if (nearest < 0) return undefined;
      settled[nearest] = 1;
      order.push(nearest);
      if (places.in(nearest).size < capacity[nearest]!) end = nearest;
      else {
        const price = distance[nearest]!;
        for (const row of places.in(nearest)) {
          reach(row, price - costs[row * columns + nearest]! - columnPrice[nearest]!);
        }
      }
    }
    const length = distance[end]!;
    for (const column of order) columnPrice[column] = columnPrice[column]! + length - distance[column]!;
    for (let column = end; ; ) {
      const row = from[column]!;
      const before = places.of[row]!;
      places.move(row, column);
      if (row === start) break;
      column = before;
    }
  }
  return places.of;
}
