/** The sheets that say what matching found: sets, what is not matched, where to pick, what to buy, what is left. */
import type { Assessment } from '../assess/assess.js';
import type { Layout } from '../columns/layout.js';
import type { OutputSheet } from '../workbook-model.js';
import { leftOverSheet } from './left-over.js';
import { matchedRows } from './matched-rows.js';
import { matchedSetsSheet } from './matched-sets.js';
import { notMatchedSheet } from './not-matched.js';
import { pickListSheet } from './pick-list.js';
import { toBuySheet } from './to-buy.js';

export function matchingSheets(assessment: Assessment, layout: Layout): OutputSheet[] {
  if (!assessment.matching) return [];
  const matched = matchedRows(assessment);
  return [
    matchedSetsSheet(assessment, layout, matched),
    notMatchedSheet(assessment),
    pickListSheet(assessment, matched),
    toBuySheet(matched),
    leftOverSheet(assessment, matched),
  ];
}
