/**
 * Makes one HyperFormula plugin of the function records.
 *
 * HyperFormula's own checks would turn a blank into 0, so every argument is taken as it is and
 * read by hand. A method that throws, or returns null, undefined or an object, would take the whole
 * engine down: each is wrapped.
 */
import {
  CellError,
  CellValueDetailedType,
  EmptyValue,
  ErrorType,
  FunctionArgumentType,
  type FunctionMetadata,
  FunctionPlugin,
  type FunctionPluginDefinition,
  SimpleRangeValue,
} from 'hyperformula';
import {
  type ArgumentRecord,
  type FunctionRecord,
  type Quantity,
  Refusal,
} from '../../functions/definition.js';
import type { BookUnits } from '../../functions/expected.js';
import { functionRecords } from '../../functions/index.js';
import { messages } from '../../functions/messages.js';
import {
  ArgumentReader,
  type FormattedNumber,
  type Given,
  resultInBook,
  type Scalar,
} from './read-arguments.js';

type RunFunction = FunctionPlugin['runFunction'];
type Call = (
  this: RecordsPlugin,
  ast: { args: Parameters<RunFunction>[0] },
  state: Parameters<RunFunction>[1],
) => ReturnType<RunFunction>;

/** Thrown inside a call to hand on an error value that stood in one of its arguments. */
class ErrorInArgument {
  constructor(readonly error: CellError) {}
}

const TAKES_RANGES: readonly Quantity[] = [
  'lengths',
  'spots',
  'unrounded lengths',
  'names',
  'angles',
  'classes',
  'selection',
];

const FORMATS: Readonly<Record<string, FormattedNumber['format']>> = {
  [CellValueDetailedType.NUMBER_DATE]: 'date',
  [CellValueDetailedType.NUMBER_DATETIME]: 'date',
  [CellValueDetailedType.NUMBER_TIME]: 'time',
  [CellValueDetailedType.NUMBER_CURRENCY]: 'currency',
  [CellValueDetailedType.NUMBER_PERCENT]: 'percent',
};

function scalarOf(value: unknown): Scalar {
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value;
  if (value === EmptyValue || value === undefined || value === null) return undefined;
  if (value instanceof CellError) throw new ErrorInArgument(value);
  const number = value as { val: number; getDetailedType(): string };
  const format = FORMATS[number.getDetailedType()];
  return format === undefined ? number.val : { format, value: number.val };
}

function givenOf(value: unknown): Given {
  return value instanceof SimpleRangeValue ? value.data.map((row) => row.map(scalarOf)) : scalarOf(value);
}

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
    units: BookUnits,
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
      const evaluate = (...values: unknown[]) => {
        try {
          // The engine fills up arguments that were left out.
          const given = values.slice(0, args.length).map(givenOf);
          return resultOf(resultInBook(record.result, record.body(...reader.readAll(record, given)), units));
        } catch (thrown) {
          return errorOf(name, thrown);
        }
      };
      try {
        if (args.length > known.length) {
          const names = known.map((argument) => argument.name);
          throw new Refusal('NA', messages.tooMany(names, args.length));
        }
        return this.runFunction(args, state, state.arraysFlag ? spilled : plain, evaluate);
      } catch (thrown) {
        return errorOf(name, thrown);
      }
    };
  }
}

/** A plugin with every function, for books in these units. */
export function functionsPlugin(units: BookUnits): FunctionPluginDefinition {
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

/** What a cell can hold; a number that is not finite would not be one. */
function resultOf(value: number | string): number | string {
  if (typeof value === 'string') return value;
  if (!Number.isFinite(value)) throw new Refusal('NUM', messages.unforeseen('the result is not a number'));
  return value === 0 ? 0 : value;
}

function errorOf(name: string, thrown: unknown): CellError {
  if (thrown instanceof ErrorInArgument) return thrown.error;
  if (thrown instanceof Refusal) return new CellError(ErrorType[thrown.code], `${name}: ${thrown.message}`);
  const reason = thrown instanceof Error ? thrown.message : String(thrown);
  return new CellError(ErrorType.VALUE, `${name}: ${messages.unforeseen(reason)}`);
}
