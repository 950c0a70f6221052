/**
 * Matching: bore and half-shells for every journal, so that most engines are complete.
 *
 * The aims are pursued one after the other (stages.ts). The sets are named part by part, and every rule is checked
 * again (recheck.ts) before they are returned.
 */
import { clearanceOf } from '../clearance.js';
import { type AimName, pricesOf } from './aims.js';
import { stockOnGrid, unfolded } from './grid.js';
import { verdictOfFit } from './kept-fits.js';
import { completeEngines as completeEnginesOf } from './named-fits.js';
import { orderStock } from './order.js';
import { keyOfKind } from './part-classes.js';
import { recheck } from './recheck.js';
import { search } from './search.js';
import { loadSolver } from './solver.js';
import { isProvable } from './verdicts.js';
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
  const ordered = orderStock(stock);
  const onGrid = stockOnGrid(ordered);
  const found = search(onGrid, solver, remaining, onProgress, options.largeFrom);
  const fits = unfolded(found.fits, onGrid.inner, ordered);
  const completeEngines = completeEnginesOf(ordered, fits);
  const stages = found.proofs.map(({ aim, bound, gapStays = 'search' }): StageResult => {
    const reached = amountOfSets(aim, found.stock, found.fits, completeEngines);
    return { aim, reached, bound, gapStays: reached === bound ? undefined : gapStays };
  });
  const result = {
    fits,
    completeEngines,
    hopelessEngines: found.stock.engines.filter(({ isHopeless }) => isHopeless).map(({ name }) => name),
    stages,
    grid: onGrid.grid === 1 ? undefined : onGrid.grid,
  };
  recheck(stock, result);
  return result;
}

/** What the named sets amount to, counted from the fits themselves. */
function amountOfSets(
  aim: AimName,
  stock: Stock,
  fits: readonly MatchedFit[],
  complete: readonly string[],
): number {
  if (aim === 'complete engines') return complete.length;
  if (aim === 'filled journals beyond them') {
    return fits.filter(({ engine }) => !complete.includes(engine)).length;
  }
  if (aim === 'filled journals of engines that could be completed') {
    const hopeless = stock.engines.filter(({ isHopeless }) => isHopeless).map(({ name }) => name);
    return fits.filter(({ engine }) => !complete.includes(engine) && !hopeless.includes(engine)).length;
  }
  if (aim === 'pairs kept together') return fits.filter(({ ranTogether }) => ranTogether).length;
  if (aim === 'rods that stay') return fits.filter(({ rodStays }) => rodStays).length;
  if (aim === 'fits in range') return fits.filter((fit) => isInRange(stock, fit)).length;
  if (aim === 'price of bought shells') return priceOf(stock, fits);
  const aims = new Map(stock.kinds.map((kind) => [keyOfKind(kind), kind.aim]));
  return fits.reduce((sum, { journal, parts }) => {
    const wished = aims.get(keyOfKind(journal));
    return wished === undefined ? sum : sum + Math.abs(clearanceOf(parts).clearance - wished);
  }, 0);
}

function isInRange(stock: Stock, { journal, parts }: MatchedFit): boolean {
  const limits = stock.kinds.find((kind) => keyOfKind(kind) === keyOfKind(journal))!;
  return isProvable(limits) && verdictOfFit(parts, limits, stock) === 'in range';
}

function priceOf(stock: Stock, fits: readonly MatchedFit[]): number {
  const { steps, perUnit } = pricesOf(stock);
  const bought = fits.flatMap(({ upper, lower }) => [upper, lower]).filter((taken) => taken.from === 'new');
  return bought.reduce((sum, { shell }) => sum + steps[stock.newShells.indexOf(shell)]!, 0) / perUnit;
}
