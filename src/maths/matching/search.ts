/**
 * The search of a stock: many small proofs instead of one large, wherever its parts have nothing to share.
 *
 * Engine types never share a part, so that each is searched by itself; so are the kinds of its fits where that is as
 * good (by-kind.ts).
 */
import { finishByKind } from './by-kind.js';
import type { StockOnGrid } from './grid.js';
import { finishInTurn } from './in-turn.js';
import { type Found, independentKinds, onlyKinds, sumOfProofs } from './independent.js';
import type { Solver } from './solver.js';
import { LARGE_JOURNALS, type Progress, start } from './whole-stock.js';

/**
 * The best sets and what is proven of them.
 * @param largeFrom so many journals make a stock large
 */
export function search(
  stock: StockOnGrid,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
  largeFrom = LARGE_JOURNALS,
): Found {
  const parts = independentKinds(stock.inner).map((kinds) => onlyKinds(stock, kinds));
  const all = (parts.length > 1 ? parts : [stock]).map((part) => start(part, remaining, largeFrom));
  const found = finishInTurn(all, remaining, onProgress, 'engineType', (started, left, tell) =>
    finishByKind(started, solver, left, tell, largeFrom),
  );
  const fits = new Map(found.flatMap((each) => each.fits.map((fit) => [fit.journal, fit])));
  const journals = stock.inner.engines.flatMap((engine) => engine.journals);
  return {
    fits: journals.flatMap((journal) => fits.get(journal) ?? []),
    proofs: sumOfProofs(stock.inner, found),
  };
}
