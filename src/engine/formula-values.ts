/** The values of formulas that the program that wrote the workbook did not store, or did not know. */
import { buildGuardedEngine, NOT_COMPUTED } from './guarded-engine.js';
import { needsValue, type RefusedFormula, rawSheets } from './raw-sheets.js';
import { contentOf, type EngineUnits } from './spreadsheet.js';
import { type Cell, cellAddress, type WorkbookModel } from './workbook-model.js';

/** How many cells a notice names. */
const MOST_NAMED = 5;

export interface ValuedModel {
  readonly model: WorkbookModel;
  /** Sentences about formulas that were not computed. */
  readonly notices: readonly string[];
}

/** The same workbook with a value in every formula that needs one: an error value where the engine cannot give it. */
export function withFormulaValues(model: WorkbookModel, units: EngineUnits): ValuedModel {
  if (!model.sheets.some(({ rows }) => rows.some((cells) => cells?.some((cell) => cell && needsValue(cell)))))
    return { model, notices: [] };
  const refused: RefusedFormula[] = [];
  const { engine, givenUp } = buildGuardedEngine(rawSheets(model, refused), units);
  try {
    for (const { cell, reason } of givenUp) {
      refused.push({ sheet: engine.getSheetName(cell.sheet)!, row: cell.row, column: cell.col, reason });
    }
    const keys = new Set(refused.map(({ sheet, row, column }) => `${sheet}!${cellAddress(row, column)}`));
    const sheets = model.sheets.map((sheet) => {
      const id = engine.getSheetId(sheet.name)!;
      const valued = (cell: Cell | undefined, row: number, col: number): Cell | undefined => {
        if (!cell || !needsValue(cell)) return cell;
        if (keys.has(`${sheet.name}!${cellAddress(row, col)}`)) {
          return { ...cell, content: { kind: 'error', value: NOT_COMPUTED }, isNotComputed: true };
        }
        if (!engine.doesCellHaveFormula({ sheet: id, row, col })) return cell;
        return { ...cell, content: contentOf(engine.getCellValue({ sheet: id, row, col })) };
      };
      return {
        ...sheet,
        rows: sheet.rows.map((cells, row) => cells?.map((cell, column) => valued(cell, row, column))),
      };
    });
    return { model: { ...model, sheets }, notices: noticesOf(model.file, refused) };
  } finally {
    engine.destroy();
  }
}

/** One sentence a reason. */
function noticesOf(file: string, refused: readonly RefusedFormula[]): string[] {
  const reasons = new Map<string, string[]>();
  for (const { sheet, row, column, reason } of refused) {
    const places = reasons.get(reason) ?? [];
    places.push(`${sheet}!${cellAddress(row, column)}`);
    reasons.set(reason, places);
  }
  return [...reasons].map(([reason, places]) => {
    const others = places.length - MOST_NAMED;
    const named = places.slice(0, MOST_NAMED).join(', ') + (others > 0 ? ` and ${others} more` : '');
    return `${file}: ${named}: found a formula that is not computed: ${reason}; expected a smaller one; make it smaller: until then its value is ${NOT_COMPUTED}.`;
  });
}
