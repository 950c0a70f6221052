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
const LEAST_WORK = 300;
/** So many are looked for one by one, each for its time; from then on those that differ in figures alone go with one. */
const MOST_ALONE = 5;

const UNREADABLE = 'the engine cannot read it';
const TOO_LONG = `it takes longer than ${LONGEST_RUN / 1000} s`;
/** What a formula that is not computed stands for. */
export const NOT_COMPUTED = '#NUM!';

export interface GuardedEngine {
  readonly engine: HyperFormula;
  /** Formulas that were given up; the engine has the error value in their place. */
  readonly givenUp: readonly GivenUp[];
}

interface GivenUp {
  readonly cell: EngineCell;
  readonly reason: string;
}

export function buildGuardedEngine(sheets: RawSheets, units: EngineUnits): GuardedEngine {
  const names = Object.keys(sheets);
  const cells = Object.values(sheets).reduce(
    (sum, rows) => sum + rows.reduce((all, row) => all + row.length, 0),
    0,
  );
  const givenUp: GivenUp[] = [];
  const giveUp = (found: readonly EngineCell[], reason: string) => {
    for (const cell of found) {
      sheets[names[cell.sheet]!]![cell.row]![cell.col] = NOT_COMPUTED;
      givenUp.push({ cell, reason });
    }
  };
  for (let limit = FEW_CELLS + EACH_CELL * cells; ; ) {
    const guard = new FormulaGuard();
    const { result: engine, fault } = within(limit, () =>
      buildEngine(sheets, units, { guard, isSparse: true }),
    );
    if (engine !== undefined) return { engine, givenUp };
    if (fault !== undefined) {
      // An evaluation never fails, so what fails is that a formula is taken apart.
      const unreadable = unreadableFormulas(sheets, units);
      if (unreadable.length === 0) throw fault;
      giveUp(unreadable, UNREADABLE);
      continue;
    }
    const { current } = guard;
    if (current && performance.now() - current.since >= LONGEST_RUN && hasWorked(current.work)) {
      const { sheet, row, col } = current.cell;
      const shape = shapeOf(String(sheets[names[sheet]!]![row]![col]));
      giveUp([current.cell], TOO_LONG);
      if (givenUp.length > MOST_ALONE) {
        // Those filled down a column differ in figures alone.
        giveUp(
          formulasWhere(sheets, (formula) => shapeOf(formula) === shape),
          TOO_LONG,
        );
      }
    } else limit *= 2;
  }
}

function unreadableFormulas(sheets: RawSheets, units: EngineUnits): EngineCell[] {
  const engine = buildEngine({ Sheet1: [] }, units);
  const isUnreadable = (formula: string) => {
    try {
      engine.validateFormula(formula);
      return false;
    } catch {
      return true;
    }
  };
  try {
    return formulasWhere(sheets, isUnreadable);
  } finally {
    engine.destroy();
  }
}

function formulasWhere(sheets: RawSheets, isMeant: (formula: string) => boolean): EngineCell[] {
  return Object.values(sheets).flatMap((rows, sheet) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((cell, col) =>
        typeof cell === 'string' && cell.startsWith('=') && isMeant(cell) ? [{ sheet, row, col }] : [],
      ),
    ),
  );
}

const shapeOf = (formula: string) => formula.replaceAll(/\d+/g, '0');

/** What an engine without cells makes of one formula, or why it was given up. */
export function evaluateGuarded<Result>(
  units: EngineUnits,
  evaluate: (engine: HyperFormula) => Result,
): { readonly result: Result } | { readonly reason: string } {
  for (let limit = LONGEST_RUN; ; limit *= 2) {
    const engine = buildEngine({ Sheet1: [] }, units, { guard: new FormulaGuard(), isSparse: true });
    const { result, isFair, fault } = within(limit, () => evaluate(engine));
    if (result !== undefined) return { result };
    if (fault !== undefined) return { reason: UNREADABLE };
    if (isFair) return { reason: TOO_LONG };
  }
}

const RUN = new Script('run()');

interface Outcome<Result> {
  /** Undefined where the time was over, or something was thrown. */
  readonly result: Result | undefined;
  readonly fault?: unknown;
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
    if ((error as NodeJS.ErrnoException).code !== 'ERR_SCRIPT_EXECUTION_TIMEOUT') {
      return { result: undefined, isFair: true, fault: error };
    }
    return { result: undefined, isFair: hasWorked(before) };
  }
}

function hasWorked(since: NodeJS.CpuUsage): boolean {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000 >= LEAST_WORK;
}
