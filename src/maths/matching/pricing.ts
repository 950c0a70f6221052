/**
 * Which fits would improve a linear program that holds only some of them.
 *
 * Reduced cost of a fit: what it counts for the aims, less what the rows it uses are worth. When no fit
 * left out has a negative one, the program without them is as good as the program with all.
 */
import { distanceOf, gapRows, type Model } from './model-columns.js';

/** What one unit counts in the objective of a stage, after the rows that hold earlier aims. */
export interface FitWeights {
  readonly filledBeyond: number;
  readonly distance: number;
}

/**
 * What an earlier aim leaves open: its linear bound prices every fit, and a fit whose reduced cost is
 * above what the aim gave away over its bound is in no sets that still reach that aim.
 */
export interface Filter {
  readonly duals: Float64Array;
  readonly weights: FitWeights;
  readonly most: number;
}

export interface PricedFit {
  readonly gap: number;
  readonly shape: number;
  readonly reducedCost: number;
}

/**
 * Calls back for every allowed fit whose reduced cost is below a limit.
 * @param duals by row; see LinearSolution
 */
export function priceFits(
  model: Model,
  duals: Float64Array,
  weights: FitWeights,
  below: number,
  filters: readonly Filter[],
  visit: (fit: PricedFit) => void,
): void {
  const { problem, places } = model;
  const shapeCost = Float64Array.from(problem.shapes, (_, shape) => -duals[places.shape[shape]!]!);
  for (const [gap, open] of problem.gaps.entries()) {
    let base = weights.filledBeyond;
    for (const row of gapRows(problem, places, open)) base -= duals[row]!;
    const { shapes } = open;
    for (let place = 0; place < shapes.length; place++) {
      const shape = shapes[place]!;
      let reducedCost = base + shapeCost[shape]!;
      if (reducedCost >= below) continue;
      if (weights.distance !== 0) {
        reducedCost += weights.distance * distanceOf(open, problem.shapes[shape]!.size);
        if (reducedCost >= below) continue;
      }
      if (passesFilters(model, filters, gap, shape)) visit({ gap, shape, reducedCost });
    }
  }
}

/** Whether a fit may be in sets that reach the earlier aims. */
export function passesFilters(model: Model, filters: readonly Filter[], gap: number, shape: number): boolean {
  return filters.every(({ duals, weights, most }) => fitCost(model, duals, weights, gap, shape) <= most);
}

function fitCost(
  { problem, places }: Model,
  duals: Float64Array,
  { filledBeyond, distance }: FitWeights,
  gap: number,
  shape: number,
): number {
  const open = problem.gaps[gap]!;
  let cost = filledBeyond - duals[places.shape[shape]!]!;
  for (const row of gapRows(problem, places, open)) cost -= duals[row]!;
  return cost + distance * distanceOf(open, problem.shapes[shape]!.size);
}
