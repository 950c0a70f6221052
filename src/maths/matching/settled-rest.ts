/** Whether the rest of a stock bears out its settled fits: filled whole, without buying, all kept that can be. */
import { onlyKindsOnGrid, type StockOnGrid } from './grid.js';
import { independentKinds } from './independent.js';
import { namedFits } from './named-fits.js';
import { amountOfSets } from './set-amounts.js';
import type { MatchedFit, Stock } from './stock.js';
import { LARGE_JOURNALS, start } from './whole-stock.js';

/**
 * @param fits of the rest
 * @param kept how many of its journals could keep their parts
 */
export function isWhole(rest: Stock, fits: readonly MatchedFit[], kept: number): boolean {
  const journals = rest.engines.reduce((sum, engine) => sum + engine.journals.length, 0);
  return (
    fits.length === journals &&
    fits.filter(({ ranTogether }) => ranTogether).length === kept &&
    amountOfSets('price of bought shells', rest, fits, []) === 0 &&
    (!rest.allowWorn || amountOfSets('fits in range', rest, fits, []) === fits.length)
  );
}

/** Whether the first sets of the rest are whole already: else a search of it may be in vain. */
export function canStayWhole(rest: StockOnGrid, kept: number, remaining: () => number): boolean {
  const stocks = independentKinds(rest.inner).map((kinds) => onlyKindsOnGrid(rest, kinds));
  const fits = stocks.flatMap((own) => namedFits(start(own, remaining, LARGE_JOURNALS).sets));
  return isWhole(rest.inner, fits, kept);
}
