/** One formula without a workbook. */
import { type CellValue, DetailedCellError } from 'hyperformula';
import { buildEngine, type EngineUnits } from '../spreadsheet.js';

type Plain = string | number | boolean | null;

export type FormulaAnswer = { readonly value: Plain | Plain[][] } | { readonly message: string };

/** The value of a formula such as `=SHELL_CLEARANCE(45.0125,1.4875,1.4885,42.0015)`, or why there is none. */
export function evaluateFormula(formula: string, units: EngineUnits): FormulaAnswer {
  const text = formula.trim().startsWith('=') ? formula.trim() : `=${formula.trim()}`;
  const engine = buildEngine({ Sheet1: [] }, units);
  try {
    if (!engine.validateFormula(text)) {
      return {
        message: `${text}: found no formula that can be read; expected one such as =ROUND(1.5,0); check brackets, commas and quotes.`,
      };
    }
    const value = engine.calculateFormula(text, 0);
    const error = [value].flat(2).find((cell) => cell instanceof DetailedCellError);
    if (error instanceof DetailedCellError)
      return { message: `${text}: ${error.value} ${error.message}`.trim() };
    return { value: value as Exclude<CellValue, DetailedCellError> | Plain[][] };
  } finally {
    engine.destroy();
  }
}
