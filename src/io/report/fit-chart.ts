/** The fits of one engine and fit in one picture, lane under lane on one scale of clearance. */
import { scaleLinear } from 'd3-scale';
import type { Grain } from '../../maths/grain.js';
import { inUnit, type LengthUnit, snapToGrain } from '../../maths/units.js';
import { type Element, h, s } from './elements.js';
import { at, type ClearanceLimits, type DrawnFit, drawBar, drawLane, Lanes, type Scale } from './fit-lane.js';
import { visibleText } from './visible-text.js';

/** Drawn narrow, so that letters keep their size on a telephone; on paper two stand side by side. */
const WIDTH = 340;
const MARGIN = 12;
const ROW = 36;
/** Below the words of the row. */
const LANE_TOP = 17;
/** More would not go on a page. */
const MOST_ROWS = 16;

export interface FitChart {
  /** Begins the ids of what its lanes have in common. */
  readonly id: string;
  readonly caption: string;
  readonly fits: readonly DrawnFit[];
  /** What its values are: `diametral clearance`. */
  readonly values: string;
  readonly unit: LengthUnit;
  /** A clearance as the tables show it. */
  readonly text: (grain: Grain) => string;
  /** A limit as it is typed. */
  readonly limitText: (grain: Grain) => string;
}

/** Figures, none where there is nothing to draw. */
export function fitCharts(chart: FitChart): Element[] {
  if (!chart.fits.some(({ clearance }) => clearance)) return [];
  const scale = clearanceScale(chart.fits);
  const parts = Math.ceil(chart.fits.length / MOST_ROWS);
  return Array.from({ length: parts }, (_, part) => {
    const fits = chart.fits.slice(part * MOST_ROWS, (part + 1) * MOST_ROWS);
    const caption = parts > 1 ? `${chart.caption}, ${part + 1} of ${parts}` : chart.caption;
    return h('figure', { className: 'fits' }, [
      h('figcaption', visibleText(caption)),
      picture({ ...chart, caption, fits, id: `${chart.id}-${part + 1}` }, scale),
    ]);
  });
}

/**
 * From the least to the greatest that is drawn, but never further from the limits than twice their range: one bar
 * far away must not press all others together.
 */
export function clearanceScale(fits: readonly DrawnFit[]): Scale {
  const limits = fits.flatMap(({ limits: { min, max, serviceLimit } }) =>
    [min, max, serviceLimit].flatMap((limit) => limit ?? []),
  );
  const drawn = fits.flatMap(({ clearance, guards }) =>
    clearance ? [clearance.tightest - guards.outside, clearance.loosest + guards.outside] : [],
  );
  let [low, high] = [Math.min(...limits, ...drawn), Math.max(...limits, ...drawn)];
  if (limits.length > 1) {
    const [least, greatest] = [Math.min(...limits), Math.max(...limits)];
    const reach = 2 * Math.max(greatest - least, 1);
    [low, high] = [Math.max(low, least - reach), Math.min(high, greatest + reach)];
  }
  const room = Math.max((high - low) * 0.08, 1);
  return scaleLinear()
    .domain([low - room, high + room])
    .range([MARGIN, WIDTH - MARGIN]);
}

function picture({ id, caption, fits, values, unit, text, limitText }: FitChart, scale: Scale): Element {
  const [first] = fits;
  const shared = fits.every(({ limits }) => sameLimits(limits, first!.limits)) ? first!.limits : undefined;
  const labels = shared ? limitLabels(shared, scale, limitText) : [];
  const head = labels.length > 0 ? 28 : 4;
  const foot = head + fits.length * ROW + 4;
  const lanes = new Lanes();
  const ground = shared ? sharedLanes(shared, scale, { id, top: head + LANE_TOP, count: fits.length }) : [];
  const rows = fits.flatMap((fit, row) => {
    const top = head + row * ROW;
    const value = fit.clearance ? text(fit.clearance.clearance) : '';
    if (!shared) drawLane(lanes, fit.limits, scale, top + LANE_TOP);
    drawBar(lanes, fit, scale, top + LANE_TOP);
    return [
      s('text', { x: MARGIN, y: top + 11 }, [
        s('tspan', { className: 'place' }, visibleText(fit.position)),
        ` ${fit.status}${fit.isStrip ? ', by strip' : ''}`,
      ]),
      s('text', { className: 'end', x: WIDTH - MARGIN, y: top + 11 }, value),
    ];
  });
  const told = fits.map(({ position, status }) => `${position} ${status}`).join(', ');
  return s(
    'svg',
    {
      role: 'img',
      viewBox: `0 0 ${WIDTH} ${foot + 32}`,
      ariaLabel: visibleText(`${caption}. ${told}. The figures stand in the table.`),
    },
    [...ground, ...lanes.elements(), ...labels, ...rows, ...axis(scale, foot, `${values}, ${unit}`, unit)],
  );
}

/** Lanes of the same limits: the first is drawn, and lent to those below. */
function sharedLanes(
  limits: ClearanceLimits,
  scale: Scale,
  { id, top, count }: { id: string; top: number; count: number },
): Element[] {
  const lane = new Lanes();
  drawLane(lane, limits, scale, top);
  const others = Array.from({ length: count - 1 }, (_, row) =>
    s('use', { href: `#${id}`, y: (row + 1) * ROW }),
  );
  return [s('g', { id }, lane.elements()), ...others];
}

function sameLimits(a: ClearanceLimits, b: ClearanceLimits): boolean {
  return a.min === b.min && a.max === b.max && a.serviceLimit === b.serviceLimit;
}

/** The names of the limits above their lines, on a second line where two would touch. */
function limitLabels(limits: ClearanceLimits, scale: Scale, text: (grain: Grain) => string): Element[] {
  const named = [
    ['min', limits.min],
    ['max', limits.max],
    ['service', limits.serviceLimit],
  ] as const;
  const ends = [0, 0];
  return named.flatMap(([name, limit]) => {
    if (limit === undefined) return [];
    const label = `${name} ${text(limit)}`;
    const half = label.length * 3;
    const x = Math.min(Math.max(scale(limit), half + 2), WIDTH - half - 2);
    const line = x - half >= ends[0]! ? 0 : 1;
    ends[line] = x + half + 4;
    return [s('text', { className: 'mid', x: at(x), y: 22 - line * 12 }, label)];
  });
}

function axis(scale: Scale, y: number, label: string, unit: LengthUnit): Element[] {
  // Ticks at round values of the unit, which grains are only in mm.
  const inLengths = scaleLinear()
    .domain(scale.domain().map((grain) => inUnit(grain, unit)))
    .range(scale.range());
  const show = inLengths.tickFormat(5);
  const ticks = inLengths.ticks(5).map((value) => ({ value, x: at(scale(snapToGrain(value, unit))) }));
  const marks = ticks.map(({ x }) => `M${x} ${y}v4`).join('');
  return [
    s('path', { className: 'tick', d: `M${MARGIN} ${y}H${WIDTH - MARGIN}${marks}` }),
    ...ticks.map(({ value, x }) =>
      s('text', { className: 'mid tick', x, y: y + 15 }, show(value).replace('−', '\u2212')),
    ),
    s('text', { className: 'mid tick', x: WIDTH / 2, y: y + 29 }, label),
  ];
}
