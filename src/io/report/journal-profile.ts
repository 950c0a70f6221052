/** A journal's spots along its axis: how far each diameter lies from the journal's size. */
import { scaleLinear, scalePoint } from 'd3-scale';
import type { PartResult, ReadSpot } from '../../engine/assess/part.js';
import type { LengthUnit } from '../../maths/units.js';
import { inUnit, snapToGrain } from '../../maths/units.js';
import { type Element, s } from './elements.js';
import { at } from './fit-lane.js';
import { visibleText } from './visible-text.js';

const WIDTH = 160;
const HEIGHT = 116;
const PLOT = { left: 34, right: 152, top: 8, bottom: 96 } as const;
/** Grains; below this the drawing would magnify the gauge's last digit. */
const LEAST_REACH = 300;

/**
 * Shapes tell the angles apart; the first four are as many as anybody measures. The dot is a line of no length with
 * round ends.
 */
const SHAPES = [
  { sign: '\u25cf', d: 'h0', className: 'dot' },
  { sign: '\u25a1', d: 'm-3-3h6v6h-6z', className: 'spot open' },
  { sign: '\u25b2', d: 'm0-3.6l3.6 6.4h-7.2z', className: 'spot' },
  { sign: '\u25c7', d: 'm0-4l4 4-4 4-4-4z', className: 'spot open' },
] as const;

export function anglesOf(parts: readonly PartResult[]): number[] {
  const angles = new Set(parts.flatMap(({ spots }) => spots.map(({ angle }) => angle ?? 0)));
  return [...angles].sort((a, b) => a - b);
}

/** What the shapes stand for, in one line: `● 0°, □ 90°`. */
export function shapeKey(angles: readonly number[]): string {
  return angles.map((angle, place) => `${shapeOf(place).sign} ${angle}°`).join(', ');
}

function shapeOf(place: number) {
  return SHAPES[place % SHAPES.length]!;
}

/** The reach, in grains to either side of the size, in which the spots of all these journals stand. */
export function reachOf(parts: readonly PartResult[]): number {
  const furthest = parts.flatMap(({ spots, form }) =>
    form ? spots.map(({ value }) => Math.abs(value - form.size)) : [],
  );
  return 1.25 * furthest.reduce((most, far) => Math.max(most, far), LEAST_REACH);
}

/**
 * @param angles all angles among which shapes are shared out
 * @param reach grains to either side of the size; one for all journals that are to be compared
 */
export function journalProfile(
  part: PartResult,
  angles: readonly number[],
  reach: number,
  unit: LengthUnit,
): Element {
  const { form, spots, row } = part;
  const size = form?.size ?? 0;
  const stations = [...new Set(spots.map(({ station }) => station))];
  const x = scalePoint(stations, [PLOT.left, PLOT.right]).padding(0.5);
  const y = scaleLinear([-reach, reach], [PLOT.bottom, PLOT.top]);
  const place = (spot: ReadSpot) => ({ x: at(x(spot.station)!), y: at(y(spot.value - size)) });
  const spreads = stations.map((station) => {
    const ys = spots.filter((spot) => spot.station === station).map((spot) => place(spot).y);
    return `M${at(x(station)!)} ${Math.min(...ys)}V${Math.max(...ys)}`;
  });
  // Below the least diameter of every station there is metal, hatched as in a section.
  const edge = stations.map((station) => {
    const values = spots.filter((spot) => spot.station === station).map(({ value }) => value);
    return { x: at(x(station)!), y: at(y(Math.min(...values) - size)) };
  });
  const [first, last] = [edge[0]!, edge.at(-1)!];
  const metal = `M${PLOT.left} ${PLOT.bottom}V${first.y}${edge.map((point) => `L${point.x} ${point.y}`).join('')}L${PLOT.right} ${last.y}V${PLOT.bottom}z`;
  const lines = angles.flatMap((angle, order) => {
    const own = spots.filter((spot) => (spot.angle ?? 0) === angle).map(place);
    const { d, className } = shapeOf(order);
    return [
      s('path', {
        className: `run r${order % SHAPES.length}`,
        d: own.map((point, index) => `${index === 0 ? 'M' : 'L'}${point.x} ${point.y}`).join(''),
      }),
      s('path', {
        className,
        d: own.map((point) => `M${point.x} ${point.y}${d}`).join(''),
      }),
    ];
  });
  return s(
    'svg',
    {
      role: 'img',
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
      ariaLabel: visibleText(`Journal ${row.name} along its axis. ${told(part)}`),
    },
    [
      s('path', { className: 'shaft', d: metal }),
      s('path', { className: 'axis', d: `M${PLOT.left - 4} ${y(0)}H${PLOT.right + 6}` }),
      ...deviationAxis(y, reach, unit),
      s('path', { className: 'spread', d: spreads.join('') }),
      ...lines,
      ...stations.map((station) =>
        s('text', { className: 'mid tick', x: at(x(station)!), y: PLOT.bottom + 15 }, station),
      ),
    ],
  );
}

function told({ spots, form }: PartResult): string {
  if (!form || spots.length === 0) return 'No readings.';
  const named = (value: number) => {
    const spot = spots.find((one) => one.value === value)!;
    return spot.angle === undefined ? spot.station : `${spot.station} ${spot.angle}`;
  };
  return `Largest at ${named(form.largest)}, smallest at ${named(form.smallest)}. The figures stand below it.`;
}

/** Deviations in µm, or in ten-thousandths of an inch. */
function deviationAxis(y: ReturnType<typeof scaleLinear<number, number>>, reach: number, unit: LengthUnit) {
  const step = unit === 'in' ? { unit: 'in', factor: 1e4 } : { unit: 'µm', factor: 1 };
  const shown = (grain: number) => inUnit(grain, step.unit as LengthUnit) * step.factor;
  const ticks = scaleLinear([-shown(reach), shown(reach)], [0, 1]).ticks(4);
  return ticks.flatMap((value) => {
    const top = at(y(snapToGrain(value / step.factor, step.unit as LengthUnit)));
    const label = value > 0 ? `+${value}` : String(value).replace('-', '\u2212');
    return [
      s('path', { className: 'tick', d: `M${PLOT.left - 3} ${top}h3` }),
      s('text', { className: 'end tick', x: PLOT.left - 5, y: top + 4 }, label),
    ];
  });
}

/** What the numbers beside the drawings are. */
export function deviationUnit(unit: LengthUnit): string {
  return unit === 'in' ? '0.0001 in' : 'µm';
}
