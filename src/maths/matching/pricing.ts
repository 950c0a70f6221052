/**
 * Pricing: which fits would improve a linear program that holds only some of them.
 *
 * The reduced cost of a fit is what it counts in the objective, less the duals of the rows that it uses. Where no fit
 * that is left out has a negative one, the program is optimal over all fits.
 */

import type { Model } from './model-columns.js';
import { amountsOfSpace, distanceOf, worthOfSpace } from './space-columns.js';
import type { Space } from './spaces.js';

/** What one unit counts in the objective of a stage, less the duals of the rows that hold earlier aims. */
export interface FitWeights {
  readonly filledOpen: number;
  readonly filledBeyond: number;
  readonly inRange: number;
  readonly stayed: number;
  /** Whether rods that stay are the objective, or held. */
  readonly countsStayed: boolean;
  /** Of one step of distance. */
  readonly distance: number;
  /** All distances are multiples of it. */
  readonly distanceStep: number;
}

/**
 * Reduced-cost fixing by an earlier aim: a fit whose reduced cost is greater than the gap of that aim's linear bound
 * is in no sets that still reach the aim.
 */
export interface Filter {
  /** The part of the reduced cost by the space of a fit, and by its shape; that of its distance is added. */
  readonly ofSpace: Float64Array;
  readonly ofShape: Float64Array;
  readonly weights: FitWeights;
  readonly most: number;
}

export function filterOf(model: Model, duals: Float64Array, weights: FitWeights, most: number): Filter {
  const { problem, places } = model;
  return {
    ofSpace: Float64Array.from(problem.spaces, (space) => baseOf(model, duals, weights, space)),
    ofShape: Float64Array.from(problem.shapes, (_, shape) => -duals[places.shape[shape]!]!),
    weights,
    most,
  };
}

function baseOf(model: Model, duals: Float64Array, weights: FitWeights, space: Space): number {
  const { filledOpen, filledBeyond, stayed } = amountsOfSpace(model, space);
  const counted =
    weights.filledOpen * (filledOpen ?? 0) +
    weights.filledBeyond * (filledBeyond ?? 0) +
    weights.stayed * (stayed ?? 0);
  return counted - worthOfSpace(model, space, duals);
}

/** What an allowed fit counts for being in range. */
function worthInRange({ problem }: Model, { inRange }: FitWeights, space: number, shape: number): number {
  return inRange !== 0 && problem.rules.isInRange(space, shape) ? inRange : 0;
}

export interface PricedFit {
  readonly space: number;
  readonly shape: number;
  readonly reducedCost: number;
}

/** The reduced cost of a fit is a sum of a part by its space, one by its shape, and one by its distance. */
class FitPrices {
  private readonly shapeCost: Float64Array;
  /** The least that a fit can count for being in range or not. */
  private readonly leastInRange: number;
  /** By kind: the shapes that some space allows, and the same with the cheapest first. */
  private readonly cheapest = new Map<string, { order: Int32Array; least: number }>();

  constructor(
    private readonly model: Model,
    private readonly duals: Float64Array,
    private readonly weights: FitWeights,
    private readonly filters: readonly Filter[],
  ) {
    const { problem, places } = model;
    this.leastInRange = Math.min(0, weights.inRange);
    this.shapeCost = Float64Array.from(problem.shapes, (_, shape) => -duals[places.shape[shape]!]!);
    for (const [kind, shapes] of problem.bySize) {
      const order = shapes.slice().sort((a, b) => this.shapeCost[a]! - this.shapeCost[b]! || a - b);
      this.cheapest.set(kind, { order, least: order.length > 0 ? this.shapeCost[order[0]!]! : 0 });
    }
  }

  private inRange(space: number, shape: number): number {
    return worthInRange(this.model, this.weights, space, shape);
  }

  /** Where rods that stay are not counted, the fits of another space do as well. */
  private isLeftOut({ isTwin }: Space): boolean {
    return isTwin && !this.weights.countsStayed;
  }

  private baseOf(space: Space): number {
    return baseOf(this.model, this.duals, this.weights, space);
  }

  private open(space: number, shape: number): boolean {
    return (
      this.model.problem.rules.allows(space, shape) && passesFilters(this.model, this.filters, space, shape)
    );
  }

