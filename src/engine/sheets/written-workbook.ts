/** Everything that one run writes into a workbook. */

import type { Assessment } from '../assess/assess.js';
import { nameKey } from '../book/names.js';
import { freeName, isMadeByProgram, MADE_BY } from '../book/own-columns.js';
import { evaluateColumns } from '../columns/evaluate.js';
import { OWN_TABLES } from '../columns/own-tables.js';
import { isOnFits } from '../kinds/kind-of-fit.js';
import type { WorkbookEdit, WorkbookModel } from '../workbook-model.js';
import { apartSheets } from './apart-sheets.js';
import { fitsSheet } from './fits-sheet.js';
import { isOwnSheet } from './own-names.js';
import { ownSheet } from './own-sheet.js';
import { plainCells, plainRows } from './plain-cells.js';
import { sheetEdits } from './sheet-edits.js';
import { summarySheet } from './summary.js';

export interface WriteOptions {
  /** Plain values in place of live formulas. */
  readonly valuesOnly: boolean;
}

export function writtenWorkbook(assessment: Assessment, { valuesOnly }: WriteOptions): WorkbookEdit {
  const { book } = assessment;
  const evaluated = evaluateColumns(assessment);
  const { layout } = evaluated;
  const own = [
    summarySheet(layout),
    ...OWN_TABLES.filter(({ isMade }) => isMade(assessment)).map(({ table }) => ownSheet(table, layout)),
    ...apartSheets(assessment, evaluated),
  ];
  if (layout.makesFits && assessment.fits.some(({ kind }) => isOnFits(kind)))
    own.splice(1, 0, fitsSheet(assessment, evaluated));
  const sheets = own.map((sheet) => ({ ...sheet, name: freeName(sheet.name, book.model) }));
  const written = new Set(sheets.map(({ name }) => name.toLowerCase()));
  const edits = sheetEdits(assessment, evaluated);
  return {
    edits: valuesOnly ? edits.map((edit) => ({ ...edit, cells: plainCells(edit.cells) })) : edits,
    sheets: valuesOnly ? sheets.map((sheet) => ({ ...sheet, rows: plainRows(sheet.rows) })) : sheets,
    remove: book.model.sheets
      .filter(
        (sheet) => isOwnSheet(sheet.name) && isMadeByProgram(sheet) && !written.has(sheet.name.toLowerCase()),
      )
      .map(({ name }) => name),
  };
}

/**
 * A book of which the program makes the whole package, with room for Summary before all other sheets; a sheet of
 * the user's own of that name keeps its place.
 */
export function withSummaryFirst(model: WorkbookModel): WorkbookModel {
  if (model.sheets.some(({ name }) => nameKey(name) === 'summary')) return model;
  const summary = { name: 'Summary', rows: [[{ content: { kind: 'text' as const, value: MADE_BY } }]] };
  return { ...model, sheets: [summary, ...model.sheets] };
}
