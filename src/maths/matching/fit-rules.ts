/**
 * Which space allows which shape of pair, asked one by one.
 *
 * The allowed combinations are too many to list: ten cranks measured to 0.1 µm have 80 million. Where one guard holds
 * for a space and all shapes of a group, two comparisons decide.
 */
import type { ProvenFitVerdict } from '../conformity.js';
import type { Guards } from '../guards.js';
import { isBroughtAlike } from './brought-shells.js';
import type { PairShape } from './pairs.js';
import { type TermsRange, widened } from './size-terms.js';
import type { Space } from './spaces.js';
import {
  type AllowedVerdicts,
  allowedVerdict,
  isOne,
  type ProvableLimits,
  type StockGuards,
} from './verdicts.js';

/**
 * The walls that a space allows: the largest sum is at most `most`, and the smallest is at least `least`, or from
 * `leastWorn` up to but not including `belowWorn`.
 */
interface OpenWalls {
  readonly least: number;
  readonly most: number;
  /** Of fits within the service limit; empty where they are not allowed. */
  readonly leastWorn: number;
  readonly belowWorn: number;
}

const NO_WORN = { leastWorn: 0, belowWorn: 0 };
const NONE: OpenWalls = { least: Number.POSITIVE_INFINITY, most: Number.NEGATIVE_INFINITY, ...NO_WORN };

const ANY: OpenWalls = { least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY, ...NO_WORN };

/** The walls with which a fit is in range. */
function wallsInRange(
  { tightest, loosest }: Space,
  { min, max, serviceLimit }: ProvableLimits,
  { inside, outside }: Guards,
): OpenWalls {
  const loosestAllowed = Math.min(max - inside, (serviceLimit ?? max) + outside);
  return { least: loosest - loosestAllowed, most: tightest - inside - min, ...NO_WORN };
}

/** The walls with which the verdict is an allowed one; undefined where they are not of this form. */
function openWalls(
  space: Space,
  limits: ProvableLimits,
  guards: Guards,
  { allowUndecided, allowWorn }: AllowedVerdicts,
): OpenWalls | undefined {
  const { tightest, loosest } = space;
  const { min, max, serviceLimit } = limits;
  const { inside, outside } = guards;
  if (space.isUncorrected) return allowUndecided ? ANY : NONE;
  if (!allowUndecided) {
    const inRange = wallsInRange(space, limits, guards);
    if (!allowWorn || serviceLimit === undefined) return inRange;
    return { ...inRange, leastWorn: loosest - (serviceLimit - inside), belowWorn: loosest - max - outside };
  }
  // `within service limit` lies between `in range` and `undecided`: where it is not allowed, the walls have a gap.
  if (serviceLimit !== undefined && !allowWorn) return undefined;
  return { least: loosest - (serviceLimit ?? max) - outside, most: tightest + outside - min, ...NO_WORN };
}

export class FitRules {
  private readonly groups: number;
  private readonly groupOf: Int32Array;
  private readonly least: Float64Array;
  private readonly most: Float64Array;
  private readonly leastWorn: Float64Array;
  private readonly belowWorn: Float64Array;
  /** The walls of fits in range; empty where no others are counted. */
  private readonly leastInRange: Float64Array;
  private readonly mostInRange: Float64Array;
  /** By space and group: whether each shape is judged by itself. */
  private readonly asked: Uint8Array;
  private readonly smallest: Float64Array;
  private readonly largest: Float64Array;

  constructor(
    private readonly spaces: readonly Space[],
    private readonly shapes: readonly PairShape[],
    private readonly guards: StockGuards,
    private readonly allowed: AllowedVerdicts,
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
    const count = spaces.length * this.groups;
    this.least = new Float64Array(count);
    this.most = new Float64Array(count);
    this.leastWorn = new Float64Array(allowed.allowWorn ? count : 0);
    this.belowWorn = new Float64Array(allowed.allowWorn ? count : 0);
    this.leastInRange = new Float64Array(allowed.allowWorn ? count : 0);
    this.mostInRange = new Float64Array(allowed.allowWorn ? count : 0);
    this.asked = new Uint8Array(count);
    const all = [...groups.values()].map(({ kind, shapes: own }) => {
      let terms: TermsRange | undefined;
      for (const { terms: each } of own) terms = widened(widened(terms, each.least), each.greatest);
      const { alike, isBrought } = own[0]!;
      return { kind, isBrought, alike, terms: terms! };
    });
    for (const [spacePlace, space] of spaces.entries()) {
      for (const [groupPlace, group] of all.entries()) {
        const at = spacePlace * this.groups + groupPlace;
        let [open, inRange]: (OpenWalls | undefined)[] = [NONE, NONE];
        if (space.kind === group.kind && isBroughtAlike(space, group)) {
          const range = guards.between(space, group);
          const isSure = space.isUncorrected || isOne(range, space.limits, allowed);
          open = isSure ? openWalls(space, space.limits, range.least, allowed) : undefined;
          inRange = space.isUncorrected ? NONE : wallsInRange(space, space.limits, range.least);
        }
        this.least[at] = open?.least ?? 0;
        this.most[at] = open?.most ?? 0;
        this.asked[at] = open ? 0 : 1;
        if (!allowed.allowWorn) continue;
        this.leastWorn[at] = open?.leastWorn ?? 0;
        this.belowWorn[at] = open?.belowWorn ?? 0;
        this.leastInRange[at] = inRange!.least;
        this.mostInRange[at] = inRange!.most;
      }
    }
  }

  allows(space: number, shape: number): boolean {
    const at = space * this.groups + this.groupOf[shape]!;
    if (this.asked[at] === 1) return this.ask(this.spaces[space]!, this.shapes[shape]!) !== undefined;
    if (this.largest[shape]! > this.most[at]!) return false;
    const smallest = this.smallest[shape]!;
    if (smallest >= this.least[at]!) return true;
    return this.allowed.allowWorn && smallest >= this.leastWorn[at]! && smallest < this.belowWorn[at]!;
  }

  /** Whether an allowed fit is in range; asked only where fits within the service limit are allowed too. */
  isInRange(space: number, shape: number): boolean {
    const at = space * this.groups + this.groupOf[shape]!;
    if (this.asked[at] === 1) return this.ask(this.spaces[space]!, this.shapes[shape]!) === 'in range';
    return this.smallest[shape]! >= this.leastInRange[at]! && this.largest[shape]! <= this.mostInRange[at]!;
  }

  /**
   * The verdict of one shape; undefined where it is not allowed. Where rounding leaves its guard in doubt, the verdict
   * must be one with either guard.
   */
  private ask(space: Space, shape: PairShape): ProvenFitVerdict | undefined {
    if (space.kind !== shape.kind) return undefined;
    const tightest = space.tightest - shape.largest;
    const loosest = space.loosest - shape.smallest;
    const range = this.guards.between(space, shape);
    const verdict = (guards: Guards) =>
      allowedVerdict({ tightest, loosest }, space.limits, guards, this.allowed);
    const found = verdict(range.least);
    if (isOne(range, space.limits, this.allowed)) return found;
    return found === verdict(range.greatest) ? found : undefined;
  }
}
