import { describe, expect, test } from 'vitest';
import {
  clearanceVariance,
  combineClearance,
  expandedUncertainty,
  type MeasuredPart,
  type SystematicSource,
  sizeVariance,
  spotVariance,
  sumOfSquares,
  systematicVariance,
} from '../../src/maths/uncertainty.js';

const part = (spotVariance: number, ...systematic: SystematicSource[]): MeasuredPart => ({
  size: 0,
  largest: 0,
  smallest: 0,
  systematic,
  spotVariance,
});
const by = (gauge: string, maxError = 300): SystematicSource => ({ gauge, maxError });
/** The variance of one rectangular error of ± 300. */
const ONE = 300 ** 2 / 3;

describe('the random part of a spot', () => {
  test.each([
    ['resolution', { resolution: 60, repeatability: 0 }, 1, 0, 300],
    ['repeatability', { resolution: 0, repeatability: 30 }, 1, 0, 900],
    ['repeatability of the mean of four', { resolution: 0, repeatability: 30 }, 4, 0, 225],
    // 0.5 K · 10e-6 · 4 000 000 = 20 grains.
    ['temperature', { resolution: 0, repeatability: 0 }, 1, 10, 400],
    ['all', { resolution: 60, repeatability: 30 }, 1, 10, 1600],
  ])('%s', (_words, gauge, repeats, expansion, variance) => {
    expect(spotVariance(gauge, repeats, expansion, 4_000_000)).toBeCloseTo(variance, 9);
  });
});

test('the systematic part is rectangular, and of each gauge of the chain', () => {
  expect(systematicVariance([])).toBe(0);
  expect(systematicVariance([by('micrometer'), by('ring', 30)])).toBeCloseTo(30_000 + 300, 9);
});

test('the random part of a size is that of a mean, the systematic part is not', () => {
  expect(sizeVariance([by('micrometer')], [400, 400, 400, 400])).toBeCloseTo(ONE + 100, 9);
});

describe('a clearance', () => {
  const clearance = (bore: MeasuredPart, upper: MeasuredPart, lower: MeasuredPart, journal: MeasuredPart) =>
    clearanceVariance({ bore, upper, lower, journal });

  test('by four gauges: all add in squares', () => {
    const parts = ['a', 'b', 'c', 'd'].map((gauge) => part(0, by(gauge))) as [
      MeasuredPart,
      ...MeasuredPart[],
    ];
    expect(clearance(parts[0], parts[1]!, parts[2]!, parts[3]!)).toBeCloseTo(4 * ONE, 9);
  });

  test('the gauge that measured the journal and set the bore gauge cancels', () => {
    const bore = part(0, by('bore gauge', 30), by('micrometer'));
    const journal = part(0, by('micrometer'));
    expect(clearance(bore, part(0), part(0), journal)).toBeCloseTo(300, 9);
  });

  test('one gauge on both walls adds', () => {
    const wall = part(0, by('wall micrometer'));
    expect(clearance(part(0), wall, wall, part(0))).toBeCloseTo(4 * ONE, 9);
  });

  test('one gauge on all four parts: +1 − 1 − 1 − 1', () => {
    const one = part(0, by('micrometer'));
    expect(clearance(one, one, one, one)).toBeCloseTo(4 * ONE, 9);
  });

  test('random parts never cancel', () => {
    const one = part(100, by('micrometer'));
    expect(clearance(one, part(100), part(100), one)).toBeCloseTo(400, 9);
  });

  test('parts without a gauge add nothing', () => {
    expect(clearance(part(0), part(0), part(0), part(0))).toBe(0);
  });
});

test('from four standard uncertainties, walls independent or of one error', () => {
  const parts = { bore: 2, upper: 3, lower: 6, journal: 0 };
  expect(combineClearance(parts, false)).toBe(7);
  expect(combineClearance({ ...parts, bore: 40 }, true)).toBe(41);
});

test('sum of squares', () => {
  expect(sumOfSquares([])).toBe(0);
  expect(sumOfSquares([3, -4])).toBe(25);
});

test('the expanded uncertainty is doubled before it is rounded', () => {
  expect(expandedUncertainty(1.5625)).toBe(3);
  expect(expandedUncertainty(0)).toBe(0);
});
