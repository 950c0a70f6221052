/**
 * Matching: bore and half-shells for every journal, so that most engines are complete.
 *
 * The aims are pursued one after the other (stages.ts). The sets are named part by part, and every rule is checked
 * again (recheck.ts) before they are returned.
 */
import { stockOnGrid, unfolded } from './grid.js';
import { completeEngines as completeEnginesOf } from './named-fits.js';
import { orderStock } from './order.js';
import { recheck } from './recheck.js';
import { search } from './search.js';
import { amountOfSets } from './set-amounts.js';
import { settledOf } from './settled.js';
import { canStayWhole, isWhole } from './settled-rest.js';
import { loadSolver, type Solver } from './solver.js';
import type { MatchedFit, MatchResult, StageResult, Stock } from './stock.js';

export interface MatchingOptions {
  /** Takes messages of what each aim reached. */
  readonly onProgress?: (message: string) => void;
  /** Time for the search; when it is up, the best sets so far are returned with the bounds proven by then. */
  readonly seconds?: number;
  /** From so many journals on a stock is large: alike journals of different engines are then one class (large.ts). */
  readonly largeFrom?: number;
}

export const DEFAULT_SECONDS = 30;

/**
 * The best sets of a stock. They do not depend on the order of its rows. Where the time ends one of the searches, the
 * next run may find other sets.
 * @throws SolverError when the solver fails
 * @throws RecheckError when the sets break a rule: a defect, never a property of the stock
 */
export async function matchStock(stock: Stock, options: MatchingOptions = {}): Promise<MatchResult> {
  const { onProgress = () => {}, seconds = DEFAULT_SECONDS } = options;
  const deadline = performance.now() + seconds * 1000;
  const remaining = () => (deadline - performance.now()) / 1000;
  const solver = await loadSolver();
  const given = { solver, remaining, onProgress, largeFrom: options.largeFrom };
  const ordered = orderStock(stock);
  const found = searchRest(ordered, given) ?? searchAll(ordered, given);
  const result = { ...found, completeEngines: completeEnginesOf(ordered, found.fits) };
  recheck(stock, result);
  return result;
}

interface Given {
  readonly solver: Solver;
  readonly remaining: () => number;
  readonly onProgress: (message: string) => void;
  readonly largeFrom: number | undefined;
}

type Found = Omit<MatchResult, 'completeEngines'>;

function searchAll(ordered: Stock, { solver, remaining, onProgress, largeFrom }: Given): Found {
  const onGrid = stockOnGrid(ordered);
  const found = search(onGrid, solver, remaining, onProgress, largeFrom);
  const complete = completeEnginesOf(found.stock, found.fits);
  const stages = found.proofs.map(({ aim, bound, gapStays = 'search' }): StageResult => {
    const reached = amountOfSets(aim, found.stock, found.fits, complete);
    return { aim, reached, bound, gapStays: reached === bound ? undefined : gapStays };
  });
  return {
    fits: unfolded(found.fits, onGrid.inner, ordered),
    hopelessEngines: found.stock.engines.filter(({ isHopeless }) => isHopeless).map(({ name }) => name),
    stages,
    grid: onGrid.grid === 1 ? undefined : onGrid.grid,
  };
}

/**
 * The search of what settled fits leave of a stock; undefined where there are none, and where the rest does not bear
 * them out.
 */
function searchRest(ordered: Stock, given: Given): Found | undefined {
  const settled = settledOf(ordered);
  if (!settled) return undefined;
  const { rest } = settled;
  if (!canStayWhole(stockOnGrid(rest), settled.keptInRest, given.remaining)) return undefined;
  const found = searchAll(rest, given);
  if (!isWhole(rest, found.fits, settled.keptInRest)) return undefined;
  const fits = inOrder(ordered, [...settled.fits, ...settled.ofStock(found.fits)]);
  const complete = completeEnginesOf(ordered, fits);
  const stages = found.stages.map((stage): StageResult => {
    const own =
      stage.aim === 'complete engines'
        ? complete.length - stage.reached
        : amountOfSets(stage.aim, ordered, settled.fits, complete, found.grid);
    return { ...stage, reached: stage.reached + own, bound: stage.bound + own };
  });
  return { ...found, fits, stages };
}

/** The fits in the order of their journals. */
function inOrder({ engines }: Stock, fits: readonly MatchedFit[]): MatchedFit[] {
  const own = new Map(fits.map((fit) => [fit.journal, fit]));
  return engines.flatMap(({ journals }) => journals.flatMap((journal) => own.get(journal) ?? []));
}
