/** How many spots the parts of a sheet and Fit are read at. A part that lacks one of them says so; no verdict changes. */
import type { PartRow } from '../book/book.js';
import { nameKey } from '../book/names.js';
import type { ReadingColumn } from '../book/table.js';

/** By the key of the Fit's name. */
export function spotCounts(rows: readonly PartRow[]): ReadonlyMap<string, number> {
  const columns = new Map<string, Set<ReadingColumn>>();
  for (const { fit, readings } of rows) {
    const key = nameKey(fit);
    const own = columns.get(key) ?? new Set();
    columns.set(key, own);
    for (const { column } of readings) own.add(column);
  }
  return new Map(
    [...columns].map(([fit, own]) => [
      fit,
      new Set([...own].map(({ station, angle }) => `${station}\u0000${angle}`)).size,
    ]),
  );
}
