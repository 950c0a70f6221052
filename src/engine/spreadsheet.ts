/** One HyperFormula engine over the cells of a workbook, with our functions registered for this engine alone. */
import {
  AlwaysSparse,
  DetailedCellError,
  type FunctionPluginDefinition,
  HyperFormula,
  type RawCellContent,
} from 'hyperformula';
import { functionRecords } from '../../functions/index.js';
import type { LengthUnit, TemperatureUnit } from '../maths/units.js';
import type { FormulaGuard } from './formula-guard.js';
import { oilgapFunctions } from './functions/register.js';
import type { CellContent } from './workbook-model.js';

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
  /** For formulas of others. */
  readonly guard?: FormulaGuard;
  /** Cells are kept one by one: else a sheet that a formula makes both wide and long is kept as a whole rectangle. */
  readonly isSparse?: boolean;
}

export function buildEngine(
  sheets: RawSheets,
  units: EngineUnits,
  { useArrayArithmetic = false, functionPlugins = [], guard, isSparse = false }: EngineOptions = {},
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
    ...(isSparse && { chooseAddressMappingPolicy: new AlwaysSparse() }),
    language: ours.language,
    functionPlugins: [...ours.functionPlugins, ...functionPlugins, ...(guard ? [guard.plugin] : [])],
  });
}

const OUR_FUNCTION = new RegExp(`\\b(?:${functionRecords.map(({ name }) => name).join('|')})\\s*\\(`, 'i');

/** Whether a formula uses a function that only this program knows. */
export function usesOurFunctions(formula: string | undefined): boolean {
  return formula !== undefined && OUR_FUNCTION.test(formula);
}

/** A value of the engine as a cell's content. */
export function contentOf(value: ReturnType<HyperFormula['getCellValue']>): CellContent | undefined {
  if (value === null) return undefined;
  if (value instanceof DetailedCellError) return { kind: 'error', value: value.value };
  if (typeof value === 'number') return { kind: 'number', value };
  return typeof value === 'string' ? { kind: 'text', value } : { kind: 'boolean', value };
}
