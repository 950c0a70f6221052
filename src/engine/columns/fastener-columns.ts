/** The result columns of the sheet Fasteners. */
import type { FastenerResult } from '../assess/fastener.js';
import { isOfLength } from '../book/fasteners.js';
import { FASTENERS } from '../input-sheets/fasteners.js';
import type { Layout } from './layout.js';
import { liveExtremes } from './live-spots.js';
import { beyond, clear, fitting, GRAINS, grains, ifNumber, unlessMoved } from './live-terms.js';
import type { ResultColumn } from './result-column.js';

type FastenerColumn = ResultColumn<FastenerResult>;

const LENGTH = { quantity: 'length', page: 'measured', width: 11 } as const;

const LONGEST: FastenerColumn = {
  ...LENGTH,
  header: 'Longest',
  json: 'longest',
  help: 'The longest of its lengths.',
  value: ({ longest }) => longest,
  engine: '=LARGEST_SPOT([lengths])',
  isComputed: ({ longest }) => longest !== undefined,
  live: (fastener, layout) => extremeOf('longest', fastener, layout),
};

const THINNEST: FastenerColumn = {
  ...LENGTH,
  header: 'Thinnest',
  json: 'thinnest',
  help: 'The thinnest of its necks.',
  value: ({ thinnest }) => thinnest,
  engine: '=SMALLEST_SPOT([necks])',
  isComputed: ({ thinnest }) => thinnest !== undefined,
  live: (fastener, layout) => extremeOf('thinnest', fastener, layout),
};

export const FASTENER_COLUMNS: readonly FastenerColumn[] = [
  LONGEST,
  THINNEST,
  {
    header: 'Status',
    quantity: 'word',
    width: 14,
    json: 'status',
    help: '`renew`, `not measured`, `undecided`, `within limits`, `no limits` or `bad reading`.',
    page: 'measured',
    value: ({ status }) => status,
    engine:
      '=FASTENER_STATUS([renew],[Longest],[Thinnest],[length max],[neck min],[length inside],[length outside],' +
      '[neck inside],[neck outside])',
    isComputed: ({ status }) => status !== 'bad reading',
    live: (fastener, layout) => unlessMoved(namesOf(fastener, layout), liveStatus(fastener, layout)),
  },
  {
    header: 'Why',
    quantity: 'sentences',
    width: 50,
    json: 'why',
    help: 'What the verdict rests on, and what is odd.',
    value: ({ why }) => why,
  },
];

/** Whether the row still holds the fastener that it held at this run: a table over rows may have been sorted. */
function namesOf({ row }: FastenerResult, layout: Layout): (string | undefined)[] {
  return FASTENERS.rowNames.map((header) => layout.isNamed(row.sheet, row.row, header, true));
}

/** Undefined where a reading is a text, which no built-in formula reads as the program does. */
function extremeOf(
  of: 'longest' | 'thinnest',
  { row, status }: FastenerResult,
  layout: Layout,
): string | undefined {
  const { tables, setup } = layout.assessment.book;
  const isOwn = (column: { readonly station: string }) => isOfLength(column) === (of === 'longest');
  const isTyped = row.readings.some(({ column, isNumber }) => isOwn(column) && !isNumber);
  if (status === 'bad reading' || isTyped) return undefined;
  const columns = tables.get(row.sheet)!.readingColumns.filter(isOwn);
  const cellOf = (column: number) => layout.inputCell(row.sheet, row.row, column);
  const found = liveExtremes(columns, setup.lengthUnit, cellOf);
  return of === 'longest' ? found.largest : found.smallest;
}

function liveStatus(fastener: FastenerResult, layout: Layout): string | undefined {
  const { row, status, checks, lengths, necks } = fastener;
  if (status === 'bad reading') return undefined;
  const { renew } = row;
  const blank = (header: string) => `${layout.ownCell(row.sheet, row.row, header)}=""`;
  const isUnread = [
    ...(renew === 'by length' ? [blank(LONGEST.header)] : []),
    ...(renew === 'by neck' ? [blank(THINNEST.header)] : []),
  ];
  const otherwise = (verdict: string) =>
    isUnread.length === 0 ? verdict : `IF(${isUnread[0]},"not measured",${verdict})`;
  if (renew === 'always') return undefined;
  if (checks.length === 0) return isUnread.length === 0 ? undefined : otherwise('"no limits"');
  // The guard of readings that were never taken is not known: the verdict needs another run.
  const unguarded = checks.filter(({ quantity }) => (quantity === 'longest' ? lengths : necks).length === 0);
  const factor = GRAINS[layout.assessment.book.setup.lengthUnit];
  const cellOf = (quantity: string) =>
    layout.ownCell(row.sheet, row.row, quantity === 'longest' ? LONGEST.header : THINNEST.header);
  const conditions = (side: 'inside' | 'outside', make: typeof beyond) =>
    checks.map((check) => {
      const cell = cellOf(check.quantity);
      const value = `ROUND(${cell}*${factor},0)`;
      const limit = limitTerm(fastener, check, layout);
      return ifNumber(cell, make(value, check.side, limit, check.guards[side]));
    });
  const verdict =
    `IF(OR(${conditions('outside', beyond).join(',')}),"renew",` +
    `${otherwise(`IF(AND(${conditions('inside', clear).join(',')}),"within limits","undecided")`)})`;
  const isNew = unguarded.map(({ quantity }) => `${cellOf(quantity)}<>""`);
  const changed = isNew.length > 1 ? `OR(${isNew.join(',')})` : isNew[0];
  return fitting(changed === undefined ? verdict : `IF(${changed},"measured: run again",${verdict})`);
}

/** A limit of the row in grains: its cell where that holds a plain number, else the number itself. */
function limitTerm(
  { row }: FastenerResult,
  { limitName, limit }: FastenerResult['checks'][number],
  layout: Layout,
): string {
  const table = layout.assessment.book.tables.get(row.sheet)!;
  const known = table.columns.get(limitName)!;
  if (table.sheet.rows[row.row]?.[known.column]?.content?.kind !== 'number') return String(limit);
  const { unit = table.units.length } = known;
  return unit === 'mm' || unit === 'in' || unit === 'µm'
    ? grains(layout.inputCell(row.sheet, row.row, known.column), unit)
    : String(limit);
}
