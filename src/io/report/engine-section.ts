/** One engine: its fits, journals and parts, what to measure again, and the sets that were found for it. */
import type { NeighbourResult } from '../../engine/assess/assess.js';
import type { PartResult } from '../../engine/assess/part-result.js';
import { nameKey } from '../../engine/book/names.js';
import { partSheets } from '../../engine/input-sheets/index.js';
import type { PartSheet } from '../../engine/input-sheets/input-sheet.js';
import type { MatchedRow } from '../../engine/sheets/matched-rows.js';
import { type Element, h, words } from './elements.js';
import type { EngineRecord } from './engine-records.js';
import { fitCharts } from './fit-chart.js';
import { limitsDrawn } from './fit-lane.js';
import { anglesOf, journalProfile, reachOf, shapeKey } from './journal-profile.js';
import { bareLength, type PageContext, partsTable, sheetTable, tableIn, tableLength } from './page-pieces.js';
import { withoutColumns } from './page-table.js';
import { deviationUnit, ProfileFrames } from './profile-frame.js';
import { remeasureTable } from './remeasure-table.js';
import { fitTable, fittedParts, remarksOf } from './result-tables.js';
import { visibleText } from './visible-text.js';

export function engineSection(page: PageContext, record: EngineRecord, id: string): Element {
  const sheets = partSheets().map((sheet) => ({ sheet, own: record.parts.of(sheet.name) }));
  const parts = sheets.flatMap(({ sheet: { counted }, own }) => {
    const count = own.reduce((sum, { row }) => sum + row.quantity, 0);
    return count > 0 ? [`${count} ${counted[count === 1 ? 0 : 1]}`] : [];
  });
  const type = record.engineTypes.filter((name) => name !== '').join(', ');
  return h('section', { className: 'engine', ariaLabelledBy: id }, [
    h('h2', { id }, ['Engine ', words(record.name)]),
    h('p', [...(type ? ['Engine type: ', words(type), '. '] : []), `${parts.join(', ')}.`]),
    ...fitsPart(page, record, id),
    ...sheets.flatMap(({ sheet, own }) =>
      sheet.isDrawn ? drawnParts(page, sheet, own, id) : partsTable(page, sheet.plural, own),
    ),
    ...tableIn(page, remeasureTable(record.remeasure)),
    ...setsPart(page, record, id),
    h('p', { className: 'sign' }, [
      'Measured by',
      h('i'),
      'Date',
      h('i'),
      'Checked on the torqued assembly by',
      h('i'),
    ]),
  ]);
}

function fitsPart(page: PageContext, { fits }: EngineRecord, id: string): Element[] {
  const { unit } = page;
  const charts = fits.flatMap((group, order) =>
    fitCharts({
      id: `${id}-fits-${order + 1}`,
      caption: `Fits, ${group.fit}, as they run`,
      unit,
      text: tableLength(unit),
      limitText: bareLength(unit),
      fits: group.fits.map((fit) => ({
        ...fit,
        limits: limitsDrawn(fit.limits),
      })),
    }),
  );
  return [
    h('h3', 'Fits'),
    ...(charts.length > 0 ? [h('div', { className: 'charts' }, charts)] : []),
    ...fits.flatMap((group) => [
      ...tableIn(
        page,
        fitTable(`Fits, ${group.fit}`, group.fits, unit),
        remarksOf(group.fits, ({ position }) => position),
      ),
      ...spreadSentence(page, group),
      ...tableIn(page, fittedParts(`What is fitted, ${group.fit}, and shells chosen`, group.fits)),
    ]),
  ];
}

function spreadSentence({ unit }: PageContext, { spread, limit }: NeighbourResult): Element[] {
  if (spread === undefined) return [];
  const text = tableLength(unit);
  const against =
    limit === undefined ? '' : `, ${spread > limit ? 'above' : 'within'} its limit ${text(limit)} ${unit}`;
  return [h('p', `Neighbour spread ${text(spread)} ${unit}${against}.`)];
}

