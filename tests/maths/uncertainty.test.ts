import { describe, expect, test } from 'vitest';
import type { SystematicSource } from '../../src/maths/shared-gauges.js';
import {
  CERTAIN,
  clearanceVariance,
  combineClearance,
  commonVariance,
  expandedUncertainty,
  expansionContribution,
  type MeasuredPart,
  readVariance,
  sizeVariance,
  sumOfSquares,
  systematicVariance,
  temperatureVariance,
  totalVariance,
  varianceByError,
  varianceOf,
} from '../../src/maths/uncertainty.js';

/** A part of a size of its own, far from those of others; read by gauges. */
const part = (size: number, ...systematic: SystematicSource[]): MeasuredPart => ({
  ...CERTAIN,
  ...{ size, largest: size, smallest: size, systematic },
});
const by = (gauge: string, maxError = 300, isConstant = false): SystematicSource => ({
  ...{ gauge, maxError, isConstant },
});
/** The variance of one rectangular error of ± 300. */
const ONE = 300 ** 2 / 3;
const [BORE, WALL, JOURNAL] = [45_000_000, 1_500_000, 42_000_000];

describe('the random part of a spot', () => {
  test.each([
    ['resolution', { resolution: 60, repeatability: 0 }, 1, 300],
    ['repeatability', { resolution: 0, repeatability: 30 }, 1, 900],
    ['repeatability of the mean of four', { resolution: 0, repeatability: 30 }, 4, 225],
    ['both', { resolution: 60, repeatability: 30 }, 1, 1200],
  ])('%s', (_words, gauge, repeats, variance) => {
    expect(readVariance(gauge, repeats)).toBeCloseTo(variance, 9);
  });
});

test('temperature: 0.5 K of 10e-6 per K of 4 mm are 20 grains, of the whole part', () => {
  expect(temperatureVariance(10, 4_000_000)).toBeCloseTo(400, 9);
});

test('expansion: a tenth of 23e-6 per K, 10 K above 20 °C, of 60 mm; its sign is that of T − 20', () => {
  // 2.3e-6 · 10 · 60 000 000 / √3 = 796.7 grains = 0.80 µm.
  expect(expansionContribution(2.3, 60_000_000, 10)).toBeCloseTo(1380 / Math.sqrt(3), 9);
  expect(expansionContribution(2.3, 60_000_000, -10)).toBeCloseTo(-1380 / Math.sqrt(3), 9);
});

test('the systematic part is rectangular, and of each gauge of the chain', () => {
  expect(systematicVariance([])).toBe(0);
  expect(systematicVariance([by('micrometer'), by('ring', 30)])).toBeCloseTo(30_000 + 300, 9);
});

test('of a size only the random part is that of a mean of its spots', () => {
  const measured = {
    ...part(JOURNAL, by('micrometer')),
    ...{ spots: 4, readVariance: 400, temperatureVariance: 50, ownExpansion: -3 },
    gaugeExpansion: { gauge: 'micrometer', contribution: 4 },
  };
  expect(commonVariance(measured)).toBeCloseTo(ONE + 50 + 9 + 16, 9);
  expect(sizeVariance(measured)).toBeCloseTo(ONE + 50 + 9 + 16 + 100, 9);
});

