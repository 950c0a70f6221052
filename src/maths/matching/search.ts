/**
 * The search of a stock, independent part by independent part: several small proofs are faster than one large proof.
 *
 * Engine types never share a part, so that each is searched apart. So are the kinds of its fits where nothing is lost
 * by it (by-kind.ts).
 */
import { partedByKind } from './by-kind.js';
import { onlyKindsOnGrid, type StockOnGrid } from './grid.js';
import { markHopeless, withHopeless } from './hopeless.js';
import { finishInTurn } from './in-turn.js';
import { type FoundSets, independentKinds, sumOfProofs } from './independent.js';
import { namedFits } from './named-fits.js';
import type { Solver } from './solver.js';
import type { Stock } from './stock.js';
import { LARGE_JOURNALS, type Progress, type Started, start } from './whole-stock.js';

/** Share of the time left that may go into telling which engines are hopeless. */
const HOPELESS_SHARE = 0.1;

/** A stock with its first sets, and with its hopeless engines marked. */
function startMarked(
  stock: StockOnGrid,
  solver: Solver,
  remaining: () => number,
  largeFrom: number,
): Started {
  const started = start(stock, remaining, largeFrom);
  const rest = remaining() * (1 - HOPELESS_SHARE);
  const marked = withHopeless(started, solver, () => remaining() - rest);
  return marked === stock ? started : start(marked, remaining, largeFrom, namedFits(started.sets));
}

/** What was found of a stock, which has its hopeless engines marked. */
interface FoundOfStock extends FoundSets {
  readonly stock: Stock;
}

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
): FoundOfStock {
  const types = independentKinds(stock.inner).map((kinds) => onlyKindsOnGrid(stock, kinds));
  const all = (types.length > 1 ? types : [stock]).map((own) =>
    startMarked(own, solver, remaining, largeFrom),
  );
  const hopeless = all.flatMap((started) => started.stock.inner.engines.filter((each) => each.isHopeless));
  const marked = markHopeless(stock, new Set(hopeless.map(({ name }) => name)));
  const partings = all.map((started) => partedByKind(started, remaining, largeFrom));
  const parted = partings.flatMap(({ parts }) =>
    parts.map((started) => ({ started, label: labelOf(started, types.length > 1, parts.length > 1) })),
  );
  const finished = finishInTurn(parted, solver, remaining, onProgress);
  const found = partings.map(({ parts, join }) => join(parts.map((started) => finished.get(started)!)));
  const fits = new Map(found.flatMap((each) => each.fits.map((fit) => [fit.journal, fit])));
  const journals = stock.inner.engines.flatMap((engine) => engine.journals);
  return {
    fits: journals.flatMap((journal) => fits.get(journal) ?? []),
    proofs: sumOfProofs(marked.inner, found),
    stock: marked.inner,
  };
}

/** The engine types and the fits of a stock in words, where there are others. */
function labelOf({ stock }: Started, withTypes: boolean, withFits: boolean): string {
  const inWords = (property: 'engineType' | 'fit') =>
    `${[...new Set(stock.inner.kinds.map((kind) => kind[property]))].join(', ')}: `;
  return (withTypes ? inWords('engineType') : '') + (withFits ? inWords('fit') : '');
}
