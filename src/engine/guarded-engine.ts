/** Formulas of others on an engine: each is given up where it takes too long, and all the rest is computed. */
import { Script } from 'node:vm';
import type { HyperFormula } from 'hyperformula';
import { type EngineCell, FormulaGuard } from './formula-guard.js';
import { buildEngine, type EngineUnits, type RawSheets } from './spreadsheet.js';

/** In milliseconds: what one formula may take, and what all may take before one of them is looked for. */
const LONGEST_RUN = 800;
const FEW_CELLS = 1_200;
const EACH_CELL = 0.2;
/** Processor time from which on a formula is at fault, and not a machine that is busy elsewhere or was asleep. */
const LEAST_WORK = 500;
/** So many are looked for one by one, each for its time; from then on those that differ in figures alone go with one. */
const MOST_ALONE = 5;

export const TOO_LONG = `it takes longer than ${LONGEST_RUN / 1000} s`;
/** What a formula that is not computed stands for. */
export const NOT_COMPUTED = '#NUM!';

export interface GuardedEngine {
  readonly engine: HyperFormula;
  /** Formulas that took too long; the engine has the error value in their place. */
  readonly tooLong: readonly EngineCell[];
}

export function buildGuardedEngine(sheets: RawSheets, units: EngineUnits): GuardedEngine {
  const names = Object.keys(sheets);
  const cells = Object.values(sheets).reduce(
    (sum, rows) => sum + rows.reduce((all, row) => all + row.length, 0),
    0,
  );
  const tooLong: EngineCell[] = [];
  for (let limit = FEW_CELLS + EACH_CELL * cells; ; ) {
    const guard = new FormulaGuard();
    const { result: engine, isFair } = within(limit, () => buildEngine(sheets, units, { guard }));
    if (engine !== undefined) return { engine, tooLong };
    const { current } = guard;
    if (current && isFair && performance.now() - current.since >= LONGEST_RUN) {
      const { sheet, row, col } = current.cell;
      const formula = String(sheets[names[sheet]!]![row]![col]);
      sheets[names[sheet]!]![row]![col] = NOT_COMPUTED;
      tooLong.push(current.cell);
      if (tooLong.length > MOST_ALONE) tooLong.push(...withoutAlike(sheets, formula));
    } else limit *= 2;
  }
}

/** Takes the formulas out that differ from one in figures alone, as those filled down a column do; tells where they were. */
function withoutAlike(sheets: RawSheets, formula: string): EngineCell[] {
  const shape = shapeOf(formula);
  return Object.values(sheets).flatMap((rows, sheet) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((cell, col) => {
        if (typeof cell !== 'string' || !cell.startsWith('=') || shapeOf(cell) !== shape) return [];
        cells[col] = NOT_COMPUTED;
        return [{ sheet, row, col }];
      }),
    ),
  );
}

const shapeOf = (formula: string) => formula.replaceAll(/\d+/g, '0');

/** An engine without cells, for one formula; undefined where the formula takes too long. */
export function evaluateGuarded<Result>(
  units: EngineUnits,
  evaluate: (engine: HyperFormula) => Result,
): Result | undefined {
  for (let limit = LONGEST_RUN; ; limit *= 2) {
    const engine = buildEngine({ Sheet1: [] }, units, { guard: new FormulaGuard() });
    const { result, isFair } = within(limit, () => evaluate(engine));
    engine.destroy();
    if (result !== undefined || isFair) return result;
  }
}

const RUN = new Script('run()');

interface Outcome<Result> {
  /** Undefined where the time was over. */
  readonly result: Result | undefined;
  /** Whether the processor worked for it as long as a formula at fault takes. */
  readonly isFair: boolean;
}

/** Runs something to its end or until the time is over: V8 then ends whatever it is doing, a loop too. */
function within<Result>(milliseconds: number, run: () => Result): Outcome<Result> {
  const before = process.cpuUsage();
  try {
    const result = RUN.runInNewContext({ run }, { timeout: Math.ceil(milliseconds) }) as Result;
    return { result, isFair: true };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_SCRIPT_EXECUTION_TIMEOUT') throw error;
    const { user, system } = process.cpuUsage(before);
    return { result: undefined, isFair: (user + system) / 1000 >= LEAST_WORK };
  }
}
