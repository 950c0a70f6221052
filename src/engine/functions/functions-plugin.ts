/**
 * Makes one HyperFormula plugin of the function records.
 *
 * HyperFormula's own checks would turn a blank into 0, so every argument is taken as it is and
 * read by hand.
 */
import {
  FunctionArgumentType,
  type FunctionMetadata,
  FunctionPlugin,
  type FunctionPluginDefinition,
} from 'hyperformula';
import {
  type ArgumentRecord,
  ArgumentRefusal,
  type FunctionRecord,
  type Quantity,
} from '../../../functions/definition.js';
import type { FunctionUnits } from '../../../functions/expected.js';
import { functionRecords } from '../../../functions/index.js';
import { messages } from '../../../functions/messages.js';
import { callRecord, errorOf, givenOf } from './call-record.js';
import { ArgumentReader } from './read-arguments.js';

type RunFunction = FunctionPlugin['runFunction'];
type Call = (
  this: RecordsPlugin,
  ast: { args: Parameters<RunFunction>[0] },
  state: Parameters<RunFunction>[1],
) => ReturnType<RunFunction>;

const TAKES_RANGES: readonly Quantity[] = [
  'lengths',
  'spots',
  'unrounded lengths',
  'names',
  'angles',
  'classes',
  'selection',
];

/** How HyperFormula lists an argument: a scalar may be filled from a spilling array, a range may not. */
function declared({ quantity, optional = false }: ArgumentRecord) {
  return {
    argumentType: TAKES_RANGES.includes(quantity) ? FunctionArgumentType.ANY : FunctionArgumentType.SCALAR,
    passSubtype: true,
    optionalArg: optional,
  };
}

const AS_GIVEN = { argumentType: FunctionArgumentType.ANY, passSubtype: true, optionalArg: true };

abstract class RecordsPlugin extends FunctionPlugin {
  /** The method behind one function: evaluates, reads, computes, and never throws. */
  static callOf(
    record: FunctionRecord,
    metadata: FunctionMetadata,
    units: FunctionUnits,
    reader: ArgumentReader,
  ): Call {
    const { name, arguments: known } = record;
    // Outside of array formulas nothing is spilled: a range for a single value is refused by name.
    const plain = { ...metadata, parameters: known.map(() => AS_GIVEN) };
    const spilled = {
      ...metadata,
      parameters: metadata.parameters!.map((parameter) => ({ ...parameter, optionalArg: true })),
    };
    return function call({ args }, state) {
      // HyperFormula fills up arguments that were left out.
      const evaluate = (...values: unknown[]) =>
        callRecord(record, () => values.slice(0, args.length).map(givenOf), reader, units);
      try {
        if (args.length > known.length) {
          const names = known.map((argument) => argument.name);
          throw new ArgumentRefusal('NA', messages.tooMany(names, args.length));
        }
        return this.runFunction(args, state, state.arraysFlag ? spilled : plain, evaluate);
      } catch (thrown) {
        return errorOf(name, thrown);
      }
    };
  }
}

/** A plugin with every function, for books in these units. */
export function functionsPlugin(units: FunctionUnits): FunctionPluginDefinition {
  class Plugin extends RecordsPlugin {
    static override implementedFunctions: Record<string, FunctionMetadata> = {};
  }
  const reader = new ArgumentReader(units);
  for (const record of functionRecords) {
    const metadata: FunctionMetadata = { method: record.name, parameters: record.arguments.map(declared) };
    Plugin.implementedFunctions[record.name] = metadata;
    Object.defineProperty(Plugin.prototype, record.name, {
      value: RecordsPlugin.callOf(record, metadata, units, reader),
    });
  }
  return Plugin;
}
