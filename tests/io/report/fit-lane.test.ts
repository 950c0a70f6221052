/** A drawn fit shows what its verdict says: checked by where the ink lies. */
import type { Element } from 'hast';
import { describe, expect, test } from 'vitest';
import { clearanceScale } from '../../../src/io/report/fit-chart.js';
import { type DrawnFit, fitLane } from '../../../src/io/report/fit-lane.js';
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
    guard,
    limits,
  };
}

function shapes(fit: DrawnFit, className: string): Element[] {
  return fitLane(fit, clearanceScale([fit]), 0).filter(({ properties }) =>
    [properties.className].flat().includes(className),
  );
}

const xOf = (path: Element) => Number(/^M([-\d.]+)/.exec(String(path.properties.d))?.[1]);

/** The ends of the whiskers, or of the bar where there are none. */
function ends(fit: DrawnFit): [number, number] {
  const [whisker] = shapes(fit, 'whisker');
  const path = String(whisker?.properties.d);
  return [xOf(whisker!), Number(/H([-\d.]+)/.exec(path)?.[1])];
}

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
  const [min, max] = shapes(fit, 'limit').map(xOf) as [number, number];
  const [service] = shapes(fit, 'service').map(xOf) as [number];
  const [low, high] = ends(fit);

  test('the verdict is that of the rules', () => {
    expect(fitVerdict({ tightest, loosest }, LIMITS, guard)).toBe(verdict);
  });

  test('the drawing shows it', () => {
    expect(min).toBeLessThan(max);
    expect(max).toBeLessThan(service);
    expect(low >= min && high <= max).toBe(verdict === 'in range');
    if (verdict === 'within service limit') expect(high).toBeLessThan(service);
    if (verdict === 'tight') expect(low).toBeLessThan(min);
    if (verdict === 'loose') expect(high).toBeGreaterThan(service);
    const [bar] = shapes(fit, 'bar');
    expect(Number(bar?.properties.x)).toBeGreaterThan(low);
    expect(Number(bar?.properties.x) + Number(bar?.properties.width)).toBeLessThan(high);
  });
});

test('a bar far outside ends at the edge with an arrowhead, and does not press the others together', () => {
  const far = drawn(400_000, 400_500, 100);
  const near = drawn(3000, 4000, 300);
  const scale = clearanceScale([far, near]);
  expect(scale(LIMITS.max) - scale(LIMITS.min)).toBeGreaterThan(40);
  const marks = fitLane(far, scale, 0).filter(
    ({ properties }) => properties.className?.toString() === 'arrow',
  );
  expect(marks).toHaveLength(1);
  expect(shapes(near, 'arrow')).toEqual([]);
});

test('the range is clear: hatching begins where it ends', () => {
  const fit = drawn(3000, 4000, 300);
  const [min, max] = shapes(fit, 'limit').map(xOf) as [number, number];
  const zones = fitLane(fit, clearanceScale([fit]), 0).filter(({ properties }) =>
    String(properties.fill ?? '').startsWith('url('),
  );
  expect(zones).toHaveLength(3);
  for (const { properties } of zones) {
    const [from, to] = [Number(properties.x), Number(properties.x) + Number(properties.width)];
    expect(to <= min + 0.1 || from >= max - 0.1).toBe(true);
  }
});

test('without limits nothing is hatched; without a clearance there is no bar; a strip is a diamond', () => {
  const none = { min: undefined, max: undefined, serviceLimit: undefined };
  const free = drawn(3000, 4000, 300, none);
  expect(fitLane(free, clearanceScale([free]), 0).filter(({ properties }) => properties.fill)).toEqual([]);
  expect(shapes(free, 'bar')).toHaveLength(1);
  expect(shapes({ ...drawn(3000, 4000, 300), clearance: undefined }, 'bar')).toEqual([]);
  const strip = { ...drawn(3000, 3000, 0), isStrip: true };
  expect(shapes(strip, 'strip')).toHaveLength(1);
  expect(shapes(strip, 'bar')).toEqual([]);
});
