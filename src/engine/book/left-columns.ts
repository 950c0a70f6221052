/** Columns of an earlier run that no later one brings up to date: the user changed so much that they are no longer known for ours. */
import { headerKey } from './names.js';
import { isOwnColumn, type OwnColumns, type OwnHeaders } from './own-columns.js';
import { isStatusWord } from './status-words.js';
import type { Table } from './table.js';

/** Fewer headers of ours one behind the other are a user's own. */
const LEAST = 3;

/**
 * The first and the last column of such results; undefined where there are none.
 * @param own the columns that are known for ours
 */
export function leftColumns(
  table: Table,
  own: OwnColumns | undefined,
  ownHeaders: OwnHeaders,
): { readonly first: number; readonly last: number } | undefined {
  const keys = Array.from(table.headers, (header, column) =>
    header === undefined || (own && isOwnColumn(own, column)) ? '' : headerKey(header),
  );
  for (const list of ownHeaders(table.name)) {
    const ours = list.map(headerKey);
    const found = ours.length > LEAST ? longestRun(ours, keys) : [];
    const isWhole = found.length === ours.length;
    if (found.length >= LEAST && (isWhole || found.some((column) => holdsStatus(table, column))))
      return { first: found[0]!, last: found.at(-1)! };
  }
  // Of Status and Why alone, only our own words under one of them tell.
  const column = keys.findIndex(
    (key, at) => key !== '' && (key === 'status' || key === 'why') && holdsStatus(table, at),
  );
  const isTyped = column >= 0 && table.columns.has(table.headers[column]!);
  return column >= 0 && !isTyped && ownHeaders(table.name).length > 0
    ? { first: column, last: column }
    : undefined;
}

/** Most headers of the list in its order, from the right. */
function longestRun(ours: readonly string[], keys: readonly string[]): number[] {
  let best: number[] = [];
  for (let end = keys.length - 1; end >= 0; end--) {
    if (!ours.includes(keys[end]!)) continue;
    const run: number[] = [];
    let next = ours.length - 1;
    for (let at = end; at >= 0 && end - at < 2 * ours.length; at--) {
      const place = keys[at] === '' ? -1 : ours.lastIndexOf(keys[at]!, next);
      if (place < 0) continue;
      run.unshift(at);
      next = place - 1;
      if (next < 0) break;
    }
    if (run.length > best.length) best = run;
  }
  return best;
}

function holdsStatus({ sheet, headerRow }: Table, column: number): boolean {
  return sheet.rows.some((cells, row) => row > headerRow && isStatusWord(cells[column]?.content?.value));
}
