/** The cells of a workbook as the engine takes them. */
import type { RawCellContent } from 'hyperformula';
import { FormulaBudget } from './formula-budget.js';
import { NOT_COMPUTED } from './guarded-engine.js';
import { type SheetExtent, sheetKey, withCellsOf } from './range-cost.js';
import { type RawSheets, usesOurFunctions } from './spreadsheet.js';
import type { Cell, SheetModel, WorkbookModel } from './workbook-model.js';

export interface RefusedFormula {
  /** The sheet's own name. */
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly reason: string;
}

/** @param refused gets the formulas that need a value and are not given to the engine */
export function rawSheets({ sheets }: WorkbookModel, refused: RefusedFormula[] = []): RawSheets {
  const budget = new FormulaBudget(extentsOf(sheets));
  return Object.fromEntries(sheets.map((sheet) => [sheet.name, rawRows(sheet, budget, refused)]));
}

/** As far as cells are stored, or named by formulas that could be computed. */
function extentsOf(sheets: readonly SheetModel[]): ReadonlyMap<string, SheetExtent> {
  const stored = new Map(sheets.map((sheet) => [sheetKey(sheet.name), extentOf(sheet)]));
  let extents: ReadonlyMap<string, SheetExtent> = stored;
  for (const { name, rows } of sheets) {
    for (const cells of rows) {
      cells?.forEach((cell) => {
        const formula = cell?.formula;
        if (formula === undefined || !new FormulaBudget(stored).allows(formula, name)) return;
        extents = withCellsOf(formula, name, extents);
      });
    }
  }
  return extents;
}

function extentOf({ rows }: SheetModel): SheetExtent {
  let columns = 0;
  let cells = 0;
  for (const row of rows) {
    if (!row) continue;
    columns = Math.max(columns, row.length);
    row.forEach((cell) => {
      if (cell) cells += 1;
    });
  }
  return { rows: rows.length, columns, cells };
}

function rawRows(
  { name, rows }: SheetModel,
  budget: FormulaBudget,
  refused: RefusedFormula[],
): RawCellContent[][] {
  return Array.from(rows, (cells, row) =>
    Array.from(cells ?? [], (cell, column) => {
      if (cell?.isNotComputed) return NOT_COMPUTED;
      if (cell?.formula === undefined) return storedValue(cell);
      const reason = budget.refusal(cell.formula, name);
      if (reason === undefined) return `=${cell.formula}`;
      if (!needsValue(cell)) return storedValue(cell);
      refused.push({ sheet: name, row, column, reason });
      return NOT_COMPUTED;
    }),
  );
}

function storedValue(cell: Cell | undefined): RawCellContent {
  const content = cell?.content;
  // The apostrophe keeps the engine from reading texts as dates, percentages or formulas.
  return content?.kind === 'text' || content?.kind === 'error'
    ? `'${content.value}`
    : (content?.value ?? null);
}

/** A formula whose stored value is missing, or was never known to the program that stored it. */
export function needsValue({ formula, content }: Cell): boolean {
  if (formula === undefined) return false;
  return !content || usesOurFunctions(formula) || (content.kind === 'error' && content.value === '#NAME?');
}
