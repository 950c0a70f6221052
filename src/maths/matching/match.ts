/**
 * Matching: bore and half-shells for every journal, so that most engines are complete.
 *
 * The aims are pursued one after the other (stages.ts); the sets found are named part by part and
 * rechecked before anyone sees them.
 */
import { clearanceOf } from '../clearance.js';
import { type Aim, aimsOf, greatestCommonDivisor } from './aims.js';
import { firstFits } from './first-fits.js';
import { type Model, modelOf } from './model-columns.js';
import { namedFits } from './named-fits.js';
import { orderStock } from './order.js';
import { kindKey } from './part-classes.js';
import { type Problem, problemOf } from './problem.js';
import { recheck } from './recheck.js';
import { loadSolver } from './solver.js';
import { pursue, type Reached } from './stages.js';
import type { MatchedFit, MatchResult, StageResult, Stock } from './stock.js';

export interface MatchOptions {
  /** Told what each aim reached. */
  readonly onProgress?: (message: string) => void;
  /** Time for the search; when it is up, the best sets found so far are returned with the bounds proven. */
  readonly seconds?: number;
}

export const DEFAULT_SECONDS = 60;

/**
 * The best sets of a stock, the same in whatever order its rows come.
 * @throws SolverError when the solver fails
 * @throws RecheckError when the sets break a rule: a defect, never a property of the stock
 */
export async function matchStock(stock: Stock, options: MatchOptions = {}): Promise<MatchResult> {
  const { onProgress = () => {}, seconds = DEFAULT_SECONDS } = options;
  const deadline = performance.now() + seconds * 1000;
  const remaining = () => (deadline - performance.now()) / 1000;
  const ordered = orderStock(stock);
  const problem = problemOf(ordered);
  const model = modelOf(problem);
  const aims = aimsOf(ordered, {
    price: greatestCommonDivisor(model.prices.steps),
    distance: distanceStep(problem),
  });
  const { sets, stages } = pursue(await loadSolver(), model, aims, firstFits(model), remaining, onProgress);
  const fits = namedFits(problem, sets);
  recheck(ordered, fits);
  const completeEngines = completeOf(ordered, fits);
  return {
    fits,
    completeEngines,
    stages: stages.map((stage) => resultOf(model, fits, completeEngines, stage)),
    grid: undefined,
  };
}

/** The greatest whole number of grains that every distance from the aim is a multiple of. */
function distanceStep({ gaps, shapes, limits }: Problem): number {
  const differences = [...limits].flatMap(([kind, { aim }]) => {
    if (aim === undefined) return [];
    const wished = gaps.filter((gap) => gap.limits === limits.get(kind)).map(({ size }) => size - aim);
    const made = shapes.filter((shape) => shape.kind === kind).map(({ size }) => size);
    if (wished.length === 0 || made.length === 0) return [];
    // Any distance is |one of these differences|, moved by differences within each list.
    const within = (values: readonly number[]) => values.map((value) => value - values[0]!);
    return [wished[0]! - made[0]!, ...within(wished), ...within(made)];
  });
  return greatestCommonDivisor(differences);
}

function completeOf({ engines }: Stock, fits: readonly MatchedFit[]): string[] {
  const filled = new Set(fits.map(({ journal }) => journal));
  return engines
    .filter(({ journals }) => journals.length > 0 && journals.every((journal) => filled.has(journal)))
    .map(({ name }) => name);
}

/** What the named sets amount to, counted from the fits themselves. */
function countOf(
  aim: Aim['name'],
  { problem, prices }: Model,
  fits: readonly MatchedFit[],
  complete: readonly string[],
) {
  if (aim === 'complete engines') return complete.length;
  if (aim === 'filled journals beyond them')
    return fits.filter(({ engine }) => !complete.includes(engine)).length;
  if (aim === 'pairs kept together') return fits.filter(({ ranTogether }) => ranTogether).length;
  let sum = 0;
  for (const { journal, parts, upper, lower } of fits) {
    if (aim === 'price of bought shells') {
      for (const { from, shell } of [upper, lower]) {
        if (from === 'new') sum += prices.steps[problem.stock.newShells.indexOf(shell)]!;
      }
    } else {
      const wished = problem.limits.get(kindKey(journal))!.aim;
      if (wished !== undefined) sum += Math.abs(clearanceOf(parts).clearance - wished);
    }
  }
  return aim === 'price of bought shells' ? sum / prices.perUnit : sum;
}

function resultOf(
  model: Model,
  fits: readonly MatchedFit[],
  complete: readonly string[],
  { aim, bound }: Reached,
): StageResult {
  const perUnit = aim.amount === 'price' ? model.prices.perUnit : 1;
  return {
    aim: aim.name,
    reached: countOf(aim.name, model, fits, complete),
    bound: (bound * aim.sign * aim.step) / perUnit,
  };
}
