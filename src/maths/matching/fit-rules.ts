/**
 * Which space allows which shape of pair, asked one by one.
 *
 * The allowed combinations are too many to list: ten cranks measured to 0.1 µm have 80 million. Where one guard holds
 * for a space and all shapes of a group, two comparisons decide.
 */
import type { Guards } from '../guards.js';
import { isBroughtAlike } from './brought-shells.js';
import type { PairShape } from './pairs.js';
import type { Space } from './spaces.js';
import {
  isAllowed,
  isOne,
  type ProvableLimits,
  type StockGuards,
  type TermsRange,
  widened,
} from './verdicts.js';

/**
 * The walls that a space allows: the smallest sum is at least, the largest sum at most; undefined where they are no
 * interval.
 */
interface OpenWalls {
  readonly least: number;
  readonly most: number;
}

const NONE: OpenWalls = { least: Number.POSITIVE_INFINITY, most: Number.NEGATIVE_INFINITY };

/** The walls with which the verdict is an allowed one. */
function openWalls(
  { tightest, loosest }: Space,
  { min, max, serviceLimit }: ProvableLimits,
  { inside, outside }: Guards,
  allowUndecided: boolean,
): OpenWalls | undefined {
  if (!allowUndecided) {
    const loosestAllowed = Math.min(max - inside, (serviceLimit ?? max) + outside);
    return { least: loosest - loosestAllowed, most: tightest - inside - min };
  }
  // `within service limit` lies between `in range` and `undecided`, and is not allowed.
  if (serviceLimit !== undefined) return undefined;
  return { least: loosest - max - outside, most: tightest + outside - min };
}

export class FitRules {
  private readonly groups: number;
  private readonly groupOf: Int32Array;
  private readonly least: Float64Array;
  private readonly most: Float64Array;
  /** By space and group: whether each shape is judged by itself. */
  private readonly asked: Uint8Array;
  private readonly smallest: Float64Array;
  private readonly largest: Float64Array;

  constructor(
    private readonly spaces: readonly Space[],
    private readonly shapes: readonly PairShape[],
    private readonly guards: StockGuards,
    private readonly allowUndecided: boolean,
  ) {
    const groups = new Map<string, { kind: string; shapes: PairShape[] }>();
    const place = new Map<string, number>();
    this.groupOf = Int32Array.from(shapes, (shape) => {
      const gauges = shape.terms.least.gauges.map(({ gauge }) => gauge).join('/');
      const key = `${shape.kind}/${shape.isBrought}/${shape.alike.key}/${gauges}`;
      const group = groups.get(key) ?? { kind: shape.kind, shapes: [] };
      group.shapes.push(shape);
      groups.set(key, group);
      if (!place.has(key)) place.set(key, place.size);
      return place.get(key)!;
    });
    this.smallest = Float64Array.from(shapes, ({ smallest }) => smallest);
    this.largest = Float64Array.from(shapes, ({ largest }) => largest);
    this.groups = groups.size;
    this.least = new Float64Array(spaces.length * this.groups);
    this.most = new Float64Array(spaces.length * this.groups);
    this.asked = new Uint8Array(spaces.length * this.groups);
    const all = [...groups.values()].map(({ kind, shapes: own }) => {
      let terms: TermsRange | undefined;
      for (const { terms: each } of own) terms = widened(widened(terms, each.least), each.greatest);
      const { alike, isBrought } = own[0]!;
      return { kind, isBrought, alike, terms: terms! };
    });
    for (const [spacePlace, space] of spaces.entries()) {
      for (const [groupPlace, group] of all.entries()) {
        const at = spacePlace * this.groups + groupPlace;
        let open: OpenWalls | undefined = NONE;
        if (space.kind === group.kind && isBroughtAlike(space, group)) {
          const range = guards.between(space, group);
          open = isOne(range, space.limits, allowUndecided)
            ? openWalls(space, space.limits, range.least, allowUndecided)
            : undefined;
        }
        this.least[at] = open?.least ?? 0;
        this.most[at] = open?.most ?? 0;
        this.asked[at] = open ? 0 : 1;
      }
    }
  }

  allows(space: number, shape: number): boolean {
    const at = space * this.groups + this.groupOf[shape]!;
    if (this.asked[at] === 1) return this.ask(this.spaces[space]!, this.shapes[shape]!);
    return this.smallest[shape]! >= this.least[at]! && this.largest[shape]! <= this.most[at]!;
  }

  /** Judges one shape. Where rounding leaves its guard in doubt, it must be allowed with either guard. */
  private ask(space: Space, shape: PairShape): boolean {
    if (space.kind !== shape.kind) return false;
    const tightest = space.tightest - shape.largest;
    const loosest = space.loosest - shape.smallest;
    const range = this.guards.between(space, shape);
    const allowed = (guards: Guards) =>
      isAllowed({ tightest, loosest }, space.limits, guards, this.allowUndecided);
    const isSure = isOne(range, space.limits, this.allowUndecided);
    return allowed(range.least) && (isSure || allowed(range.greatest));
  }
}
