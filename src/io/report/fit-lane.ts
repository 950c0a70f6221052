/** One fit drawn in its lane: the bar from tightest to loosest, its guards as whiskers and dashes, the limits as hatching. */
import type { ScaleLinear } from 'd3-scale';
import type { LimitsRow } from '../../engine/book/book.js';
import type { Clearance } from '../../maths/clearance.js';
import type { Grain } from '../../maths/grain.js';
import type { Guards } from '../../maths/guards.js';
import { type Element, s } from './elements.js';

export interface ClearanceLimits {
  readonly min: Grain | undefined;
  readonly max: Grain | undefined;
  readonly serviceLimit: Grain | undefined;
}

export function limitsDrawn(limits: LimitsRow | undefined): ClearanceLimits {
  return { min: limits?.clearanceMin, max: limits?.clearanceMax, serviceLimit: limits?.serviceLimit };
}

/** What is drawn of a fit, lengths in grains. */
export interface DrawnFit {
  readonly position: string;
  readonly status: string;
  /** Undefined where nothing could be computed: the lane stays empty. */
  readonly clearance: Clearance | undefined;
  /** A strip reading has no extremes. */
  readonly isStrip: boolean;
  readonly guards: Guards;
  readonly limits: ClearanceLimits;
}

export type Scale = ScaleLinear<number, number>;

export const LANE = { height: 14, bar: 6, cap: 8 } as const;

/** Coordinates to a tenth: finer than any printer at these sizes. */
export function at(value: number): number {
  return Math.round(value * 10) / 10;
}

/** What is inked, from the ground up. Each stands for one path of a picture, of the class of its name. */
const INKS = [
  'outside',
  'worn',
  'edge',
  'limit',
  'service',
  'halo',
  'reach',
  'whisker',
  'bar',
  'mean',
  'strip',
  'arrow',
] as const;
type Ink = (typeof INKS)[number];

/** The ink of lanes, gathered: all lanes of a picture make one path an ink. */
export class Lanes {
  private readonly paths = new Map<Ink, string>();

  add(ink: Ink, path: string): void {
    this.paths.set(ink, (this.paths.get(ink) ?? '') + path);
  }

  pathOf(ink: Ink): string {
    return this.paths.get(ink) ?? '';
  }

  elements(): Element[] {
    return INKS.flatMap((ink) => {
      const d = this.pathOf(ink);
      return d === '' ? [] : [s('path', { className: ink, d })];
    });
  }
}

/** A fit and the lane that it lies in. */
export function drawFit(lanes: Lanes, fit: DrawnFit, scale: Scale, top: number): void {
  drawLane(lanes, fit.limits, scale, top);
  drawBar(lanes, fit, scale, top);
}

/** The lane: its edges, the limits, and the hatching outside them. */
export function drawLane(lanes: Lanes, limits: ClearanceLimits, scale: Scale, top: number): void {
  const [left, right] = scale.range() as [number, number];
  const within = withinRange(scale);
  drawZones(lanes, limits, within, { left, right, top });
  lanes.add('edge', `M${left} ${top}H${right}m0 ${LANE.height}H${left}`);
  const upright = (ink: Ink, limit: Grain | undefined) => {
    if (limit !== undefined) lanes.add(ink, `M${within(limit)} ${top - 3}v${LANE.height + 6}`);
  };
  upright('limit', limits.min);
  upright('limit', limits.max);
  upright('service', limits.serviceLimit);
}

/** The bar, its guards and its clearance, in a lane of that top. */
export function drawBar(
  lanes: Lanes,
  { clearance, guards, isStrip }: DrawnFit,
  scale: Scale,
  top: number,
): void {
  if (!clearance) return;
  const [left, right] = scale.range() as [number, number];
  const within = withinRange(scale);
  const middle = top + LANE.height / 2;
  const [from, to] = [within(clearance.tightest), within(clearance.loosest)];
  const spread = (guard: Grain) => [within(clearance.tightest - guard), within(clearance.loosest + guard)];
  if (guards.outside > guards.inside) {
    const [low, high] = spread(guards.outside);
    lanes.add('reach', `M${low} ${middle}H${high}`);
  }
  if (guards.inside > 0) {
    const [low, high] = spread(guards.inside);
    const half = LANE.cap / 2;
    const path = `M${low} ${middle}H${high}m0-${half}v${LANE.cap}M${low} ${middle - half}v${LANE.cap}`;
    lanes.add('halo', path);
    lanes.add('whisker', path);
  }
  if (isStrip) lanes.add('strip', `M${at(from - 5)} ${middle}l5-5 5 5-5 5z`);
  else {
    lanes.add(
      'bar',
      `M${at(from - 0.5)} ${middle - LANE.bar / 2}H${at(to + 0.5)}v${LANE.bar}H${at(from - 0.5)}z`,
    );
    // A line of no length with round ends.
    lanes.add('mean', `M${within(clearance.clearance)} ${middle}h0`);
  }
  // Beyond the drawing: an arrowhead says that the bar goes on.
  const arrow = (x: number, way: 1 | -1) => lanes.add('arrow', `M${x + 7 * way} ${middle}l${-8 * way}-5v10z`);
  if (scale(clearance.tightest) < left) arrow(left, -1);
  if (scale(clearance.loosest) > right) arrow(right, 1);
}

function withinRange(scale: Scale): (grain: Grain) => number {
  const [left, right] = scale.range() as [number, number];
  return (grain) => at(Math.min(Math.max(scale(grain), left), right));
}

/** Hatches what lies outside the range; the range itself stays clear. */
function drawZones(
  lanes: Lanes,
  { min, max, serviceLimit }: ClearanceLimits,
  within: (grain: Grain) => number,
  { left, right, top }: { left: number; right: number; top: number },
): void {
  const zone = (ink: Ink, from: number, to: number) => {
    if (to - from >= 0.1) lanes.add(ink, `M${from} ${top}H${to}v${LANE.height}H${from}z`);
  };
  if (min !== undefined) zone('outside', left, within(min));
  const roof = serviceLimit ?? max;
  if (max !== undefined && serviceLimit !== undefined) zone('worn', within(max), within(serviceLimit));
  if (roof !== undefined) zone('outside', within(roof), right);
}
