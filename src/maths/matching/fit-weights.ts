/**
 * One cost for the aims of a single fit: what one unit of each weighs, so that an earlier aim outweighs all later
 * ones.
 */
import type { Problem } from './problem.js';

/** What one unit of each amount weighs in the cost of a fit. */
export interface FitCostWeights {
  readonly price: number;
  readonly distance: number;
  readonly kept: number;
}

/** Above this whole numbers are no longer exact. */
const MOST_EXACT = 2 ** 52;

/** No fit is farther off the aim. */
function farthestOffAim({ spaces, shapes, bySize }: Problem): number {
  return spaces.reduce((far, { kind, size, limits: { aim } }) => {
    const own = bySize.get(kind)!;
    if (own.length === 0 || aim === undefined) return far;
    const offOf = (shape: number) => Math.abs(size - aim - shapes[shape]!.size);
    return Math.max(far, offOf(own[0]!), offOf(own.at(-1)!));
  }, 0);
}

/**
 * @param count of the journals that can be filled
 * @param shellPrices of each class of shells, in steps of the prices' last decimal
 */
export function weightsOf(problem: Problem, count: number, shellPrices: Float64Array): FitCostWeights {
  const { preferKeptPairs } = problem.stock;
  const farthest = farthestOffAim(problem);
  const distance = preferKeptPairs ? 1 : count + 1;
  const kept = preferKeptPairs ? count * farthest + 1 : 1;
  const price = count * farthest * distance + count * kept + 1;
  const most = price * count * 2 * shellPrices.reduce((high, each) => Math.max(high, each), 1);
  // Beyond exact whole numbers the last aim is left to the solver.
  return most <= MOST_EXACT
    ? { price, distance, kept }
    : { price: count * farthest + 1, distance: 1, kept: 0 };
}
