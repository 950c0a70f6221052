/** One engine: its fits, journals and parts, what to measure again, and the sets that were found for it. */
import type { MatchedSet } from '../../engine/assess/matched-sets.js';
import type { NeighbourResult } from '../../engine/assess/neighbours.js';
import type { PartResult } from '../../engine/assess/part-result.js';
import { nameKey } from '../../engine/book/names.js';
import { MATCHED_SETS, PICK_LIST } from '../../engine/columns/set-columns.js';
import { NOT_MATCHED } from '../../engine/columns/stock-columns.js';
import { partSheet, partSheets } from '../../engine/input-sheets/index.js';
import type { PartSheet } from '../../engine/input-sheets/input-sheet.js';
import { isOnFits, termOf } from '../../engine/kinds/kind-of-fit.js';
import { type Element, h, words } from './elements.js';
import type { EngineRecord } from './engine-records.js';
import { fitCharts } from './fit-chart.js';
import { limitsDrawn } from './fit-lane.js';
import { anglesOf, journalProfile, reachOf, shapeKey } from './journal-profile.js';
import { bareLength, listIn, type PageContext, partsTable, tableIn, tableLength } from './page-pieces.js';
import { deviationUnit, ProfileFrames } from './profile-frame.js';
import { remeasureIn } from './remeasure-table.js';
import { fitTable, fittedParts, gaugesUsed, remarksOf } from './result-tables.js';
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
    ...sheets.flatMap(({ sheet, own }) => {
      // What is measured as a whole stands with the fits.
      if (sheet.isOfPlaces) return [];
      return sheet.isDrawn
        ? drawnParts(page, sheet, own, `${id}-${fragmentOf(sheet.name)}`)
        : partsTable(page, sheet, own);
    }),
    ...remeasureIn(page, record.remeasure),
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
      caption: `${captionOf(group)}, ${group.fit}, as they run`,
      values: group.fits[0]!.kind.valueNoun ?? CLEARANCE,
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
        fitTable(`${captionOf(group)}, ${group.fit}`, group.fits, page.assessment),
        remarksOf(group.fits, ({ position }) => position),
      ),
      ...spreadSentence(page, group),
      ...(isOnFits(group.fits[0]!.kind)
        ? tableIn(
            page,
            fittedParts(`What is fitted, ${group.fit}, and shells chosen`, group.fits, page.assessment),
          )
        : gaugesOf(group)),
    ]),
  ];
}

const CLEARANCE = 'diametral clearance';

/** What the rows of a group are called together. */
function captionOf({ fits: [first] }: NeighbourResult): string {
  const sheet = first && termOf(first.kind, first.kind.leader)!.sheets[0];
  return first && sheet !== undefined && !isOnFits(first.kind) ? partSheet(sheet).plural : 'Fits';
}

/** With which gauge gaps and run-outs were measured, which have no table of their own as parts have. */
function gaugesOf({ fits }: NeighbourResult): Element[] {
  const rows = fits.flatMap(({ kind, parts }) => parts[kind.leader] ?? []);
  return gaugesUsed(rows).map((sentence) => h('p', { className: 'remarks' }, visibleText(sentence)));
}

function spreadSentence({ unit }: PageContext, { spread, limit, spreadStatus }: NeighbourResult): Element[] {
  if (spread === undefined) return [];
  const text = tableLength(unit);
  const against = limit === undefined ? '' : `, ${spreadStatus} ${text(limit)} ${unit}`;
  return [h('p', `Neighbour spread ${text(spread)} ${unit}${against}.`)];
}

/** A name as part of an id. */
function fragmentOf(name: string): string {
  return name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
}

/** Parts whose spots are drawn along their axis, and their table. */
function drawnParts(
  page: PageContext,
  sheet: PartSheet,
  parts: readonly PartResult[],
  id: string,
): Element[] {
  if (parts.length === 0) return [];
  const { noun, plural } = sheet;
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
    ...partsTable(page, sheet, parts),
  ];
}

function pickCaption({ assessment }: PageContext): string {
  const hasBins = assessment.parts.all().some(({ row }) => row.bin !== undefined && row.bin !== '');
  return hasBins ? 'Pick list, by bin' : 'Pick list';
}

function setsPart(page: PageContext, { name }: EngineRecord, id: string): Element[] {
  const { unit } = page;
  const isOwn = (engine: string) => nameKey(engine) === nameKey(name);
  const ofSet = { isWanted: (set: MatchedSet) => isOwn(set.engine) };
  // A page has no room for what was computed of the sets beside their parts.
  const elements = [
    ...listIn(page, MATCHED_SETS, { ...ofSet, of: 'chosen' }),
    ...listIn(page, MATCHED_SETS, { ...ofSet, of: 'measured', caption: 'Their clearances' }),
    ...listIn(page, NOT_MATCHED, { isWanted: ({ journal }) => isOwn(journal.row.engine) }),
    ...listIn(page, PICK_LIST, { isWanted: ({ set }) => isOwn(set.engine), caption: pickCaption(page) }),
  ];
  if (elements.length === 0) return [];
  const own = page.assessment.sets.filter(ofSet.isWanted);
  const fits = [...new Set(own.map(({ fit }) => fit))];
  const charts = fits.flatMap((fit, order) =>
    fitCharts({
      id: `${id}-sets-${order + 1}`,
      caption: `Matched sets, ${fit}`,
      values: CLEARANCE,
      unit,
      text: tableLength(unit),
      limitText: bareLength(unit),
      fits: own
        .filter((set) => set.fit === fit)
        .map((set) => ({ ...set, isStrip: false, limits: limitsDrawn(set.limits) })),
    }),
  );
  return [
    h('h3', 'Matched sets'),
    ...(charts.length > 0 ? [h('div', { className: 'charts' }, charts)] : []),
    ...elements,
  ];
}
