/** A drawn fit shows what its verdict says: checked by where the ink lies. */
import { describe, expect, test } from 'vitest';
import { clearanceScale } from '../../../src/io/report/fit-chart.js';
import { type DrawnFit, drawFit, Lanes } from '../../../src/io/report/fit-lane.js';
import { fitVerdict } from '../../../src/maths/conformity.js';

const LIMITS = { min: 2000, max: 5000, serviceLimit: 7000 };

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

const begins = (path: string) => runs(path).map(({ from }) => from);

/** Far enough apart that a tenth of a point on the drawing cannot turn the order. */
const FITS = [
  ['in range', 3000, 4000, 300],
  ['within service limit', 5500, 6000, 300],
  ['tight', 1000, 1500, 300],
  ['loose', 7500, 8000, 300],
  ['undecided', 2100, 4000, 300],
  ['undecided', 3000, 4900, 300],
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
});

test('a bar far outside ends at the edge with an arrowhead, and does not press the others together', () => {
  const far = drawn(400_000, 400_500, 100);
  const near = drawn(3000, 4000, 300);
  const scale = clearanceScale([far, near]);
  expect(scale(LIMITS.max) - scale(LIMITS.min)).toBeGreaterThan(40);
  expect(begins(lanesOf(far, scale).pathOf('arrow'))).toHaveLength(1);
  expect(lanesOf(near).pathOf('arrow')).toBe('');
});

test('the range is clear: hatching begins where it ends', () => {
  const fit = drawn(3000, 4000, 300);
  const lanes = lanesOf(fit);
  const [min, max] = begins(lanes.pathOf('limit')) as [number, number];
  const zones = [...runs(lanes.pathOf('outside')), ...runs(lanes.pathOf('worn'))];
  expect(zones).toHaveLength(3);
  for (const { from, to } of zones) expect(to <= min + 0.1 || from >= max - 0.1).toBe(true);
});

test('without limits nothing is hatched; without a clearance there is no bar; a strip is a diamond', () => {
  const none = { min: undefined, max: undefined, serviceLimit: undefined };
  const free = drawn(3000, 4000, 300, none);
  const inks = lanesOf(free);
  expect([inks.pathOf('outside'), inks.pathOf('worn'), inks.pathOf('limit')]).toEqual(['', '', '']);
  expect(runs(inks.pathOf('bar'))).toHaveLength(1);
  expect(lanesOf({ ...drawn(3000, 4000, 300), clearance: undefined }).pathOf('bar')).toBe('');
  const strip = lanesOf({ ...drawn(3000, 3000, 0), isStrip: true });
  expect(runs(strip.pathOf('strip'))).toHaveLength(1);
  expect(strip.pathOf('bar')).toBe('');
});
