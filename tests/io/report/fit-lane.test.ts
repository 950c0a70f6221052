/** A drawn fit shows what its verdict says: checked by where the ink lies. */
import { describe, expect, test } from 'vitest';
import { clearanceScale } from '../../../src/io/report/fit-chart.js';
import { type DrawnFit, drawFit, Lanes } from '../../../src/io/report/fit-lane.js';
import { fitVerdict } from '../../../src/maths/conformity.js';
import { um } from '../../engine/book-of.js';

const LIMITS = { min: um(20), max: um(50), serviceLimit: um(70) };

function drawn(
  tightest: number,
  loosest: number,
  guard: number,
  limits: DrawnFit['limits'] = LIMITS,
): DrawnFit {
  return {
    position: '1',
    status: 'in range',
    clearance: { clearance: (tightest + loosest) / 2, tightest, loosest },
    isStrip: false,
    guards: { inside: guard, outside: 1.5 * guard },
    limits,
  };
}

function lanesOf(fit: DrawnFit, scale = clearanceScale([fit])): Lanes {
  const lanes = new Lanes();
  drawFit(lanes, fit, scale, 0);
  return lanes;
}

/** Where the pieces of a path begin, and where those go that run to the right at once. */
function runs(path: string): { from: number; to: number }[] {
  return [...path.matchAll(/M([-\d.]+) [-\d.]+(?:H([-\d.]+))?/g)].map(([, from, to]) => ({
    from: Number(from),
    to: Number(to),
  }));
}

const bar = (lanes: Lanes) => runs(lanes.pathOf('bar'))[0]!;

const begins = (path: string) => runs(path).map(({ from }) => from);

/** Far enough apart that a tenth of a point on the drawing cannot turn the order. */
const FITS = [
  ['in range', um(30), um(40), um(3)],
  ['within service limit', um(55), um(60), um(3)],
  ['tight', um(10), um(15), um(3)],
  ['loose', um(75), um(80), um(3)],
  ['undecided', um(21), um(40), um(3)],
  ['undecided', um(30), um(49), um(3)],
] as const;

describe.each(FITS)('%s: %i to %i, guard %i', (verdict, tightest, loosest, guard) => {
  const fit = drawn(tightest, loosest, guard);
  const lanes = lanesOf(fit);
  const [min, max] = begins(lanes.pathOf('limit')) as [number, number];
  const [service] = begins(lanes.pathOf('service')) as [number];
  const [{ from: low, to: high }] = runs(lanes.pathOf('whisker')) as [{ from: number; to: number }];

  test('the verdict is that of the rules', () => {
    expect(fitVerdict({ tightest, loosest }, LIMITS, fit.guards)).toBe(verdict);
  });

  test('the drawing shows it', () => {
    expect(min).toBeLessThan(max);
    expect(max).toBeLessThan(service);
    expect(low >= min && high <= max).toBe(verdict === 'in range');
    if (verdict === 'within service limit') expect(high).toBeLessThan(service);
    if (verdict === 'tight') expect(low).toBeLessThan(min);
    if (verdict === 'loose') expect(high).toBeGreaterThan(service);
    const [bar] = runs(lanes.pathOf('bar'));
    expect(bar?.from).toBeGreaterThan(low);
    expect(bar?.to).toBeLessThan(high);
  });

  test('the guard outside goes on behind the one inside, by as much on either side', () => {
    const [reach] = runs(lanes.pathOf('reach'));
    expect(reach!.from).toBeLessThan(low);
    expect(reach!.to).toBeGreaterThan(high);
    // Half as far again, to a tenth of a point.
    expect(low - reach!.from).toBeCloseTo((bar(lanes).from - low) / 2, 0);
    expect(reach!.to - high).toBeCloseTo((high - bar(lanes).to) / 2, 0);
  });
});

test('a bar far outside ends at the edge with an arrowhead, and does not press the others together', () => {
  const far = drawn(um(4000), um(4005), um(1));
  const near = drawn(um(30), um(40), um(3));
  const scale = clearanceScale([far, near]);
  expect(scale(LIMITS.max) - scale(LIMITS.min)).toBeGreaterThan(40);
  expect(begins(lanesOf(far, scale).pathOf('arrow'))).toHaveLength(1);
  expect(lanesOf(near).pathOf('arrow')).toBe('');
});

test('the range is clear: hatching begins where it ends', () => {
  const fit = drawn(um(30), um(40), um(3));
  const lanes = lanesOf(fit);
  const [min, max] = begins(lanes.pathOf('limit')) as [number, number];
  const zones = [...runs(lanes.pathOf('outside')), ...runs(lanes.pathOf('worn'))];
  expect(zones).toHaveLength(3);
  for (const { from, to } of zones) expect(to <= min + 0.1 || from >= max - 0.1).toBe(true);
});

test('without limits nothing is hatched; without a clearance there is no bar; a strip is a diamond', () => {
  const none = { min: undefined, max: undefined, serviceLimit: undefined };
  const free = drawn(um(30), um(40), um(3), none);
  const inks = lanesOf(free);
  expect([inks.pathOf('outside'), inks.pathOf('worn'), inks.pathOf('limit')]).toEqual(['', '', '']);
  expect(runs(inks.pathOf('bar'))).toHaveLength(1);
  expect(lanesOf({ ...drawn(um(30), um(40), um(3)), clearance: undefined }).pathOf('bar')).toBe('');
  const strip = lanesOf({ ...drawn(um(30), um(30), 0), isStrip: true });
  expect(runs(strip.pathOf('strip'))).toHaveLength(1);
  expect(strip.pathOf('bar')).toBe('');
  expect([strip.pathOf('whisker'), strip.pathOf('reach')]).toEqual(['', '']);
});

test('guards of one width, as of single spots and of a strip, are one line', () => {
  const fit = drawn(um(30), um(30), um(3));
  const lanes = lanesOf({ ...fit, isStrip: true, guards: { inside: um(3), outside: um(3) } });
  expect(runs(lanes.pathOf('whisker'))[0]!.to).toBeGreaterThan(runs(lanes.pathOf('strip'))[0]!.from);
  expect(lanes.pathOf('reach')).toBe('');
});
