/**
 * The linear and whole-number solver (HiGHS, compiled to WebAssembly). Only this file imports it.
 *
 * Its models are in memory that no garbage collector frees, so that each one made here is disposed. Its errors are
 * caught and put into words: an uncaught one would print the solver's source.
 */
import highsModule, { type Highs, type ModelData, type VariableType } from 'highs';
import type { ModelRow } from './model-rows.js';

/** A column of a program to be minimised. */
export interface ProgramColumn {
  /** 0 where left out. */
  readonly lower?: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
  readonly upper: number;
  readonly cost: number;
}

export interface LinearSolution {
  readonly objective: number;
  readonly values: Float64Array;
  /** By row: the change of the objective for each unit that the row's limit rises. */
  readonly duals: Float64Array;
}

export interface WholeSolution {
  /** Undefined when none was found. */
  readonly values: Float64Array | undefined;
  /** No whole-number solution of these columns is below it. */
  readonly bound: number;
  /** Whether the time limit ended the solver. */
  readonly isCut: boolean;
}

export interface WholeOptions {
  readonly seconds: number;
  /** A solution that keeps every row, to improve on. */
  readonly start: Float64Array;
  /** A lower bound: a solution that reaches it ends the solver. */
  readonly target: number;
  /** Most nodes of the search tree. */
  readonly nodes?: number | undefined;
}

/** Thrown when the solver fails rather than finds nothing. */
export class SolverError extends Error {
  override readonly name = 'SolverError';
}

// The package's types describe its CommonJS build; the module that Node loads exports the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default;
let loading: Promise<Highs> | undefined;

function inWords<Result>(what: string, run: () => Result): Result {
  try {
    return run();
  } catch (error) {
    // After a failure the solver's memory cannot be trusted.
    loading = undefined;
    throw new SolverError(
      `the solver failed while ${what}: ${error instanceof Error ? error.message : error}`,
    );
  }
}

function sparse(columns: readonly ProgramColumn[], numRows: number): ModelData['matrix'] {
  const starts = new Int32Array(columns.length + 1);
  for (const [place, { rows }] of columns.entries()) starts[place + 1] = starts[place]! + rows.length;
  const indices = new Int32Array(starts[columns.length]!);
  const values = new Float64Array(starts[columns.length]!);
  for (const [place, column] of columns.entries()) {
    indices.set(column.rows, starts[place]!);
    values.set(column.values, starts[place]!);
  }
  return { format: 'csc', numRows, numCols: columns.length, starts, indices, values };
}

function dataOf(rows: readonly ModelRow[], columns: readonly ProgramColumn[]): ModelData {
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: Float64Array.from(columns, ({ cost }) => cost),
    colLower: Float64Array.from(columns, ({ lower }) => lower ?? 0),
    colUpper: Float64Array.from(columns, ({ upper }) => upper),
    rowLower: Float64Array.from(rows, ({ lower }) => lower),
    rowUpper: Float64Array.from(rows, ({ upper }) => upper),
    matrix: sparse(columns, rows.length),
  };
}

/** A linear program that can take more columns; dispose it after use. */
export interface LinearProgram {
  readonly add: (columns: readonly ProgramColumn[]) => void;
  /**
   * @returns undefined when the time is up
   * @throws SolverError
   */
  readonly solve: (seconds: number) => LinearSolution | undefined;
  readonly dispose: () => void;
}

export interface Solver {
  readonly linear: (rows: readonly ModelRow[], columns: readonly ProgramColumn[]) => LinearProgram;
  readonly whole: (
    rows: readonly ModelRow[],
    columns: readonly ProgramColumn[],
    options: WholeOptions,
  ) => WholeSolution;
}

/** @throws SolverError when it cannot be loaded. */
export async function loadSolver(): Promise<Solver> {
  try {
    loading ??= loadHighs();
    const highs = await loading;
    return {
      linear: (rows, columns) => linearProgram(highs, rows, columns),
      whole: (rows, columns, options) => solveWhole(highs, rows, columns, options),
    };
  } catch (error) {
    loading = undefined;
    throw new SolverError(`the solver cannot be loaded: ${error instanceof Error ? error.message : error}`);
  }
}

function linearProgram(
  highs: Highs,
  rows: readonly ModelRow[],
  columns: readonly ProgramColumn[],
): LinearProgram {
  const model = inWords('taking a linear program', () => highs.createModel(dataOf(rows, columns)));
  const { optimal } = highs.constants.modelStatus;
  return {
    add: (more) =>
      void inWords('taking more columns', () =>
        model.addCols({
          cost: Float64Array.from(more, ({ cost }) => cost),
          lower: new Float64Array(more.length),
          upper: Float64Array.from(more, ({ upper }) => upper),
          matrix: sparse(more, rows.length) as never,
        }),
      ),
    solve: (seconds) =>
      inWords('solving a linear program', () => {
        model.options.set({ output_flag: false, time_limit: model.getRunTime() + Math.max(seconds, 0) });
        model.run();
        if (model.getModelStatus() !== optimal) return undefined;
        const { colValue, rowDual } = model.getSolution();
        return { objective: model.getObjectiveValue(), values: colValue, duals: rowDual };
      }),
    dispose: () => model.dispose(),
  };
}

function solveWhole(
  highs: Highs,
  rows: readonly ModelRow[],
  columns: readonly ProgramColumn[],
  { seconds, start, target, nodes }: WholeOptions,
): WholeSolution {
  // The solver takes no start for a program without columns.
  if (columns.length === 0) return { values: start, bound: 0, isCut: false };
  const data = { ...dataOf(rows, columns), integrality: columns.map((): VariableType => 1) };
  const attempt = (presolve: 'choose' | 'off') =>
    highs.withModel(data, (model): WholeSolution => {
      model.options.set({
        output_flag: false,
        time_limit: Math.max(seconds, 0),
        mip_rel_gap: 0,
        // Every objective here is a whole number.
        mip_abs_gap: 0.999,
        objective_target: target + 0.5,
        presolve,
        ...(nodes === undefined ? {} : { mip_max_nodes: nodes }),
      });
      model.setSolution({ colValue: start });
      model.run();
      const found = Number(model.info.get('primal_solution_status')) === 2;
      return {
        values: found ? model.getSolution().colValue : undefined,
        bound: Number(model.info.get('mip_dual_bound')),
        isCut: model.getModelStatus() === highs.constants.modelStatus.timeLimit,
      };
    });
  return inWords('solving a whole-number program', () => {
    try {
      return attempt('choose');
    } catch {
      // In rare cases its presolve solves the program alone and ends with an error (HiGHS 1.15.3).
      return attempt('off');
    }
  });
}