  /** Calls back for every allowed fit below a limit. */
  visitAll(below: number, visit: (fit: PricedFit) => void): void {
    const { spaces, shapes, bySize } = this.model.problem;
    for (const [place, space] of spaces.entries()) {
      if (this.isLeftOut(space)) continue;
      const base = this.baseOf(space);
      for (const shape of bySize.get(space.kind)!) {
        const least = base + this.shapeCost[shape]! + this.leastInRange;
        if (least >= below) continue;
        const far =
          this.weights.distance * (distanceOf(space, shapes[shape]!.size) / this.weights.distanceStep);
        if (least + far >= below || !this.open(place, shape)) continue;
        const reducedCost = base + this.shapeCost[shape]! + far + this.inRange(place, shape);
        if (reducedCost < below) visit({ space: place, shape, reducedCost });
      }
    }
  }

  /** The best allowed fit of a space below a limit. */
  bestOf(place: number, below: number): PricedFit | undefined {
    const space = this.model.problem.spaces[place]!;
    if (this.isLeftOut(space)) return undefined;
    const base = this.baseOf(space);
    const { order, least: cheapest } = this.cheapest.get(space.kind)!;
    const least = cheapest + this.leastInRange;
    if (base + least >= below) return undefined;
    if (this.weights.distance === 0 || space.limits.aim === undefined) {
      let [best, limit]: [PricedFit | undefined, number] = [undefined, below];
      for (const shape of order) {
        if (base + this.shapeCost[shape]! + this.leastInRange >= limit) break;
        if (!this.open(place, shape)) continue;
        const reducedCost = base + this.shapeCost[shape]! + this.inRange(place, shape);
        if (reducedCost < limit) [best, limit] = [{ space: place, shape, reducedCost }, reducedCost];
      }
      return best;
    }
    return this.nearestFirst(place, space, space.limits.aim, base, least, below);
  }

  /** Goes outward from the aim until the distance alone is too much. */
  private nearestFirst(
    place: number,
    space: Space,
    aim: number,
    base: number,
    least: number,
    below: number,
  ): PricedFit | undefined {
    const { shapes, bySize } = this.model.problem;
    const order = bySize.get(space.kind)!;
    const wished = space.size - aim;
    let up = firstFrom(order, (shape) => shapes[shape]!.size >= wished);
    let down = up - 1;
    let [best, limit]: [PricedFit | undefined, number] = [undefined, below];
    const offOf = (at: number) => {
      return at < 0 || at >= order.length
        ? Number.POSITIVE_INFINITY
        : Math.abs(wished - shapes[order[at]!]!.size);
    };
    for (;;) {
      const at = offOf(up) <= offOf(down) ? up++ : down--;
      const far = this.weights.distance * (offOf(at) / this.weights.distanceStep);
      if (base + least + far >= limit) return best;
      const shape = order[at]!;
      if (base + this.shapeCost[shape]! + far + this.leastInRange >= limit) continue;
      if (!this.open(place, shape)) continue;
      const reducedCost = base + this.shapeCost[shape]! + far + this.inRange(place, shape);
      if (reducedCost < limit) [best, limit] = [{ space: place, shape, reducedCost }, reducedCost];
    }
  }
}

/** Index of the first shape of which `isFar` holds, by bisection. */
function firstFrom(order: Int32Array, isFar: (shape: number) => boolean): number {
  let [low, high] = [0, order.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isFar(order[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
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
  new FitPrices(model, duals, weights, filters).visitAll(below, visit);
}

/** The best allowed fit of every space, where there is one whose reduced cost is below a limit. */
export function bestFits(
  model: Model,
  duals: Float64Array,
  weights: FitWeights,
  below: number,
  filters: readonly Filter[],
): PricedFit[] {
  const prices = new FitPrices(model, duals, weights, filters);
  return [...model.problem.spaces.keys()].flatMap((space) => prices.bestOf(space, below) ?? []);
}

/** Whether a fit may be in sets that reach the earlier aims. */
export function passesFilters(
  model: Model,
  filters: readonly Filter[],
  space: number,
  shape: number,
): boolean {
  const { spaces, shapes } = model.problem;
  return filters.every(({ ofSpace, ofShape, weights, most }) => {
    const distance = distanceOf(spaces[space]!, shapes[shape]!.size) / weights.distanceStep;
    const byParts = ofSpace[space]! + ofShape[shape]! + weights.distance * distance;
    return byParts + worthInRange(model, weights, space, shape) <= most;
  });
}
