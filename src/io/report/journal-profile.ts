/** A journal's spots along its axis: how far each diameter lies from the journal's size. */
import type { PartResult, ReadSpot } from '../../engine/assess/part-result.js';
import { GRAINS_PER_MM } from '../../maths/grain.js';
import { type Element, s } from './elements.js';
import { at } from './fit-lane.js';
import { PROFILE, type ProfileFrames } from './profile-frame.js';
import { visibleText } from './visible-text.js';

/** Grains; below this the drawing would magnify the gauge's last digit. */
const LEAST_REACH = 0.003 * GRAINS_PER_MM;

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

/** @param angles all angles among which shapes are shared out */
export function journalProfile(part: PartResult, angles: readonly number[], frames: ProfileFrames): Element {
  const { form, spots, row } = part;
  const size = form?.size ?? 0;
  const stations = [...new Set(spots.map(({ station }) => station))];
  const { y } = frames;
  const x = frames.x(stations);
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
  const metal = `M${PROFILE.left} ${PROFILE.bottom}V${first.y}${edge.map((point) => `L${point.x} ${point.y}`).join('')}L${PROFILE.right} ${last.y}V${PROFILE.bottom}z`;
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
      viewBox: `0 0 ${PROFILE.width} ${PROFILE.height}`,
      ariaLabel: visibleText(`Journal ${row.name} along its axis. ${told(part)}`),
    },
    [
      s('path', { className: 'shaft', d: metal }),
      frames.frame(stations),
      s('path', { className: 'spread', d: spreads.join('') }),
      ...lines,
    ],
  );
}

function told({ spots, form }: PartResult): string {
  if (!form || spots.length === 0) return 'No readings.';
  const named = (value: number) => {
    const spot = spots.find((one) => one.value === value)!;
    return spot.angle === undefined ? spot.station : `${spot.station} ${spot.angle}`;
  };
  return `Largest at ${named(form.largest)}, smallest at ${named(form.smallest)}.`;
}
