/** What named sets amount to for every aim. */
import { type Grain, roundToWhole } from '../grain.js';
import { type AimName, pricesOf } from './aims.js';
import { verdictInStock } from './kept-fits.js';
import { keyOfKind } from './part-classes.js';
import type { MatchedFit, Stock } from './stock.js';
import { isProvable } from './verdicts.js';

/**
 * What named sets amount to, counted from the fits themselves.
 * @param complete the names of the complete engines
 * @param grid on which distances are counted
 */
export function amountOfSets(
  aim: AimName,
  stock: Stock,
  fits: readonly MatchedFit[],
  complete: readonly string[],
  grid: Grain = 1,
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
  return distanceOf(stock, fits, grid);
}

/** On a grid every size and the aim are rounded to it first. */
function distanceOf({ kinds }: Stock, fits: readonly MatchedFit[], grid: Grain): number {
  const onGrid = (length: Grain) => roundToWhole(length / grid) * grid;
  const aims = new Map(kinds.map((kind) => [keyOfKind(kind), kind.aim]));
  return fits.reduce((sum, { journal, parts: { bore, upper, lower, journal: own } }) => {
    const aim = aims.get(keyOfKind(journal));
    if (aim === undefined) return sum;
    const [room, ...inside] = [bore, upper, lower, own].map(({ size }) => onGrid(size));
    const clearance = inside.reduce((left, size) => left - size, room!);
    return sum + Math.abs(clearance - onGrid(aim));
  }, 0);
}

function isInRange(stock: Stock, { journal, parts }: MatchedFit): boolean {
  const limits = stock.kinds.find((kind) => keyOfKind(kind) === keyOfKind(journal))!;
  return (
    isProvable(limits) && verdictInStock(parts, limits, stock, journal.caseBore?.isUncorrected) === 'in range'
  );
}

function priceOf(stock: Stock, fits: readonly MatchedFit[]): number {
  const { steps, perUnit } = pricesOf(stock);
  const bought = fits.flatMap(({ upper, lower }) => [upper, lower]).filter((taken) => taken.from === 'new');
  return bought.reduce((sum, { shell }) => sum + steps[stock.newShells.indexOf(shell)]!, 0) / perUnit;
}