describe('the gauges of a clearance', () => {
  const clearance = (bore: MeasuredPart, upper: MeasuredPart, lower: MeasuredPart, journal: MeasuredPart) =>
    totalVariance(clearanceVariance({ bore, upper, lower, journal }));

  test('four gauges: all add in squares', () => {
    const found = clearance(
      part(BORE, by('a')),
      part(WALL, by('b')),
      part(WALL, by('c')),
      part(JOURNAL, by('d')),
    );
    expect(found).toBeCloseTo(4 * ONE, 9);
  });

  test.each([
    ['one constant error cancels between the journal and the bore that it set', true, 0],
    ['an error that differs from size to size does not', false, 2 * ONE],
  ])('%s', (_words, isConstant, variance) => {
    const mic = by('micrometer', 300, isConstant);
    const found = clearance(
      part(BORE, by('bore gauge', 30), mic),
      part(WALL),
      part(WALL),
      part(JOURNAL, mic),
    );
    expect(found).toBeCloseTo(300 + variance, 9);
  });

  test('one gauge on both walls adds', () => {
    const wall = part(WALL, by('wall micrometer'));
    expect(clearance(part(BORE), wall, wall, part(JOURNAL))).toBeCloseTo(4 * ONE, 9);
  });

  test.each([
    ['less than 0.25 mm apart are of one size', 249_999, 4],
    ['0.25 mm apart are not', 250_000, 4],
  ])('walls %s, and count by the worse of both', (_words, apart, times) => {
    const [thin, thick] = [part(WALL, by('m')), part(WALL + apart, by('m'))];
    // Either as one error for all, (−1 − 1)², or apart, 1 + 1: the greater counts.
    expect(clearance(part(BORE), thin, thick, part(JOURNAL))).toBeCloseTo(times * ONE, 9);
  });

  test.each([
    ['a plain fit of nearly one size: its error cancels', JOURNAL + 249_999, 0],
    ['a plain fit of sizes 0.25 mm apart: it does not', JOURNAL + 250_000, 2],
  ])('%s', (_words, outer, times) => {
    const terms = [
      { sign: 1, part: part(outer, by('m')) },
      { sign: -1, part: part(JOURNAL, by('m')) },
    ] as const;
    expect(totalVariance(varianceOf(terms))).toBeCloseTo(times * ONE, 9);
  });

  test.each([
    ['as one constant: +1 − 1 − 1 − 1', true, 4],
    ['by size: 1 of the bore, 1 of the journal, (−2)² of the walls', false, 6],
  ])('one gauge on all four parts counts %s', (_words, isConstant, times) => {
    const m = by('m', 300, isConstant);
    const found = clearance(part(BORE, m), part(WALL, m), part(WALL, m), part(JOURNAL, m));
    expect(found).toBeCloseTo(times * ONE, 9);
  });

  test('parts without a gauge add nothing', () => {
    expect(clearance(part(BORE), part(WALL), part(WALL), part(JOURNAL))).toBe(0);
  });
});

describe('the expansion of a clearance', () => {
  const warm = (size: number, own: number, gauge?: string): MeasuredPart => ({
    ...part(size),
    ownExpansion: own,
    gaugeExpansion: gauge === undefined ? undefined : { gauge, contribution: own },
  });
  const common = (parts: {
    bore: MeasuredPart;
    upper: MeasuredPart;
    lower: MeasuredPart;
    journal: MeasuredPart;
  }) => clearanceVariance(parts).common;

  test('of the outer part stands alone; walls and journal err together, with the sign of their T − 20', () => {
    const parts = {
      bore: warm(BORE, 10),
      upper: warm(WALL, 1),
      lower: warm(WALL, -1),
      journal: warm(JOURNAL, 7),
    };
    expect(common(parts)).toBeCloseTo(100 + 49, 9);
    expect(common({ ...parts, lower: warm(WALL, 1) })).toBeCloseTo(100 + 81, 9);
  });

  test('of one gauge adds with the signs of its terms', () => {
    const parts = {
      bore: warm(BORE, 10, 'm'),
      upper: warm(WALL, 1, 'w'),
      lower: warm(WALL, 1, 'w'),
      journal: warm(JOURNAL, 7, 'm'),
    };
    // The parts' own: 10² + (1 + 1 + 7)²; the gauges': (10 − 7)² + (1 + 1)².
    expect(common(parts)).toBeCloseTo(100 + 81 + 9 + 4, 9);
  });
});

test('the random parts of a fit never cancel, and keep how many spots they are of', () => {
  const one = { ...part(JOURNAL, by('m')), readVariance: 100, spots: 4 };
  const found = varianceOf([
    { sign: 1, part: one },
    { sign: -1, part: one },
  ]);
  expect(totalVariance(found)).toBeCloseTo(200, 9);
  expect(found.scatters).toEqual([
    { variance: 100, spots: 4 },
    { variance: 100, spots: 4 },
  ]);
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

test.each([
  ['the gauge of one part', 'bore gauge', 30],
  ['a gauge of several parts', 'micrometer', 30],
  ['a gauge without an error', 'micrometer', 0],
  ['a gauge that is not there', 'ring', 30],
])('another max error of a gauge is that of every part that it measured: %s', (_words, gauge, maxError) => {
  const terms = (bore: number, others: number) => [
    { sign: 1 as const, part: { ...part(BORE, by('bore gauge', bore)), readVariance: 25, ownExpansion: 7 } },
    { sign: -1 as const, part: { ...part(WALL, by('micrometer', others)), temperatureVariance: 9 } },
    { sign: -1 as const, part: part(WALL, by('micrometer', others)) },
    { sign: -1 as const, part: part(JOURNAL, by('micrometer', others)) },
  ];
  const errorOf = (name: string, error: number) => (name === gauge ? maxError : error);
  expect(varianceByError(terms(300, 200), gauge)(maxError)).toEqual(
    varianceOf(terms(errorOf('bore gauge', 300), errorOf('micrometer', 200))),
  );
});
