/**
 * Which fits would improve a linear program that holds only some of them.
 *
 * Reduced cost of a fit: what it counts for the aims, less what the rows it uses are worth. When no fit
 * left out has a negative one, the program without them is as good as the program with all.
 */
import type { Gap } from './gaps.js';
import { distanceOf, type Model, worthOfGap } from './model-columns.js';

/** What one unit counts in the objective of a stage, after the rows that hold earlier aims. */
export interface FitWeights {
  readonly filledBeyond: number;
  /** Of one step of distance. */
  readonly distance: number;
  /** All distances are multiples of it. */
  readonly distanceStep: number;
}

/**
 * What an earlier aim leaves open: its linear bound prices every fit, and a fit whose reduced cost is
 * above what the aim gave away over its bound is in no sets that still reach that aim.
 */
export interface Filter {
  /** What a fit costs by its gap, and by its shape, before its distance. */
  readonly ofGap: Float64Array;
  readonly ofShape: Float64Array;
  readonly weights: FitWeights;
  readonly most: number;
}

export function filterOf(model: Model, duals: Float64Array, weights: FitWeights, most: number): Filter {
  const { problem, places } = model;
  return {
    ofGap: Float64Array.from(problem.gaps, (gap) => baseOf(model, duals, weights, gap)),
    ofShape: Float64Array.from(problem.shapes, (_, shape) => -duals[places.shape[shape]!]!),
    weights,
    most,
  };
}

function baseOf(model: Model, duals: Float64Array, weights: FitWeights, gap: Gap): number {
  return weights.filledBeyond - worthOfGap(model, gap, duals);
}

export interface PricedFit {
  readonly gap: number;
  readonly shape: number;
  readonly reducedCost: number;
}

/** What the duals make of gaps and shapes: the reduced cost of a fit is the sum of both and of its distance. */
class FitPrices {
  private readonly shapeCost: Float64Array;
  /** By kind: the shapes that some gap allows, and the same with the cheapest first. */
  private readonly cheapest = new Map<string, { order: Int32Array; least: number }>();

  constructor(
    private readonly model: Model,
    private readonly duals: Float64Array,
    private readonly weights: FitWeights,
    private readonly filters: readonly Filter[],
  ) {
    const { problem, places } = model;
    this.shapeCost = Float64Array.from(problem.shapes, (_, shape) => -duals[places.shape[shape]!]!);
    for (const [kind, shapes] of problem.bySize) {
      const order = shapes.slice().sort((a, b) => this.shapeCost[a]! - this.shapeCost[b]! || a - b);
      this.cheapest.set(kind, { order, least: order.length > 0 ? this.shapeCost[order[0]!]! : 0 });
    }
  }

  private baseOf(gap: Gap): number {
    return baseOf(this.model, this.duals, this.weights, gap);
  }

  private open(gap: number, shape: number): boolean {
    return this.model.problem.rules.allows(gap, shape) && passesFilters(this.model, this.filters, gap, shape);
  }

  /** Calls back for every allowed fit below a limit. */
  visitAll(below: number, visit: (fit: PricedFit) => void): void {
    const { gaps, shapes, bySize } = this.model.problem;
    for (const [place, gap] of gaps.entries()) {
      const base = this.baseOf(gap);
      for (const shape of bySize.get(gap.kind)!) {
        let reducedCost = base + this.shapeCost[shape]!;
        if (reducedCost >= below) continue;
        reducedCost +=
          this.weights.distance * (distanceOf(gap, shapes[shape]!.size) / this.weights.distanceStep);
        if (reducedCost < below && this.open(place, shape)) visit({ gap: place, shape, reducedCost });
      }
    }
  }

  /** The best allowed fit of a gap below a limit. */
  bestOf(place: number, below: number): PricedFit | undefined {
    const gap = this.model.problem.gaps[place]!;
    const base = this.baseOf(gap);
    const { order, least } = this.cheapest.get(gap.kind)!;
    if (base + least >= below) return undefined;
    if (this.weights.distance === 0 || gap.limits.aim === undefined) {
      for (const shape of order) {
        const reducedCost = base + this.shapeCost[shape]!;
        if (reducedCost >= below) return undefined;
        if (this.open(place, shape)) return { gap: place, shape, reducedCost };
      }
      return undefined;
    }
    return this.nearestFirst(place, gap, gap.limits.aim, base, least, below);
  }

  /** Outward from the aim, until the distance alone is too much. */
  private nearestFirst(
    place: number,
    gap: Gap,
    aim: number,
    base: number,
    least: number,
    below: number,
  ): PricedFit | undefined {
    const { shapes, bySize } = this.model.problem;
    const order = bySize.get(gap.kind)!;
    const wished = gap.size - aim;
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
      const reducedCost = base + this.shapeCost[shape]! + far;
      if (reducedCost < limit && this.open(place, shape)) {
        [best, limit] = [{ gap: place, shape, reducedCost }, reducedCost];
      }
    }
  }
}

/** Place of the first shape that is far enough along, by bisection. */
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

/** The best allowed fit of every gap, where there is one whose reduced cost is below a limit. */
export function bestFits(
  model: Model,
  duals: Float64Array,
  weights: FitWeights,
  below: number,
  filters: readonly Filter[],
): PricedFit[] {
  const prices = new FitPrices(model, duals, weights, filters);
  return [...model.problem.gaps.keys()].flatMap((gap) => prices.bestOf(gap, below) ?? []);
}

/** Whether a fit may be in sets that reach the earlier aims. */
export function passesFilters(
  { problem }: Model,
  filters: readonly Filter[],
  gap: number,
  shape: number,
): boolean {
  return filters.every(({ ofGap, ofShape, weights, most }) => {
    const distance = distanceOf(problem.gaps[gap]!, problem.shapes[shape]!.size) / weights.distanceStep;
    return ofGap[gap]! + ofShape[shape]! + weights.distance * distance <= most;
  });
}
