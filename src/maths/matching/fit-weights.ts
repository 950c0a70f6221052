/**
 * One cost for the aims of a single fit: what one unit of each weighs, so that an earlier aim outweighs all later
 * ones.
 */
import { distanceStep, type Problem } from './problem.js';

/** What one unit of each amount weighs in the cost of a fit. */
export interface FitCostWeights {
  readonly price: number;
  readonly inRange: number;
  readonly kept: number;
  readonly stayed: number;
  /** Of one step. */
  readonly distance: number;
  /** All distances are multiples of it. */
  readonly distanceStep: number;
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

type Weighed = Exclude<keyof FitCostWeights, 'distanceStep'>;

/**
 * @param count of the journals that can be filled
 * @param shellPrices of each class of shells, in steps of the prices' last decimal
 */
export function weightsOf(problem: Problem, count: number, shellPrices: Float64Array): FitCostWeights {
  const { preferKeptPairs, allowWorn } = problem.stock;
  const distanceStepOf = distanceStep(problem);
  const dearest = shellPrices.reduce((high, each) => Math.max(high, each), 0);
  /** The most that a single fit can count. */
  const most: Readonly<Record<Weighed, number>> = {
    price: 2 * dearest,
    inRange: Number(allowWorn),
    kept: Number(problem.kept.length > 0),
    stayed: Number(problem.homes.length > 0),
    distance: farthestOffAim(problem) / distanceStepOf,
  };
  const kept: readonly Weighed[] = ['kept', 'stayed'];
  const order: readonly Weighed[] = [
    'price',
    'inRange',
    ...(preferKeptPairs ? [...kept, 'distance' as const] : ['distance' as const, ...kept]),
  ];
  const counted = order.filter((amount) => most[amount] > 0);
  // Beyond exact whole numbers the last aims are left to the solver.
  for (let last = counted.length; ; last--) {
    const weights = { price: 0, inRange: 0, kept: 0, stayed: 0, distance: 0, distanceStep: distanceStepOf };
    let all = 0;
    for (const amount of counted.slice(0, last).toReversed()) {
      weights[amount] = all + 1;
      all += count * most[amount] * weights[amount];
    }
    if (all <= MOST_EXACT || last <= 1) return weights;
  }
}
