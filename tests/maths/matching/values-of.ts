import type { MatchResult } from '../../../src/maths/matching/stock.js';

const MOST = [
  'complete engines',
  'filled journals of engines that could be completed',
  'filled journals beyond them',
  'fits in range',
  'pairs kept together',
  'rods that stay',
];

/** Values in the form of bestByTryingAll: all to be least, prices in cents. */
export function valuesOf({ stages }: MatchResult, of: 'reached' | 'bound'): number[] {
  return stages.map((stage) => {
    const { aim, [of]: value } = stage;
    const least = MOST.includes(aim)
      ? -value
      : aim === 'price of bought shells'
        ? Math.round(100 * value)
        : value;
    return least === 0 ? 0 : least;
  });
}
