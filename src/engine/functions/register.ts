/**
 * The functions for anybody's own HyperFormula:
 *
 *   import { HyperFormula } from 'hyperformula';
 *   import { oilgapFunctions } from 'oilgap/functions';
 *
 *   const engine = HyperFormula.buildFromSheets(sheets, {
 *     licenseKey: 'gpl-v3',
 *     ...oilgapFunctions({ lengthUnit: 'in' }),
 *   });
 *
 * Nothing global changes except that a language of our own is registered, which holds the English names of
 * the built-in functions and ours. Names of further plugins go into it by its code:
 * `HyperFormula.registerFunctionPlugin(Mine, { [OILGAP_LANGUAGE]: { MINE: 'MINE' } })`.
 */
import { type FunctionPluginDefinition, HyperFormula } from 'hyperformula';
import { enGB } from 'hyperformula/i18n/languages';
import type { FunctionUnits } from '../../../functions/expected.js';
import { functionRecords } from '../../../functions/index.js';
import { isLengthUnit, isTemperatureUnit, type LengthUnit, type TemperatureUnit } from '../../maths/units.js';
import { functionsPlugin } from './functions-plugin.js';

/** The code of our language pack in HyperFormula. */
export const OILGAP_LANGUAGE = 'oilgap';

export interface OilgapOptions {
  /** The unit of every length in the book: `mm` (default), `in` or `µm`. */
  readonly lengthUnit?: LengthUnit | undefined;
  /** The unit of every temperature in the book: `C` (default) or `F`. */
  readonly temperatureUnit?: TemperatureUnit | undefined;
}

/** The part of HyperFormula's configuration that brings the functions. */
export interface OilgapConfiguration {
  /** All built-in plugins, and ours. */
  readonly functionPlugins: FunctionPluginDefinition[];
  readonly language: string;
}

const plugins = new Map<string, FunctionPluginDefinition>();

function pluginOf(units: FunctionUnits): FunctionPluginDefinition {
  const key = `${units.lengthUnit} ${units.temperatureUnit}`;
  const plugin = plugins.get(key) ?? functionsPlugin(units);
  plugins.set(key, plugin);
  return plugin;
}

/** Registers our names once; a second copy of this module finds the language and only adds to it. */
function ensureLanguage(): void {
  const names = Object.fromEntries(functionRecords.map(({ name }) => [name, name]));
  if (HyperFormula.getRegisteredLanguagesCodes().includes(OILGAP_LANGUAGE)) {
    HyperFormula.getLanguage(OILGAP_LANGUAGE).extendFunctions(names);
    return;
  }
  HyperFormula.registerLanguage(OILGAP_LANGUAGE, {
    ...enGB,
    langCode: OILGAP_LANGUAGE,
    functions: { ...enGB.functions, ...names },
  });
}

/**
 * What to spread into the configuration of a HyperFormula instance. Instances of different units may
 * live side by side.
 * @throws RangeError for a unit that is not known.
 */
export function oilgapFunctions(options: OilgapOptions = {}): OilgapConfiguration {
  const { lengthUnit = 'mm', temperatureUnit = 'C' } = options;
  if (!isLengthUnit(lengthUnit)) throw new RangeError(`lengthUnit is ${lengthUnit}; expected mm, in or µm`);
  if (!isTemperatureUnit(temperatureUnit)) {
    throw new RangeError(`temperatureUnit is ${temperatureUnit}; expected C or F`);
  }
  ensureLanguage();
  return {
    functionPlugins: [...HyperFormula.getAllFunctionPlugins(), pluginOf({ lengthUnit, temperatureUnit })],
    language: OILGAP_LANGUAGE,
  };
}
