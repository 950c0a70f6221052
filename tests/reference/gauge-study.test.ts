/** Gauge studies and analysis of variance against published studies and NIST's reference data sets. */
import { describe, expect, test } from 'vitest';
import { mean, oneWayAnalysis, sampleDeviation } from '../../src/maths/analysis-of-variance.js';
import { analyseStudy, averageAndRange } from '../../src/maths/gauge-study.js';
import { rangeDivisor } from '../../src/maths/studentized-range.js';
import { cite, published, readingsBy, statisticalDataset } from './published.js';

const anova = published('grr-aiag-anova');
const ranges = published('grr-aiag-xbarr');
const study = readingsBy(anova.inputs.file, 'appraiser', 'part');

describe(cite(anova), () => {
  const found = analyseStudy(study);
  const { expected } = anova;

  test('the interaction is one that chance gives, and goes into the repeatability', () => {
    expect(found.isPooled).toBe(true);
    const f = /F=([\d.]+)/.exec(anova.inputs.pool)![1]!;
    expect((found.interaction.meanSquare / found.within.meanSquare).toFixed(3)).toBe(f);
  });

  test.each([
    ['EV', found.repeatability, 5e-6],
    ['AV', found.reproducibility!, 5e-6],
    ['GRR', found.gauge, 5e-6],
    ['PV', found.parts!, 5e-6],
    ['TV', found.total, 5e-4],
    ['ndc', found.categories!, 5e-4],
  ] as const)('%s', (name, value, tolerance) => {
    expect(Math.abs(value - expected[name])).toBeLessThanOrEqual(tolerance);
  });

  test.each([
    ['appraiser', found.person.sumOfSquares, 5e-6],
    ['part', found.part.sumOfSquares, 5e-5],
    ['interaction', found.interaction.sumOfSquares, 5e-4],
    ['equipment', found.within.sumOfSquares, 5e-5],
  ] as const)('sum of squares of %s', (name, value, tolerance) => {
    expect(Math.abs(value - expected.SS[name])).toBeLessThanOrEqual(tolerance);
  });
});

describe(cite(ranges), () => {
  const found = averageAndRange(study);
  test.each([
    ['EV', found.repeatability, 1e-4],
    ['AV', found.reproducibility!, 1e-4],
    ['GRR', found.gauge, 1e-4],
    // The form works from rounded intermediate values; K3 of four digits times 3.511 is known to 1.8e-4.
    ['PV', found.parts!, 1.8e-4],
    ['TV', found.total, 1.8e-4],
  ] as const)('%s', (name, value, tolerance) => {
    expect(Math.abs(value - ranges.expected[name])).toBeLessThanOrEqual(tolerance);
  });

  test('number of distinct categories', () => {
    expect(Math.trunc(found.categories!)).toBe(ranges.expected.ndc);
  });
});

// MSA, 4th ed., appendix A: K1 = 1/d2 for many ranges, K2 and K3 = 1/d2* for one range; typed from memory.
test.each([
  [2, 30, 0.8862],
  [3, 30, 0.5908],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the digits as printed
  [2, 1, 0.7071],
  [3, 1, 0.5231],
  [4, 1, 0.4467],
  [5, 1, 0.403],
  [6, 1, 0.3742],
  [7, 1, 0.3534],
  [8, 1, 0.3375],
  [9, 1, 0.3249],
  [10, 1, 0.3146],
])(
  'the range of %i values, %i of them: a standard deviation is %f of the mean range',
  (values, count, factor) => {
    expect(1 / rangeDivisor(values, count)).toBeCloseTo(factor, 3);
  },
);

describe.each(['strd-lew', 'strd-lottery', 'strd-michelso', 'strd-numacc1', 'strd-numacc2', 'strd-numacc4'])(
  '%s',
  (id) => {
    const { inputs, expected } = published(id);
    const values = statisticalDataset(inputs.file);

    test('has all its values', () => {
      expect(values).toHaveLength(inputs.n);
    });

    test('mean and standard deviation to 12 digits', () => {
      expect(Math.abs(mean(values) / expected.mean - 1)).toBeLessThan(1e-12);
      // NumAcc4 as doubles holds its tenths to 8 digits only: 10000000.1 − 10000000 is 0.09999999962747097.
      const tolerance = id === 'strd-numacc4' ? 2e-8 : 1e-12;
      expect(Math.abs(sampleDeviation(values) / expected.sd - 1)).toBeLessThan(tolerance);
    });
  },
);

const instruments = published('strd-sirstv');
test(cite(instruments), () => {
  const groups = readingsBy(instruments.inputs.file, 'instrument').flat();
  const { f, within } = oneWayAnalysis(groups);
  expect(Math.abs(f - instruments.expected.F)).toBeLessThan(1e-9);
  expect(Math.abs(Math.sqrt(within.meanSquare) - instruments.expected.residual_sd)).toBeLessThan(1e-9);
});

const worksheet = published('anova-4x10');
test(cite(worksheet), () => {
  const groups = readingsBy(worksheet.inputs.file, 'group').flat();
  const { f, p, within } = oneWayAnalysis(groups);
  const { expected } = worksheet;
  expect(Math.abs(f - expected.F)).toBeLessThan(1e-6);
  expect(Math.abs(p - expected.p)).toBeLessThan(1e-6);
  expect(Math.abs(Math.sqrt(within.meanSquare) - expected.s_repeatability)).toBeLessThan(1e-7);
  expect(Math.abs(sampleDeviation(groups.map(mean)) - expected.s_reproducibility)).toBeLessThan(1e-7);
  groups.forEach((group, place) => {
    expect(Math.abs(sampleDeviation(group) - expected.group_sd[place])).toBeLessThan(1e-9);
  });
  // One part read by four persons: the same repeatability.
  expect(analyseStudy(groups.map((group) => [group])).repeatability).toBeCloseTo(
    Math.sqrt(within.meanSquare),
    12,
  );
});

const days = published('gum-h5');
test(cite(days), () => {
  const { day_means_V: means } = days.inputs;
  expect(Math.abs(mean(means) - days.expected.mean_V)).toBeLessThan(5e-7);
  expect(Math.abs(sampleDeviation(means) * 1e6 - days.expected.s_between_uV)).toBeLessThan(0.5);
});
