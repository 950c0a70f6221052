/**
 * Holds what a formula takes within limits while HyperFormula evaluates it: arrays and texts are measured before and
 * after each step, whatever is thrown becomes an error value of the one cell, and who waits can see which cell it is.
 *
 * HyperFormula has no such limits. Its plugins get its interpreter, whose methods are wrapped here for one engine;
 * `tests/engine/formula-guard.test.ts` fails where a new version no longer calls them.
 */
import {
  ArraySize,
  CellError,
  ErrorType,
  type FunctionMetadata,
  FunctionPlugin,
  type FunctionPluginDefinition,
  SimpleRangeValue,
} from 'hyperformula';

/** Cells of one array, and of all arrays on the way to one value: measured, 1,000,000 take some 230 MB. */
const LARGEST_ARRAY = 1_000_000;
/** Cells of an array that lies in cells of a sheet: each is kept by itself, and 810,000 take 10 s. */
const LARGEST_SPILL = 50_000;
const MOST_ARRAY_CELLS = 2_000_000;
/** What a cell of a spreadsheet program holds. */
const LONGEST_TEXT = 32_767;
/** Of a product of matrices: some 0.4 s. */
const MOST_PRODUCTS = 40_000_000;

const REASONS = {
  array: `an array of more than ${LARGEST_ARRAY} cells`,
  arrays: `arrays of more than ${MOST_ARRAY_CELLS} cells together`,
  text: `a text of more than ${LONGEST_TEXT} characters`,
  products: `more than ${MOST_PRODUCTS} products of matrix cells`,
};

/** Stack, or the length of an array or text. */
const EXHAUSTED = 'The formula takes more memory than there is for one.';

/** A cell of an engine, sheets by their numbers. */
export interface EngineCell {
  readonly sheet: number;
  readonly row: number;
  readonly col: number;
}

interface State {
  readonly formulaAddress: EngineCell;
  readonly arraysFlag: boolean;
}

type Interpreter = ConstructorParameters<typeof FunctionPlugin>[0];
type Value = unknown;
type Implementation = (...values: Value[]) => Value;

/** What is used of HyperFormula's inside. */
interface InsideInterpreter {
  evaluateAst(ast: unknown, state: State): Value;
  binaryRangeWrapper(operation: unknown, left: Value, right: Value, state: State): Value;
  readonly functionRegistry: { readonly functions: ReadonlyMap<string, readonly [string, InsidePlugin]> };
  readonly arraySizePredictor: { checkArraySize(ast: unknown, address: EngineCell): ArraySize };
}

interface InsidePlugin {
  runFunction(args: unknown, state: State, metadata: FunctionMetadata, body: Implementation): Value;
  calculateSizeOfVectorizedResultArray(values: unknown, metadata: unknown): [number, number];
}

class Excess extends Error {}

export class FormulaGuard {
  /** The cell that is being evaluated, and since when by `performance.now()` and by the processor. */
  current: { readonly cell: EngineCell; readonly since: number; readonly work: NodeJS.CpuUsage } | undefined;

  /** To be put among the plugins of one engine. */
  readonly plugin: FunctionPluginDefinition;

  constructor() {
    const attach = (interpreter: Interpreter) => this.attach(interpreter as unknown as InsideInterpreter);
    this.plugin = class extends FunctionPlugin {
      /** The engine makes a plugin for its functions only. This one has no name in the language, so nobody calls it. */
      static override implementedFunctions = { OILGAP_GUARD: { method: 'guard', parameters: [] } };

      constructor(interpreter: Interpreter) {
        super(interpreter);
        attach(interpreter);
      }

      guard(): string {
        return '';
      }
    };
  }

  private attach(interpreter: InsideInterpreter): void {
    const evaluate = interpreter.evaluateAst.bind(interpreter);
    let depth = 0;
    let arrayCells = 0;
    interpreter.evaluateAst = (ast, state) => {
      if (depth === 0) {
        guardFunctions(interpreter);
        this.current = { cell: state.formulaAddress, since: performance.now(), work: process.cpuUsage() };
        arrayCells = 0;
      }
      depth++;
      try {
        const value = evaluate(ast, state);
        if (typeof value === 'string' && value.length > LONGEST_TEXT) return errorOf(REASONS.text);
        if (value instanceof SimpleRangeValue && value.isAdHoc()) {
          arrayCells += value.width() * value.height();
          if (arrayCells > MOST_ARRAY_CELLS) return errorOf(REASONS.arrays);
        }
        return value;
      } catch (thrown) {
        return errorFrom(thrown);
      } finally {
        depth--;
        if (depth === 0) this.current = undefined;
      }
    };
    guardOperators(interpreter);
    guardSpilling(interpreter);
  }
}

