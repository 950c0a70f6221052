/**
 * The JSON document of `--json`, version 1. Lengths are in mm, masses in g; a value that is not known is
 * null. Every number is on the grain of 0.00001 mm except `chance` and prices.
 *
 * What has a column on a sheet stands here under the key of its column; beside it stands what no sheet shows.
 */
import type { Assessment } from '../engine/assess/assess.js';
import { cellOf, doubtSentence } from '../engine/assess/doubt-words.js';
import type { DoubtedReading } from '../engine/assess/doubted-readings.js';
import type { FastenerResult } from '../engine/assess/fastener.js';
import type { FitResult } from '../engine/assess/fit.js';
import type { GaugeStudy } from '../engine/assess/gauge-study.js';
import { isProved } from '../engine/assess/proof.js';
import { studyFigures } from '../engine/assess/study-figures.js';
import { nextEngine } from '../engine/assess/suggestions.js';
import { sentenceOf } from '../engine/book/problems.js';
import { FASTENER_COLUMNS } from '../engine/columns/fastener-columns.js';
import { fitColumns } from '../engine/columns/fit-columns.js';
import { REMEASURE } from '../engine/columns/remeasure-columns.js';
import { jsonOf, partsJson, placesJson } from '../engine/columns/result-json.js';
import type { ResultTable } from '../engine/columns/result-table.js';
import { MATCHED_SETS } from '../engine/columns/set-columns.js';
import { LEFT_OVER, NOT_MATCHED, TO_BUY } from '../engine/columns/stock-columns.js';
import { REACHED, SUMMARY } from '../engine/columns/summary-columns.js';
import { TABLE_COLUMNS } from '../engine/columns/table-columns.js';
import { FIT_SLOTS } from '../engine/input-sheets/fits.js';
import { GAP } from '../engine/kinds/gap.js';
import { isOnFits } from '../engine/kinds/kind-of-fit.js';
import { RUN_OUT } from '../engine/kinds/run-out.js';
import type { GaugeVariation } from '../maths/gauge-study.js';
import { type Grain, mmOfGrain } from '../maths/grain.js';
import { type TypedTorque, torqueIn } from '../maths/torque.js';

const mm = (grain: Grain | undefined) => (grain === undefined ? null : mmOfGrain(grain));

export function bookJson(assessment: Assessment, written: string | undefined) {
  const { book, parts, fits, fasteners, tables } = assessment;
  return {
    file: book.model.file,
    written: written ?? null,
    summary: listJson(SUMMARY, assessment, ({ limit }) => ({ neighbourSpreadLimit: mm(limit) })),
    parts: partsJson(parts.all(), assessment),
    fits: fits.filter(({ kind }) => isOnFits(kind)).map((fit) => fitJson(fit, assessment)),
    gaps: placesJson(fits, GAP, assessment),
    runOuts: placesJson(fits, RUN_OUT, assessment),
    fasteners: fasteners.map((fastener) => fastenerJson(fastener, assessment)),
    tables: Object.entries(tables).flatMap(([sheet, rows]) =>
      rows.map((row) => ({ sheet, row: row.row + 1, ...jsonOf(TABLE_COLUMNS, row, assessment) })),
    ),
    matching: matchingJson(assessment),
    toBuy: toBuyJson(assessment),
    remeasure: listJson(REMEASURE, assessment),
    gaugeStudies: assessment.studies.map(studyJson),
    refused: book.bad.map((bad) => ({ ...bad, message: sentenceOf(book.model.file, bad) })),
    slips: assessment.doubts.map((doubt) => slipJson(doubt, assessment)),
    notices: book.notices,
    notRead: assessment.missingBooks,
  };
}

/** The rows of one of the program's lists. */
function listJson<Row>(
  { columns, rows }: ResultTable<Row>,
  assessment: Assessment,
  more: (row: Row) => object = () => ({}),
) {
  return rows(assessment).map((row) => ({ ...jsonOf(columns, row, assessment), ...more(row) }));
}

function fitJson(fit: FitResult, assessment: Assessment) {
  const { engine, fit: word, position, kind, parts } = fit;
  const named = FIT_SLOTS.map((slot) => [slot, parts[slot]?.row.name ?? null]);
  const results = jsonOf(fitColumns(kind), fit, assessment);
  return { engine, fit: word, position, ...Object.fromEntries(named), ...results };
}

/** Torques in N·m, angles in degrees. */
function fastenerJson(fastener: FastenerResult, assessment: Assessment) {
  const { row, engine, group, number, thread, quantity, length, angle, renew } = fastener.row;
  const torque = fastener.row.torque ?? fastener.row.torqueAsPrinted;
  const newtonMetres = (end: TypedTorque | undefined) => (end ? torqueIn(end, 'N·m') : null);
  return {
    row: row + 1,
    ...{ engine, group, number: number ?? null, thread: thread ?? null, length: mm(length), quantity },
    ...{ torqueFrom: newtonMetres(torque?.low), torqueTo: newtonMetres(torque?.high), angle: angle ?? null },
    renew: renew ?? null,
    ...jsonOf(FASTENER_COLUMNS, fastener, assessment),
  };
}

function toBuyJson(assessment: Assessment) {
  return listJson(TO_BUY, assessment, ({ priceInAll, places }) => ({
    priceInAll: priceInAll ?? null,
    for: places,
  }));
}

function slipJson(doubt: DoubtedReading, { book }: Assessment) {
  const { part, found, slip } = doubt;
  return {
    part: part.row.name,
    ...cellOf(doubt, book),
    found: mm(found),
    withoutSlip: mm(slip?.value),
    cause: slip?.cause ?? null,
    message: doubtSentence(doubt, book),
  };
}

function studyJson({ gauge, parts, persons, trials, byAnalysis, byRange, why }: GaugeStudy) {
  const methods = { analysisOfVariance: methodJson(byAnalysis), averageAndRange: methodJson(byRange) };
  return { gauge, parts, persons, trials, ...methods, why };
}

function methodJson(found: GaugeVariation | undefined) {
  if (!found) return null;
  const { repeatability, reproducibility, gauge, parts, categories } = studyFigures(found);
  return {
    repeatability: mm(repeatability),
    reproducibility: mm(reproducibility),
    gauge: mm(gauge),
    parts: mm(parts),
    categories: categories ?? null,
  };
}

function matchingJson(assessment: Assessment) {
  const { matching, sets } = assessment;
  if (!matching) return null;
  return {
    completeEngines: matching.completeEngines.map(
      (key) => sets.find(({ found }) => found.engine === key)?.engine ?? key,
    ),
    proved: isProved(assessment),
    stages: matching.stages.map((stage) => ({
      aim: stage.aim,
      ...jsonOf(REACHED.columns, stage, assessment),
      gapStays: stage.gapStays ?? null,
    })),
    grid: mm(matching.grid),
    sets: listJson(MATCHED_SETS, assessment),
    notMatched: listJson(NOT_MATCHED, assessment, ({ filledBy }) => ({ filledBy: filledBy ?? null })),
    nextEngine: nextEngine(assessment) ?? null,
    toBuy: toBuyJson(assessment),
    leftOver: listJson(LEFT_OVER, assessment),
  };
}
