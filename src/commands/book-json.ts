/**
 * The JSON document of `--json`, version 1. Lengths are in mm, masses in g; a value that is not known is
 * null. Every number is on the grain of 0.00001 mm except `chance` and prices.
 */

import type { Assessment } from '../engine/assess/assess.js';
import type { GaugeStudy } from '../engine/assess/gauge-study.js';
import type { PartResult } from '../engine/assess/part-result.js';
import { sentenceOf } from '../engine/book/problems.js';
import { leftOver } from '../engine/sheets/left-over.js';
import { matchedRows } from '../engine/sheets/matched-rows.js';
import { unmatchedRows } from '../engine/sheets/not-matched.js';
import { isProved, stageValue } from '../engine/sheets/proof-words.js';
import { categoriesOf } from '../engine/sheets/study-sheet.js';
import { nextEngine } from '../engine/sheets/suggestion-words.js';
import { countOf, extremesOf, waitingCount } from '../engine/sheets/summary.js';
import { toBuy } from '../engine/sheets/to-buy.js';
import type { GaugeVariation } from '../maths/gauge-study.js';
import { type Grain, mmOfGrain, roundToWhole } from '../maths/grain.js';

const mm = (grain: Grain | undefined) => (grain === undefined ? null : mmOfGrain(grain));

export function bookJson(assessment: Assessment, written: string | undefined) {
  const { book, parts, fits, tables, spreads, remeasure } = assessment;
  return {
    file: book.model.file,
    written: written ?? null,
    summary: spreads.map((group) => ({
      engine: group.engine,
      fit: group.fit,
      fits: group.fits.length,
      inRange: countOf(group, 'in range'),
      withinServiceLimit: countOf(group, 'within service limit'),
      tight: countOf(group, 'tight'),
      loose: countOf(group, 'loose'),
      undecided: countOf(group, 'undecided'),
      wantingData: waitingCount(group),
      tightest: mm(extremesOf(group).tightest),
      loosest: mm(extremesOf(group).loosest),
      neighbourSpread: mm(group.spread),
      neighbourSpreadLimit: mm(group.limit),
    })),
    parts: parts.all().map(partJson),
    fits: fits.map((fit) => ({
      engine: fit.engine,
      fit: fit.fit,
      position: fit.position,
      journal: fit.parts.journal?.row.name ?? null,
      bore: fit.parts.bore?.row.name ?? null,
      upper: fit.parts.upper?.row.name ?? null,
      lower: fit.parts.lower?.row.name ?? null,
      clearance: mm(fit.clearance?.clearance),
      tightest: mm(fit.clearance?.tightest),
      loosest: mm(fit.clearance?.loosest),
      clearanceU: mm(fit.clearanceU),
      chance: fit.chance ?? null,
      shellByMarks: fit.shellByMarks ?? null,
      shellBySize: fit.shellBySize ?? null,
      status: fit.status,
      why: fit.why,
    })),
    tables: Object.entries(tables).flatMap(([sheet, rows]) =>
      rows.map(({ row, status, why }) => ({ sheet, row: row + 1, status, why })),
    ),
    matching: matchingJson(assessment),
    remeasure,
    gaugeStudies: assessment.studies.map(studyJson),
    refused: book.bad.map((bad) => ({ ...bad, message: sentenceOf(book.model.file, bad) })),
    notices: book.notices,
    notRead: assessment.missingBooks,
  };
}

function partJson({ row, form, classification, sizeU, status, why }: PartResult) {
  return {
    sheet: row.sheet,
    row: row.row + 1,
    part: row.name,
    size: mm(form?.size),
    largest: mm(form?.largest),
    smallest: mm(form?.smallest),
    taper: mm(form?.taper),
    outOfRound: mm(form?.outOfRound),
    class: classification?.text || null,
    sizeU: mm(sizeU),
    status,
    why,
  };
}

function studyJson({ gauge, parts, persons, trials, byAnalysis, byRange, why }: GaugeStudy) {
  const methodJson = (found: GaugeVariation | undefined) =>
    found
      ? {
          repeatability: mm(roundToWhole(found.repeatability)),
          reproducibility:
            found.reproducibility === undefined ? null : mm(roundToWhole(found.reproducibility)),
          gauge: mm(roundToWhole(found.gauge)),
          parts: found.parts === undefined ? null : mm(roundToWhole(found.parts)),
          categories: categoriesOf(found) ?? null,
        }
      : null;
  const methods = { analysisOfVariance: methodJson(byAnalysis), averageAndRange: methodJson(byRange) };
  return { gauge, parts, persons, trials, ...methods, why };
}

function matchingJson(assessment: Assessment) {
  const { matching } = assessment;
  if (!matching) return null;
  const rows = matchedRows(assessment);
  return {
    completeEngines: matching.completeEngines.map(
      (key) => rows.find(({ fit }) => fit.engine === key)?.engine ?? key,
    ),
    proved: isProved(assessment),
    stages: matching.stages.map((stage) => ({
      aim: stage.aim,
      reached: stageValue(stage, stage.reached, mmOfGrain),
      provenBest: stageValue(stage, stage.bound, mmOfGrain),
      gap: stageValue(stage, Math.abs(stage.bound - stage.reached), mmOfGrain),
      gapStays: stage.gapStays ?? null,
    })),
    grid: mm(matching.grid),
    sets: rows.map((row) => ({
      engine: row.engine,
      fit: row.fitName,
      position: row.position,
      journal: row.journal.row.name,
      bore: row.fit.bore.name,
      upper: row.upper,
      lower: row.lower,
      clearance: mm(row.clearance),
      tightest: mm(row.tightest),
      loosest: mm(row.loosest),
      clearanceU: mm(row.clearanceU),
      offAim: mm(row.offAim),
      status: row.status,
      ranTogether: row.fit.ranTogether,
    })),
    notMatched: unmatchedRows(assessment).map(({ journal: { row }, why, filledBy }) => ({
      engine: row.engine,
      fit: row.fit,
      position: row.position,
      journal: row.name,
      why,
      filledBy: filledBy ?? null,
    })),
    nextEngine: nextEngine(assessment) ?? null,
    toBuy: toBuy(rows).map(({ places, ...bought }) => ({ ...bought, for: places })),
    leftOver: leftOver(rows, assessment),
  };
}
