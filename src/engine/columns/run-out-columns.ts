/** The result columns of Run-outs. */
import type { FitResult } from '../assess/fit.js';
import { isStandIn, STAND_INS } from '../book/reading-headers.js';
import { isInOrder, isProven } from './gap-columns.js';
import type { Layout } from './layout.js';
import { liveGreatestRange } from './live-spots.js';
import { fitting, grains, lengthOf, unlessMoved } from './live-terms.js';
import { limitTerms, verdictByReadings } from './live-verdict.js';
import type { ResultColumn } from './result-column.js';

const LENGTH = { quantity: 'length', page: 'measured' } as const;

export const RUN_OUT_COLUMNS: readonly ResultColumn<FitResult>[] = [
  {
    ...LENGTH,
    header: 'Run-out',
    width: 10,
    json: 'runOut',
    help: 'Of each station the largest less the smallest reading, and the greatest of these; else Total.',
    value: ({ clearance }) => clearance?.clearance,
    engine: '=SPOT_RUN_OUT([spots],[stations],[total])',
    isComputed: ({ clearance }) => clearance !== undefined,
    live: liveRunOut,
  },
  {
    ...LENGTH,
    header: 'Run-out U',
    width: 12,
    json: 'runOutU',
    help: 'Twice the standard uncertainty of the run-out; blank without a gauge.',
    value: ({ clearanceU }) => clearanceU,
    engine: '=EXPANDED_UNCERTAINTY([u])',
    isComputed: ({ clearanceU }) => clearanceU !== undefined,
  },
  {
    header: 'Status',
    quantity: 'word',
    width: 19,
    json: 'status',
    help: 'The verdict of the run-out; over its limit it is `beyond limits`.',
    page: 'measured',
    value: ({ status }) => status,
    engine: '=RUN_OUT_VERDICT([Run-out],[min],[max],[inside],[outside],[service limit])',
    isComputed: (fit) => isProven(fit) && isInOrder(fit),
    live: liveStatus,
  },
  {
    header: 'Why',
    quantity: 'sentences',
    width: 50,
    json: 'why',
    help: 'What the verdict rests on.',
    value: ({ why }) => why,
  },
];

function liveRunOut(fit: FitResult, layout: Layout): string | undefined {
  const { row, status } = fit.parts[fit.kind.leader]!;
  if (status === 'bad reading' || fit.status === 'unclear' || row.readings.some(({ isNumber }) => !isNumber))
    return undefined;
  const { tables, setup } = layout.assessment.book;
  const { readingColumns } = tables.get(row.sheet)!;
  const cellOf = (column: number) => layout.inputCell(row.sheet, row.row, column);
  const dial = readingColumns.filter((column) => !isStandIn(column));
  const greatest = liveGreatestRange(dial, cellOf);
  const total = readingColumns.find(({ station }) => station === STAND_INS.total);
  const cell = total && cellOf(total.column);
  const byTotal = cell
    ? `IF(COUNT(${cell})=0,"",${lengthOf(grains(cell, total.unit), setup.lengthUnit)})`
    : undefined;
  if (greatest === undefined) return byTotal;
  return fitting(`IF(${greatest}<0,${byTotal ?? '""'},${lengthOf(greatest, setup.lengthUnit)})`);
}

function liveStatus(fit: FitResult, layout: Layout): string | undefined {
  if (!fit.limitsAreRead || liveRunOut(fit, layout) === undefined) return undefined;
  const part = fit.parts[fit.kind.leader]!;
  const { sheet, row } = part.row;
  const cell = layout.ownCell(sheet, row, 'Run-out');
  const value = grains(cell, layout.assessment.book.setup.lengthUnit);
  const verdict = () => {
    // The guard of what was never read is not known: its verdict needs another run.
    if (fit.status === 'not measured') return '"measured: run again"';
    if (fit.status === 'no limits') return '"no limits"';
    const extremes = { low: value, high: value };
    return verdictByReadings(extremes, limitTerms(fit, layout), fit.guards, 'beyond limits');
  };
  return unlessMoved(layout.isPlace(part), fitting(`IF(COUNT(${cell})=0,"not measured",${verdict()})`));
}
