/** What is found wrong with the rows of a table. */
import type { TableRow } from '../book/read-row.js';

export type Findings = ReadonlyMap<TableRow, readonly string[]>;

export class Gathered extends Map<TableRow, string[]> {
  add(row: TableRow, finding: string): void {
    this.set(row, [...(this.get(row) ?? []), finding]);
  }
}
