/**
 * The second check of matched sets: every rule of the matching again, after it, in whole numbers.
 *
 * It is written from the rules alone. Of the matching it imports types, never a function, so that an error of
 * the search, of its model or of the solver stops the run and does not reach a bench.
 */
import { type Breach, StockRows } from './recheck-rows.js';
import { brokenBySets } from './recheck-sets.js';
import { brokenByValues } from './recheck-values.js';
import type { MatchResult, Stock } from './stock.js';

/** Thrown when matched sets break a rule of the matching: a defect of the program, never of the stock. */
export class RecheckError extends Error {
  override readonly name = 'RecheckError';

  constructor(readonly breaches: readonly Breach[]) {
    const [{ rule, where, what }] = breaches as readonly [Breach];
    const others = breaches.length - 1;
    const more = others === 0 ? '' : ` (and ${others} more)`;
    super(`the recheck refuses ${where}: ${what}. The rule: ${rule}${more}`);
  }
}

/**
 * Every rule that a result breaks, those of the sets first.
 * @param stock the rows that the sets were made of, in any order
 */
export function breachesOf(stock: Stock, result: MatchResult): Breach[] {
  const rows = new StockRows(stock);
  return [...brokenBySets(result.fits, rows), ...brokenByValues(result, rows)];
}

/** @throws RecheckError that names the first set which breaks a rule, and the rule. */
export function recheck(stock: Stock, result: MatchResult): void {
  const breaches = breachesOf(stock, result);
  if (breaches.length > 0) throw new RecheckError(breaches);
}
