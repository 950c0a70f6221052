/** The sheets Summary and Re-measure. */
import type { Grain } from '../../maths/grain.js';
import type { StageResult } from '../../maths/matching/stock.js';
import { inUnit } from '../../maths/units.js';
import type { Assessment, NeighbourResult } from '../assess/assess.js';
import type { FitResult } from '../assess/fit.js';
import type { Remeasure } from '../assess/remeasure.js';
import { countText } from '../assess/words.js';
import { reasonOf } from '../book/problems.js';
import { Row } from '../book/row.js';
import { CAUTION } from '../caution.js';
import type { Layout } from '../columns/layout.js';
import { FITS } from '../input-sheets/fits.js';
import type { OutputCell, OutputSheet } from '../workbook-model.js';
import { headerRow, MADE_BY_WIDTH, ownSheet, rowsOf, type SheetColumn, text } from './own-sheet.js';
import { AIM_WORDS, missingSentence, stageValue, stopSentence } from './proof-words.js';
import { readingsUnchanged } from './readings-checksum.js';
import { nextEngine } from './suggestion-words.js';
import { type TypedName, typedName } from './typed-name.js';

const WAITING = new Set<FitResult['status']>(['bad reading', 'unclear', 'not measured', 'no limits']);

export function countOf({ fits }: NeighbourResult, ...statuses: FitResult['status'][]): number {
  return fits.filter(({ status }) => statuses.includes(status)).length;
}

export function waitingCount({ fits }: NeighbourResult): number {
  return fits.filter(({ status }) => WAITING.has(status)).length;
}

/** The tightest and loosest of the computed fits. */
export function extremesOf({ fits }: NeighbourResult): {
  tightest: Grain | undefined;
  loosest: Grain | undefined;
} {
  let tightest: Grain | undefined;
  let loosest: Grain | undefined;
  for (const { clearance } of fits) {
    if (!clearance) continue;
    if (tightest === undefined || clearance.tightest < tightest) tightest = clearance.tightest;
    if (loosest === undefined || clearance.loosest > loosest) loosest = clearance.loosest;
  }
  return { tightest, loosest };
}

export function summaryColumns(assessment: Assessment, layout: Layout): SheetColumn<NeighbourResult>[] {
  const unit = assessment.book.setup.lengthUnit;
  const format = unit === 'in' ? 'in' : 'mm';
  const length = (grain: Grain | undefined) => (grain === undefined ? undefined : inUnit(grain, unit));
  const count = (header: string, ...statuses: FitResult['status'][]): SheetColumn<NeighbourResult> => ({
    header,
    // The gaps of the sets stand below.
    width: unit === 'in' ? 12 : header.length > 9 ? 11 : 10,
    format: 'whole',
    value: (group) => countOf(group, ...statuses),
    formula: (group) => liveCount(group, statuses[0]!, layout),
  });
  return [
    { header: 'Engine', width: 30, value: (group) => engineName(group, assessment) },
    { header: 'Fit', width: 13, value: ({ fit }) => fit },
    { header: 'Fits', width: 13, format: 'whole', value: ({ fits }) => fits.length },
    count('In range', 'in range'),
    count('Within service limit', 'within service limit'),
    count('Tight', 'tight'),
    count('Loose', 'loose'),
    count('Undecided', 'undecided'),
    { header: 'Not decided for want of data', width: 15, format: 'whole', value: waitingCount },
    { header: 'Tightest', width: 12, format, value: (group) => length(extremesOf(group).tightest) },
    { header: 'Loosest', width: 12, format, value: (group) => length(extremesOf(group).loosest) },
    { header: 'Neighbour spread', width: 12, format, value: ({ spread }) => length(spread) },
    { header: 'Neighbour spread is', width: 17, value: spreadWords },
  ];
}

export function summarySheet(assessment: Assessment, layout: Layout): OutputSheet {
  const columns = summaryColumns(assessment, layout);
  const { headers, rows: stages, notes } = matchingResult(assessment);
  const rows: (OutputCell | undefined)[][] = [
    headerRow(columns.map(({ header }) => header)),
    ...rowsOf(columns, assessment.spreads),
    [],
    ...(stages.length > 0 ? [headers.map((header) => text(header, 'header')), ...stages] : []),
    ...notes.map((note) => [text(note)]),
    [],
    [text('Readings since this run', 'title'), readingsUnchanged(assessment)],
    [],
    [text('Caution', 'title')],
    ...CAUTION.map((sentence) => [text(sentence)]),
  ];
  return {
    name: 'Summary',
    rows,
    widths: [...columns.map(({ width }) => width), MADE_BY_WIDTH],
    headerRows: 1,
    landscape: true,
  };
}

