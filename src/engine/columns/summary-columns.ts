/** The columns of Summary: the fits of each engine, and below them what matching reached. */
import type { StageResult } from '../../maths/matching/stock.js';
import type { Assessment } from '../assess/assess.js';
import type { FitResult } from '../assess/fit.js';
import type { CountedStatus, NeighbourResult } from '../assess/neighbours.js';
import { gapOf } from '../assess/proof.js';
import { Row } from '../book/row.js';
import { type TypedName, typedName } from '../book/typed-name.js';
import { FITS } from '../input-sheets/fits.js';
import { isOnFits, type KindOfFit } from '../kinds/kind-of-fit.js';
import { AIM_WORDS } from '../words/proof-words.js';
import type { Layout } from './layout.js';
import type { ResultColumn } from './result-column.js';
import type { ResultTable } from './result-table.js';

type FitsColumn = ResultColumn<NeighbourResult>;

const counted = (header: string, json: string, status: CountedStatus): FitsColumn => ({
  header,
  quantity: 'count',
  width: 12,
  json,
  help: `How many fits are \`${status}\`.`,
  page: 'counted',
  value: ({ counts }) => counts[status],
  live: (group, layout) => liveCount(group, status, layout),
});

const LENGTH = { quantity: 'length', width: 12, page: 'measured' } as const;

export const SUMMARY: ResultTable<NeighbourResult> = {
  name: 'Summary',
  rowName: 'Engine',
  rows: ({ spreads }) => spreads,
  columns: [
    {
      header: 'Engine',
      quantity: 'name',
      width: 30,
      json: 'engine',
      help: 'The engine.',
      page: 'every',
      value: engineName,
    },
    {
      header: 'Fit',
      quantity: 'name',
      width: 13,
      json: 'fit',
      help: 'The Fit that its fits are counted under.',
      page: 'every',
      value: ({ fit }) => fit,
    },
    {
      header: 'Fits',
      quantity: 'count',
      width: 13,
      json: 'fits',
      help: 'How many fits there are.',
      page: 'counted',
      value: ({ fits }) => fits.length,
    },
    counted('In range', 'inRange', 'in range'),
    counted('Within service limit', 'withinServiceLimit', 'within service limit'),
    counted('Tight', 'tight', 'tight'),
    counted('Loose', 'loose', 'loose'),
    counted('Undecided', 'undecided', 'undecided'),
    {
      header: 'Not enough data',
      quantity: 'count',
      width: 15,
      json: 'wantingData',
      help: 'How many fits have a bad reading, unclear parts, no measurement or no limits.',
      page: 'counted',
      value: ({ waiting }) => waiting,
    },
    {
      ...LENGTH,
      header: 'Tightest',
      json: 'tightest',
      help: 'The least Tightest of these fits.',
      value: ({ tightest }) => tightest,
    },
    {
      ...LENGTH,
      header: 'Loosest',
      json: 'loosest',
      help: 'The greatest Loosest of these fits.',
      value: ({ loosest }) => loosest,
    },
    {
      ...LENGTH,
      header: 'Neighbour spread',
      json: 'neighbourSpread',
      help: 'The greatest difference of Clearance between fits in consecutive rows.',
      value: ({ spread }) => spread,
    },
    {
      header: 'Neighbour spread is',
      quantity: 'word',
      width: 17,
      help: '`within its limit` or `above its limit`, where Limits gives one.',
      page: 'measured',
      value: ({ spreadStatus }) => spreadStatus,
    },
  ],
};

/** What a value of an aim is. */
function quantityOfStage({ aim }: StageResult) {
  if (aim === 'distance from the aim') return 'length';
  return aim === 'price of bought shells' ? 'price' : 'word';
}

const STAGE_VALUE = {
  quantity: 'length',
  quantityOf: quantityOfStage,
  width: 12,
  page: 'every',
} as const;

export const REACHED: ResultTable<StageResult> = {
  name: 'What matching reached',
  rowName: 'Matched sets, in this order',
  rows: ({ matching }) => matching?.stages ?? [],
  columns: [
    {
      header: 'Matched sets, in this order',
      quantity: 'word',
      width: 30,
      help: 'An aim of matching.',
      page: 'every',
      value: ({ aim }) => AIM_WORDS[aim],
    },
    {
      ...STAGE_VALUE,
      header: 'Reached',
      json: 'reached',
      help: 'What the sets reach of this aim.',
      value: ({ reached }) => reached,
    },
    {
      ...STAGE_VALUE,
      header: 'Proven best',
      json: 'provenBest',
      help: 'What no other choice of sets can beat.',
      value: ({ bound }) => bound,
    },
    {
      ...STAGE_VALUE,
      header: 'Gap',
      json: 'gap',
      help: 'The difference of these two; 0 is proved.',
      value: gapOf,
    },
  ],
};

/** The engine as the row of its first journal, or of its first gap, has it typed. */
function engineName({ engine, fits: [first] }: NeighbourResult, { book }: Assessment): TypedName {
  const journal = first && (isOnFits(first.kind) ? first.parts.journal : first.parts[first.kind.leader]);
  return journal ? typedName(book, journal.row, 'Engine', engine) : engine;
}

/** Counts over the statuses of Fits, where the names are plain enough for a criterion to mean just them. */
function liveCount(
  { engine, fit, fits }: NeighbourResult,
  status: CountedStatus,
  layout: Layout,
): string | undefined {
  const alike = fits.every(
    (own) => own.engine === engine && own.fit === fit && isTypedPlain(own, ['Engine', 'Fit'], layout),
  );
  if (!alike || [engine, fit].some((name) => name === '' || /[*?~<>="]/.test(name))) return undefined;
  const { assessment } = layout;
  const { kind } = fits[0]!;
  const sheet = sheetOf(kind);
  const range = (column: number) => layout.fitRange(kind, column);
  // A sheet of the program's own begins with both names.
  const isMade = sheet === FITS.name && layout.makesFits;
  const table = isMade || layout.isApart(sheet) ? undefined : assessment.book.tables.get(sheet)!;
  const columnOf = (header: string, otherwise: number) => table?.columns.get(header)?.column ?? otherwise;
  const criteria = [
    `${range(columnOf('Engine', 0))},"${engine}"`,
    `${range(columnOf('Fit', 1))},"${fit}"`,
    `${range(layout.column(sheet, 'Status'))},"${kind.strategy === 'dial' && status === 'loose' ? 'beyond limits' : status}"`,
  ];
  return `COUNTIFS(${criteria.join(',')})`;
}

const sheetOf = ({ resultsOn = FITS.name }: KindOfFit) => resultsOn;

/** A criterion misses a name that stands in its cell with spaces around it. */
function isTypedPlain(fit: FitResult, headers: readonly string[], layout: Layout): boolean {
  const sheet = sheetOf(fit.kind);
  if (sheet === FITS.name && (layout.makesFits || !fit.source)) return true;
  const row = new Row(layout.assessment.book.tables.get(sheet)!, layout.fitRow(fit));
  return headers.every((header) => {
    const content = row.cell(header)?.cell.content;
    return content?.kind !== 'text' || content.value === content.value.trim();
  });
}
