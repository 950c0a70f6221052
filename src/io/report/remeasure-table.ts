/** What to measure again, the reading that decides most first. */
import type { Remeasure } from '../../engine/assess/remeasure-words.js';
import { REMEASURE } from '../../engine/columns/remeasure-columns.js';
import type { Element } from './elements.js';
import { type PageContext, tableIn } from './page-pieces.js';
import { listTable } from './result-tables.js';

export function remeasureIn(page: PageContext, rows: readonly Remeasure[]): Element[] {
  const caption = 'To measure again, the reading that decides most first';
  return tableIn(page, listTable(caption, REMEASURE, rows, page.assessment));
}
