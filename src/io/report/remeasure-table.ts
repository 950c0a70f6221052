/** What to measure again, the reading that decides most first. */
import type { Remeasure } from '../../engine/assess/remeasure.js';
import type { PageTable } from './page-table.js';

export function remeasureTable(rows: readonly Remeasure[]): PageTable {
  return {
    caption: 'To measure again, the reading that decides most first',
    headers: ['Sheet', 'Part', 'Spot', 'Why'],
    rows: rows.map(({ sheet, part, spot, why }) =>
      [sheet, part, spot, why].map((value) => ({ value, format: 'plain' as const })),
    ),
    rowHeader: 1,
  };
}
