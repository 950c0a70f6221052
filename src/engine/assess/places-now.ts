/** Where the parts of a book of one good engine are now, though their rows name no place. */
import type { RanAt } from '../../maths/matching/stock.js';
import { nameKey } from '../book/names.js';
import { SHELL_BEARING } from '../kinds/shell-bearing.js';
import type { FitResult } from './fit.js';
import type { PartResult } from './part-result.js';
import { partsOf } from './placed-fit.js';

/**
 * The places that Fits gives to parts, where the book is of one engine in which every bearing is in range: it is left as
 * it is. Else none: where a part ran is what its own row says.
 */
export function placesNow(fits: readonly FitResult[]): ReadonlyMap<PartResult, RanAt> {
  const bearings = fits.filter(({ kind }) => kind === SHELL_BEARING);
  const engines = new Set(bearings.map(({ engine }) => nameKey(engine)));
  if (engines.size !== 1 || bearings.some(({ status }) => status !== 'in range')) return new Map();
  return new Map(
    bearings.flatMap((fit) =>
      partsOf(fit).map((part) => [part, { engine: nameKey(fit.engine), position: nameKey(fit.position) }]),
    ),
  );
}
