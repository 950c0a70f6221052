/** One formula without a workbook. */
import { type CellValue, DetailedCellError, type HyperFormula } from 'hyperformula';
import { FormulaBudget } from '../formula-budget.js';
import { evaluateGuarded, NOT_COMPUTED } from '../guarded-engine.js';
import { withCellsOf } from '../range-cost.js';
import type { EngineUnits } from '../spreadsheet.js';

/** Characters of a formula that a message repeats. */
const LONGEST_SHOWN = 200;

type Plain = string | number | boolean | null;

export type FormulaAnswer = { readonly value: Plain | Plain[][] } | { readonly message: string };

/** The value of a formula such as `=SHELL_CLEARANCE(45.0125,1.4875,1.4885,42.0015)`, or why there is none. */
export function evaluateFormula(formula: string, units: EngineUnits): FormulaAnswer {
  const text = formula.trim().startsWith('=') ? formula.trim() : `=${formula.trim()}`;
  const refusal = new FormulaBudget(withCellsOf(text, '', new Map())).refusal(text.slice(1));
  if (refusal !== undefined) return { message: refused(text, refusal) };
  const answer = evaluateGuarded(units, (engine) => answerOf(text, engine));
  return 'reason' in answer ? { message: refused(text, answer.reason) } : answer.result;
}

function refused(text: string, reason: string): string {
  return `${shortened(text)}: ${NOT_COMPUTED} The formula is not computed: ${reason}.`;
}

function shortened(text: string): string {
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
}

function answerOf(text: string, engine: HyperFormula): FormulaAnswer {
  if (!engine.validateFormula(text)) {
    return {
      message: `${shortened(text)}: found no formula that can be read; expected one such as =ROUND(1.5,0); check brackets, commas and quotes.`,
    };
  }
  const value = engine.calculateFormula(text, 0);
  const error = [value].flat(2).find((cell) => cell instanceof DetailedCellError);
  if (error instanceof DetailedCellError) {
    return { message: `${shortened(text)}: ${error.value} ${error.message}`.trim() };
  }
  return { value: value as Exclude<CellValue, DetailedCellError> | Plain[][] };
}
