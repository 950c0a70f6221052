/** What stands in the way of every journal that is left empty. */
import type { MatchedFit, Stock, StockJournal } from '../matching/stock.js';
import { type Obstacle, OpenFits } from './open-fits.js';
import { Parts } from './pool.js';
import { SingleFitRules } from './rules.js';

/** `mass spread`: parts that are left over would fit, and only the masses of the crank's other rods exclude them. */
export type Standing = Obstacle | 'mass spread';

export function obstaclesOf(stock: Stock, fits: readonly MatchedFit[]): Map<StockJournal, Standing> {
  const filled = new Set(fits.map(({ journal }) => journal));
  const rules = new SingleFitRules(stock);
  const whole = new OpenFits(stock);
  let left: OpenFits | undefined;
  const standing = new Map<StockJournal, Standing>();
  for (const journal of stock.engines.flatMap(({ journals }) => journals)) {
    if (filled.has(journal) || !journal.part) continue;
    const obstacle = whole.obstacleOf(journal);
    const asksForMass = !journal.caseBore && rules.limitsOf(journal)?.massSpread !== undefined;
    if (obstacle !== 'taken' || !asksForMass) {
      standing.set(journal, obstacle);
      continue;
    }
    left ??= new OpenFits(stockLeftOver(stock, fits));
    standing.set(journal, left.obstacleOf(journal) === 'taken' ? 'mass spread' : 'taken');
  }
  return standing;
}

/** The stock without the parts that sets hold. */
function stockLeftOver(stock: Stock, fits: readonly MatchedFit[]): Stock {
  const every = stock.engines.map(({ name }) => name);
  const { rods, shells } = new Parts(stock, fits, every);
  return {
    ...stock,
    rods: rods.map(({ row }) => row),
    shells: shells.map(({ row, count }) => ({ ...row, quantity: count })),
  };
}