/** An operator over a row and a column fills their whole rectangle. */
function guardOperators(interpreter: InsideInterpreter): void {
  const operate = interpreter.binaryRangeWrapper.bind(interpreter);
  interpreter.binaryRangeWrapper = (operation, left, right, state) => {
    const cells = [left, right].map(sizeOf);
    const height = Math.max(...cells.map((size) => size.height));
    const width = Math.max(...cells.map((size) => size.width));
    if (state.arraysFlag && height * width > LARGEST_ARRAY) return errorOf(REASONS.array);
    return operate(operation, left, right, state);
  };
}

/** An array that lies in cells takes its place before it is evaluated. One that is too large gets one cell, and so an error. */
function guardSpilling({ arraySizePredictor: predictor }: InsideInterpreter): void {
  const predict = predictor.checkArraySize.bind(predictor);
  predictor.checkArraySize = (ast, address) => {
    try {
      const size = predict(ast, address);
      return size.width * size.height > LARGEST_SPILL ? ArraySize.error() : size;
    } catch {
      return ArraySize.error();
    }
  };
}

const guarded = new WeakSet<InsidePlugin>();

/** Plugins are made one after the other, so that all of them are known only when something is evaluated. */
function guardFunctions({ functionRegistry }: InsideInterpreter): void {
  for (const [, plugin] of functionRegistry.functions.values()) {
    if (guarded.has(plugin)) continue;
    guarded.add(plugin);
    const run = plugin.runFunction.bind(plugin);
    plugin.runFunction = (args, state, metadata, body) =>
      run(args, state, metadata, (...values) => {
        const reason = EXCESSES[metadata.method]?.(...values);
        return reason === undefined ? body(...values) : errorOf(reason);
      });
    const size = plugin.calculateSizeOfVectorizedResultArray.bind(plugin);
    plugin.calculateSizeOfVectorizedResultArray = (values, metadata) => {
      const [height, width] = size(values, metadata);
      if (height * width > LARGEST_ARRAY) throw new Excess(REASONS.array);
      return [height, width];
    };
  }
}

/** Why a function is not run on its values: those whose result may be far larger than what they are given. */
const EXCESSES: Readonly<Record<string, (...values: Value[]) => string | undefined>> = {
  sequence: (rows, columns) => (Number(rows) * Number(columns) > LARGEST_ARRAY ? REASONS.array : undefined),
  rept: (text, count) => (String(text).length * Number(count) > LONGEST_TEXT ? REASONS.text : undefined),
  substitute: (text, found, replacement) => {
    const occurrences = found === '' ? 0 : String(text).split(String(found)).length - 1;
    const length = String(text).length + occurrences * String(replacement).length;
    return length > 10 * LONGEST_TEXT ? REASONS.text : undefined;
  },
  vstack: (...arrays) => stackExcess(arrays.map(sizeOf)),
  hstack: (...arrays) =>
    stackExcess(arrays.map(sizeOf).map(({ height, width }) => ({ height: width, width: height }))),
  mmult: (left, right) =>
    sizeOf(left).height * sizeOf(left).width * sizeOf(right).width > MOST_PRODUCTS
      ? REASONS.products
      : undefined,
};

/** Arrays one below the other are filled up to the widest of them. */
function stackExcess(sizes: readonly Size[]): string | undefined {
  const height = sizes.reduce((sum, size) => sum + size.height, 0);
  return height * Math.max(...sizes.map(({ width }) => width)) > LARGEST_ARRAY ? REASONS.array : undefined;
}

interface Size {
  readonly height: number;
  readonly width: number;
}

function sizeOf(value: Value): Size {
  return value instanceof SimpleRangeValue
    ? { height: value.height(), width: value.width() }
    : { height: 1, width: 1 };
}

function errorOf(reason: string): CellError {
  return new CellError(ErrorType.NUM, `The formula makes ${reason}.`);
}

function errorFrom(thrown: unknown): CellError {
  if (thrown instanceof Excess) return errorOf(thrown.message);
  if (thrown instanceof RangeError) return new CellError(ErrorType.NUM, EXHAUSTED);
  const reason = thrown instanceof Error ? thrown.message : String(thrown);
  return new CellError(ErrorType.NUM, `The formula cannot be computed: ${reason}.`);
}
