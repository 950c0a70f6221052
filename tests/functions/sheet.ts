/** A small sheet on the engine with our functions, for tests. */
import { type ConfigParams, DetailedCellError, HyperFormula, type RawCellContent } from 'hyperformula';
import { type OilgapOptions, oilgapFunctions } from '../../src/engine/functions/register.js';

export type Found = number | string | boolean | null | { error: string; message: string };

export function foundIn(value: unknown): Found {
  return value instanceof DetailedCellError
    ? { error: value.type, message: value.message }
    : (value as number | string | boolean | null);
}

const engines = new Map<string, HyperFormula>();

/** One engine for all formulas of equal options: to build one takes longer than to compute. */
function engineFor(options: OilgapOptions, configuration: Partial<ConfigParams>): HyperFormula {
  const key = JSON.stringify([options, configuration]);
  const engine =
    engines.get(key) ??
    HyperFormula.buildFromSheets(
      { Formula: [], Cells: [] },
      { licenseKey: 'gpl-v3', ...configuration, ...oilgapFunctions(options) },
    );
  engines.set(key, engine);
  return engine;
}

/** The value of a formula, over cells that begin in A1 of the sheet `Cells`. */
export function evaluate(
  formula: string,
  cells: readonly (readonly RawCellContent[])[] = [],
  options: OilgapOptions = {},
  configuration: Partial<ConfigParams> = {},
): Found {
  const engine = engineFor(options, configuration);
  const sheet = engine.getSheetId('Formula')!;
  engine.setSheetContent(sheet, []);
  engine.setSheetContent(
    engine.getSheetId('Cells')!,
    cells.map((row) => [...row]),
  );
  engine.setSheetContent(sheet, [[formula]]);
  return foundIn(engine.getCellValue({ sheet, row: 0, col: 0 }));
}
