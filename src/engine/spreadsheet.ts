/** One HyperFormula engine over the cells of a workbook, with our functions registered for this engine alone. */
import {
  DetailedCellError,
  type FunctionPluginDefinition,
  HyperFormula,
  type RawCellContent,
} from 'hyperformula';
import { functionRecords } from '../../functions/index.js';
import type { LengthUnit, TemperatureUnit } from '../maths/units.js';
import { FormulaBudget } from './formula-budget.js';
import { oilgapFunctions } from './functions/register.js';
import type { Cell, CellContent, SheetModel, WorkbookModel } from './workbook-model.js';

export interface EngineUnits {
  readonly lengthUnit: LengthUnit;
  readonly temperatureUnit: TemperatureUnit;
}

/** The grid of a spreadsheet program; the engine's own default ends at 40,000 rows. */
const GRID = { maxRows: 1_048_576, maxColumns: 16_384 };

/** Seventeen digits name every double, so values pass through as they are. */
const ALL_DIGITS = 17;

export type RawSheets = Record<string, RawCellContent[][]>;

/** What an engine has beyond our functions. */
export interface EngineOptions {
  readonly useArrayArithmetic?: boolean;
  /** Their names are taken into the language as they are. */
  readonly functionPlugins?: readonly FunctionPluginDefinition[];
}

export function buildEngine(
  sheets: RawSheets,
  units: EngineUnits,
  { useArrayArithmetic = false, functionPlugins = [] }: EngineOptions = {},
): HyperFormula {
  const ours = oilgapFunctions(units);
  const names = functionPlugins.flatMap(({ implementedFunctions }) => Object.keys(implementedFunctions));
  HyperFormula.getLanguage(ours.language).extendFunctions(
    Object.fromEntries(names.map((name) => [name, name])),
  );
  return HyperFormula.buildFromSheets(sheets, {
    licenseKey: 'gpl-v3',
    precisionRounding: ALL_DIGITS,
    ...GRID,
    useArrayArithmetic,
    language: ours.language,
    functionPlugins: [...ours.functionPlugins, ...functionPlugins],
  });
}

/** The cells of a workbook as the engine takes them. */
export function rawSheets({ sheets }: WorkbookModel): RawSheets {
  const budget = new FormulaBudget();
  return Object.fromEntries(sheets.map((sheet) => [sheet.name, rawRows(sheet, budget)]));
}

function rawRows({ rows }: SheetModel, budget: FormulaBudget): RawCellContent[][] {
  return Array.from(rows, (cells) => Array.from(cells ?? [], (cell) => rawContent(cell, budget)));
}

function rawContent(cell: Cell | undefined, budget: FormulaBudget): RawCellContent {
  if (!cell) return null;
  if (cell.formula !== undefined && budget.allows(cell.formula)) return `=${cell.formula}`;
  const { content } = cell;
  // The apostrophe keeps the engine from reading texts as dates, percentages or formulas.
  return content?.kind === 'text' || content?.kind === 'error'
    ? `'${content.value}`
    : (content?.value ?? null);
}

const OUR_FUNCTION = new RegExp(`\\b(?:${functionRecords.map(({ name }) => name).join('|')})\\s*\\(`, 'i');

/** Whether a formula uses a function that only this program knows. */
export function usesOurFunctions(formula: string | undefined): boolean {
  return formula !== undefined && OUR_FUNCTION.test(formula);
}

/** A formula whose stored value is missing, or was never known to the program that stored it. */
function needsValue({ formula, content }: Cell): boolean {
  if (formula === undefined) return false;
  return !content || usesOurFunctions(formula) || (content.kind === 'error' && content.value === '#NAME?');
}

/** The same workbook with a value in every formula that the engine can give one. */
export function withFormulaValues(model: WorkbookModel, units: EngineUnits): WorkbookModel {
  if (!model.sheets.some(({ rows }) => rows.some((cells) => cells?.some((cell) => cell && needsValue(cell)))))
    return model;
  const engine = buildEngine(rawSheets(model), units);
  try {
    const sheets = model.sheets.map((sheet) => {
      const id = engine.getSheetId(sheet.name)!;
      const valued = (cell: Cell | undefined, row: number, col: number): Cell | undefined =>
        cell && needsValue(cell) && engine.doesCellHaveFormula({ sheet: id, row, col })
          ? { ...cell, content: contentOf(engine.getCellValue({ sheet: id, row, col })) }
          : cell;
      return {
        ...sheet,
        rows: sheet.rows.map((cells, row) => cells?.map((cell, column) => valued(cell, row, column))),
      };
    });
    return { ...model, sheets };
  } finally {
    engine.destroy();
  }
}

/** A value of the engine as a cell's content. */
export function contentOf(value: ReturnType<HyperFormula['getCellValue']>): CellContent | undefined {
  if (value === null) return undefined;
  if (value instanceof DetailedCellError) return { kind: 'error', value: value.value };
  if (typeof value === 'number') return { kind: 'number', value };
  return typeof value === 'string' ? { kind: 'text', value } : { kind: 'boolean', value };
}