/** The engine as its first journal's row has it typed. */
function engineName({ engine, fits }: NeighbourResult, { book }: Assessment): TypedName {
  const journal = fits[0]?.parts.journal;
  return journal ? typedName(book, journal.row, 'Engine', engine) : engine;
}

function spreadWords({ spread, limit }: NeighbourResult): string | undefined {
  if (limit === undefined || spread === undefined) return undefined;
  return spread > limit ? 'above its limit' : 'within its limit';
}

/** Counts over the statuses of Fits, where the names are plain enough for a criterion to mean just them. */
function liveCount(
  { engine, fit, fits }: NeighbourResult,
  status: FitResult['status'],
  layout: Layout,
): string | undefined {
  const alike = fits.every(
    (own) => own.engine === engine && own.fit === fit && isTypedPlain(own, ['Engine', 'Fit'], layout),
  );
  if (!alike || [engine, fit].some((name) => name === '' || /[*?~<>="]/.test(name))) return undefined;
  const { assessment } = layout;
  const range = (column: number) => layout.fitRange(column);
  // A sheet of the program's own begins with both names.
  const isOwn = layout.makesFits || layout.isApart(FITS.name);
  const table = isOwn ? undefined : assessment.book.tables.get(FITS.name)!;
  const columnOf = (header: string, otherwise: number) => table?.columns.get(header)?.column ?? otherwise;
  const criteria = [
    `${range(columnOf('Engine', 0))},"${engine}"`,
    `${range(columnOf('Fit', 1))},"${fit}"`,
    `${range(layout.column('Fits', 'Status'))},"${status}"`,
  ];
  return `COUNTIFS(${criteria.join(',')})`;
}

/** A criterion misses a name that stands in its cell with spaces around it. */
function isTypedPlain({ source }: FitResult, headers: readonly string[], layout: Layout): boolean {
  if (layout.makesFits || !source) return true;
  const row = new Row(layout.assessment.book.tables.get(FITS.name)!, source.row);
  return headers.every((header) => {
    const content = row.cell(header)?.cell.content;
    return content?.kind !== 'text' || content.value === content.value.trim();
  });
}

/** What matching reached: a row an aim, and sentences about the whole. */
export interface MatchingTable {
  readonly headers: readonly string[];
  readonly rows: OutputCell[][];
  readonly notes: readonly string[];
}

export function matchingResult(assessment: Assessment): MatchingTable {
  const { matching, book, stock } = assessment;
  const headers = ['Matched sets, in this order', 'Reached', 'Proven best', 'Gap'];
  if (!matching) {
    const refused = book.setup.bad.map(reasonOf);
    const why = refused.length > 0 ? `not made. ${refused.join('; ')}` : 'the book has no engine to match.';
    return { headers, rows: [], notes: [`Matched sets: ${why}`] };
  }
  const unit = book.setup.lengthUnit;
  const show = (stage: StageResult, value: number): OutputCell => ({
    value: stageValue(stage, value, (grain) => inUnit(grain, unit)),
    format: stage.aim === 'distance from the aim' ? (unit === 'in' ? 'in' : 'mm') : 'plain',
  });
  const engines = stock.stock.engines.length;
  const next = nextEngine(assessment);
  const sentences = [
    stopSentence(assessment),
    missingSentence(assessment),
    next &&
      `The engine that the least addition would complete: ${next}. Sheet Not matched says what it needs.`,
  ];
  return {
    headers,
    rows: matching.stages.map((stage) => [
      text(AIM_WORDS[stage.aim]),
      show(stage, stage.reached),
      show(stage, stage.bound),
      show(stage, Math.abs(stage.bound - stage.reached)),
    ]),
    notes: [
      `Of ${countText(engines, 'engine')} in the stock. A gap of 0 means proved.`,
      ...sentences.flatMap((sentence) => sentence ?? []),
      ...(matching.grid === undefined
        ? []
        : [
            `Matched on a grid of ${inUnit(matching.grid, unit)} ${unit}, rounded so that only allowed fits are made.`,
          ]),
    ],
  };
}

const REMEASURE: SheetColumn<Remeasure>[] = [
  { header: 'Sheet', width: 12, value: ({ sheet }) => sheet },
  { header: 'Part', width: 14, value: ({ part }) => part },
  { header: 'Spot', width: 12, value: ({ spot }) => spot },
  { header: 'Why', width: 70, format: 'text', value: ({ why }) => why },
];

export function remeasureSheet({ remeasure }: Assessment): OutputSheet {
  return ownSheet('Re-measure', REMEASURE, remeasure);
}
