/** One fit drawn in its lane: the bar from tightest to loosest, its guard as whiskers, the limits as hatching. */
import type { ScaleLinear } from 'd3-scale';
import type { LimitsRow } from '../../engine/book/book.js';
import type { Clearance } from '../../maths/clearance.js';
import type { Grain } from '../../maths/grain.js';
import { type Element, s } from './elements.js';
import { HATCH } from './hatching.js';

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
  readonly guard: Grain;
  readonly limits: ClearanceLimits;
}

export type Scale = ScaleLinear<number, number>;

export const LANE = { height: 14, bar: 6, cap: 8 } as const;

/** Coordinates to a tenth: finer than any printer at these sizes. */
export function at(value: number): number {
  return Math.round(value * 10) / 10;
}

export function fitLane(fit: DrawnFit, scale: Scale, top: number): Element[] {
  const [left, right] = scale.range() as [number, number];
  const within = (grain: Grain) => Math.min(Math.max(scale(grain), left), right);
  const middle = top + LANE.height / 2;
  const { clearance, guard, limits } = fit;
  const drawn = zones(limits, within, left, right).map(({ from, to, hatch }) =>
    s('rect', { x: at(from), y: top, width: at(to - from), height: LANE.height, fill: `url(#${hatch})` }),
  );
  drawn.push(
    s('path', { className: 'edge', d: `M${left} ${top}H${right}M${left} ${top + LANE.height}H${right}` }),
  );
  for (const limit of [limits.min, limits.max]) {
    if (limit !== undefined) drawn.push(upright(within(limit), top, 'limit'));
  }
  if (limits.serviceLimit !== undefined) drawn.push(upright(within(limits.serviceLimit), top, 'service'));
  if (!clearance) return drawn;
  const [from, to] = [within(clearance.tightest), within(clearance.loosest)];
  if (guard > 0) {
    const [low, high] = [within(clearance.tightest - guard), within(clearance.loosest + guard)];
    const caps = [low, high].map((x) => `M${at(x)} ${middle - LANE.cap / 2}v${LANE.cap}`).join('');
    const d = `M${at(low)} ${middle}H${at(high)}${caps}`;
    drawn.push(s('path', { className: 'halo', d }), s('path', { className: 'whisker', d }));
  }
  drawn.push(
    fit.isStrip
      ? s('path', { className: 'strip', d: `M${at(from - 5)} ${middle}l5-5 5 5-5 5z` })
      : s('rect', {
          className: 'bar',
          x: at(from - 0.5),
          y: middle - LANE.bar / 2,
          width: at(to - from + 1),
          height: LANE.bar,
        }),
  );
  if (!fit.isStrip) {
    drawn.push(s('circle', { className: 'mean', cx: at(within(clearance.clearance)), cy: middle, r: 2 }));
  }
  // Beyond the drawing: an arrowhead says that the bar goes on.
  if (scale(clearance.tightest) < left) drawn.push(arrow(left, middle, -1));
  if (scale(clearance.loosest) > right) drawn.push(arrow(right, middle, 1));
  return drawn;
}

function upright(x: number, top: number, className: string): Element {
  return s('path', { className, d: `M${at(x)} ${top - 3}v${LANE.height + 6}` });
}

function arrow(x: number, middle: number, direction: 1 | -1): Element {
  return s('path', {
    className: 'arrow',
    d: `M${at(x + 7 * direction)} ${middle}l${-8 * direction}-5v10z`,
  });
}

interface Zone {
  readonly from: number;
  readonly to: number;
  readonly hatch: string;
}

/** What lies outside the range; the range itself stays clear. */
function zones(
  { min, max, serviceLimit }: ClearanceLimits,
  within: (grain: Grain) => number,
  left: number,
  right: number,
): Zone[] {
  const found: Zone[] = [];
  const add = (from: number, to: number, hatch: string) => {
    if (to - from >= 0.1) found.push({ from, to, hatch });
  };
  if (min !== undefined) add(left, within(min), HATCH.outside);
  const roof = serviceLimit ?? max;
  if (max !== undefined && serviceLimit !== undefined) add(within(max), within(serviceLimit), HATCH.service);
  if (roof !== undefined) add(within(roof), right, HATCH.outside);
  return found;
}
