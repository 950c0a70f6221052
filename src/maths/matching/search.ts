/**
 * The search of a stock, independent part by independent part: several small proofs are faster than one large proof.
 *
 * Engine types never share a part, so that each is searched apart. So are the kinds of its fits where nothing is lost
 * by it (by-kind.ts).
 */
import { partedByKind } from './by-kind.js';
import { onlyKindsOnGrid, type StockOnGrid } from './grid.js';
import { finishInTurn } from './in-turn.js';
import { type FoundSets, independentKinds, sumOfProofs } from './independent.js';
import type { Solver } from './solver.js';
import { LARGE_JOURNALS, type Progress, type Started, start } from './whole-stock.js';

/**
 * The best sets and what is proven of them.
 * @param largeFrom from so many journals on a stock is large
 */
export function search(
  stock: StockOnGrid,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
  largeFrom = LARGE_JOURNALS,
): FoundSets {
  const types = independentKinds(stock.inner).map((kinds) => onlyKindsOnGrid(stock, kinds));
  const partings = (types.length > 1 ? types : [stock]).map((own) =>
    partedByKind(start(own, remaining, largeFrom), remaining, largeFrom),
  );
  const all = partings.flatMap(({ parts }) =>
    parts.map((started) => ({ started, label: labelOf(started, types.length > 1, parts.length > 1) })),
  );
  const finished = finishInTurn(all, solver, remaining, onProgress);
  const found = partings.map(({ parts, join }) => join(parts.map((started) => finished.get(started)!)));
  const fits = new Map(found.flatMap((each) => each.fits.map((fit) => [fit.journal, fit])));
  const journals = stock.inner.engines.flatMap((engine) => engine.journals);
  return {
    fits: journals.flatMap((journal) => fits.get(journal) ?? []),
    proofs: sumOfProofs(stock.inner, found),
  };
}

/** The engine types and the fits of a stock in words, where there are others. */
function labelOf({ stock }: Started, withTypes: boolean, withFits: boolean): string {
  const inWords = (property: 'engineType' | 'fit') =>
    `${[...new Set(stock.inner.kinds.map((kind) => kind[property]))].join(', ')}: `;
  return (withTypes ? inWords('engineType') : '') + (withFits ? inWords('fit') : '');
}