/** Parts whose spots are drawn along their axis, and their table. */
function drawnParts(
  page: PageContext,
  { noun, plural }: PartSheet,
  parts: readonly PartResult[],
  id: string,
): Element[] {
  if (parts.length === 0) return [];
  const { unit } = page;
  const drawn = parts.filter(({ spots }) => spots.length > 0);
  const angles = anglesOf(drawn);
  const frames = new ProfileFrames(id, reachOf(drawn), unit);
  const text = tableLength(unit);
  const figures = drawn.map((part) => {
    const { row, form } = part;
    const named = [
      ['size', form?.size],
      ['taper', form?.taper],
      ['out of round', form?.outOfRound],
    ] as const;
    const lines = named.flatMap(([name, value]) =>
      value === undefined ? [] : [h('br'), `${name} ${text(value)}`],
    );
    return h('figure', { className: 'journal' }, [
      journalProfile(part, angles, frames),
      h('figcaption', [h('b', visibleText(row.name)), ...lines]),
    ]);
  });
  const key = `Spots along the axis at 20 °C, as deviations from each ${noun}'s size in ${deviationUnit(unit)}, all on one scale: ${shapeKey(angles)}.`;
  return [
    h('h3', plural),
    ...(figures.length > 0
      ? [h('p', { className: 'lead' }, key), h('div', { className: 'journals' }, figures)]
      : []),
    ...partsTable(page, plural, parts),
  ];
}

/** Columns of Matched sets that say what was computed; a page has no room for them beside the parts. */
const SET_MEASURES: readonly string[] = [
  'Clearance',
  'Tightest',
  'Loosest',
  'Clearance U',
  'Off aim',
  'Status',
];

function setsPart(page: PageContext, { name }: EngineRecord, id: string): Element[] {
  const { unit, matched } = page;
  const ofEngine = (header: string) => ({
    header,
    test: (engine: string) => nameKey(engine) === nameKey(name),
  });
  const sets = sheetTable(page, 'Matched sets', 'Matched sets', 'Position', ofEngine('Engine'));
  const picks = sheetTable(page, 'Pick list', 'Pick list, by bin', 'Part', ofEngine('For engine'));
  const measures = (header: string) => SET_MEASURES.includes(header);
  const tables = [
    sets && withoutColumns(sets, (header) => header === 'Engine' || measures(header)),
    sets && {
      ...withoutColumns(sets, (header) => !measures(header) && header !== 'Fit' && header !== 'Position'),
      caption: 'Their clearances',
    },
    sheetTable(page, 'Not matched', 'Not matched', 'Position', ofEngine('Engine')),
    picks && withoutColumns(picks, (header) => header === 'For engine'),
  ];
  const own = matched.filter((row) => nameKey(row.engine) === nameKey(name));
  const fitNames = [...new Set(own.map(({ fitName }) => fitName))];
  const charts = fitNames.flatMap((fitName, order) =>
    fitCharts({
      id: `${id}-sets-${order + 1}`,
      caption: `Matched sets, ${fitName}`,
      unit,
      text: tableLength(unit),
      limitText: bareLength(unit),
      fits: own.filter((row) => row.fitName === fitName).map((row) => drawnSet(row, page)),
    }),
  );
  const elements = tables.flatMap((table) => (table ? tableIn(page, table) : []));
  if (elements.length === 0) return [];
  return [
    h('h3', 'Matched sets'),
    ...(charts.length > 0 ? [h('div', { className: 'charts' }, charts)] : []),
    ...elements,
  ];
}

function drawnSet(row: MatchedRow, { assessment }: PageContext) {
  const limits = assessment.context.limitsOf(row.journal.row.engineType, row.journal.row.fit);
  return {
    position: row.position,
    status: row.status,
    clearance: row,
    isStrip: false,
    guard: row.guard,
    limits: limitsDrawn(limits),
  };
}
