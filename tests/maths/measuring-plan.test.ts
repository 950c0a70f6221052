import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitVerdict, type LimitCheck, outcomeOf } from '../../src/maths/conformity.js';
import {
  chanceCheckDecided,
  chanceFitDecided,
  guardThatDecides,
  maxErrorFor,
  readingsNeeded,
  spotVarianceWith,
} from '../../src/maths/measuring-plan.js';
import { clearanceVariance } from '../../src/maths/uncertainty.js';

/** Shifts of a normal distribution at evenly spread probabilities, made without its distribution function. */
function normalShifts(deviation: number): number[] {
  // The density at 2001 places over ± 6 standard deviations, each as often as it is dense.
  const shifts: number[] = [];
  for (let place = -1000; place <= 1000; place++) {
    const z = (6 * place) / 1000;
    const often = Math.round(400 * Math.exp(-(z ** 2) / 2));
    for (let time = 0; time < often; time++) shifts.push(z * deviation);
  }
  return shifts;
}

const LIMITS = { min: 2000, max: 6000 };

describe('the chance that a fit is decided', () => {
  test.each([
    ['near min', { tightest: 2100, loosest: 3000 }, LIMITS, 200, 150],
    ['on min', { tightest: 2000, loosest: 3000 }, LIMITS, 200, 300],
    ['near max', { tightest: 4000, loosest: 5950 }, LIMITS, 100, 90],
    ['wider than the range less its guards', { tightest: 2050, loosest: 5950 }, LIMITS, 300, 400],
    [
      'near the service limit',
      { tightest: 4000, loosest: 7900 },
      { ...LIMITS, serviceLimit: 8000 },
      250,
      200,
    ],
    [
      'near max, a service limit far off',
      { tightest: 4000, loosest: 6050 },
      { ...LIMITS, serviceLimit: 9000 },
      250,
      300,
    ],
  ])('%s: as the verdicts of shifted extremes', (_words, { tightest, loosest }, limits, guard, deviation) => {
    const shifts = normalShifts(deviation);
    const decided = shifts.filter(
      (shift) =>
        fitVerdict({ tightest: tightest + shift, loosest: loosest + shift }, limits, guard) !== 'undecided',
    );
    const chance = chanceFitDecided({ tightest, loosest }, limits, guard, deviation);
    expect(Math.abs(chance - decided.length / shifts.length)).toBeLessThan(4e-3);
    expect(chance).toBeGreaterThan(0.01);
    expect(chance).toBeLessThan(0.99);
  });

  test('readings that change nothing decide what the guard decides', () => {
    expect(chanceFitDecided({ tightest: 2100, loosest: 3000 }, LIMITS, 100, 0)).toBe(1);
    expect(chanceFitDecided({ tightest: 2100, loosest: 3000 }, LIMITS, 101, 0)).toBe(0);
  });
});

test('the chance that a check is decided: as the outcomes of shifted values', () => {
  const check: LimitCheck = {
    ...{ quantity: 'smallest', limitName: 'Journal min', limit: 5000, side: 'at least' },
    ...{ value: 5040, guard: 100 },
  };
  const shifts = normalShifts(80);
  const decided = shifts.filter(
    (shift) => outcomeOf({ ...check, value: 5040 + shift, guard: 60 }) !== 'undecided',
  );
  expect(Math.abs(chanceCheckDecided(check, 60, 80) - decided.length / shifts.length)).toBeLessThan(4e-3);
  expect(chanceCheckDecided({ ...check, value: undefined }, 60, 80)).toBe(0);
});

test('the guard that decides: with it the verdict is given, with a grain more it is not', () => {
  const length = fc.integer({ min: 0, max: 9000 });
  fc.assert(
    fc.property(
      length,
      length,
      fc.option(fc.integer({ min: 6000, max: 9000 }), { nil: undefined }),
      (a, b, serviceLimit) => {
        const extremes = { tightest: Math.min(a, b), loosest: Math.max(a, b) };
        const limits = { ...LIMITS, serviceLimit };
        const guard = guardThatDecides(extremes, limits);
        if (guard >= 0) expect(fitVerdict(extremes, limits, guard)).not.toBe('undecided');
        expect(fitVerdict(extremes, limits, Math.max(0, guard + 1))).toBe('undecided');
      },
    ),
    { numRuns: 2000, seed: 8 },
  );
});

describe('more readings', () => {
  const spots = [
    { repeats: 1, value: 5_000_000 },
    { repeats: 3, value: 5_000_000 },
  ];
  const gauge = { resolution: 0, repeatability: 120 };

  test('the spot that was read least has the largest variance until it has caught up', () => {
    expect(spotVarianceWith(spots, gauge, 0, 1)).toBe(120 ** 2);
    expect(spotVarianceWith(spots, gauge, 0, 2)).toBe(120 ** 2 / 2);
    expect(spotVarianceWith(spots, gauge, 0, 4)).toBe(120 ** 2 / 4);
  });

  test.each([
    [1, 0],
    [2, 1],
    [4, 4],
  ])('to %i of each spot takes %i', (repeats, readings) => {
    expect(readingsNeeded(spots, repeats)).toBe(readings);
  });
});

test('the max error that a variance allows gives that variance', () => {
  const part = (maxError: number) => ({
    ...{ size: 0, largest: 0, smallest: 0, spotVariance: 900 },
    systematic: [{ gauge: 'w', maxError }],
  });
  const none = { size: 0, largest: 0, smallest: 0, spotVariance: 400, systematic: [] };
  const varianceOf = (maxError: number) =>
    clearanceVariance({ bore: none, journal: none, upper: part(maxError), lower: part(maxError) });
  const wanted = 20_000;
  const allowed = maxErrorFor(wanted, varianceOf(300), 300, -2)!;
  expect(varianceOf(allowed)).toBeCloseTo(wanted, 6);
  expect(maxErrorFor(2_000, varianceOf(300), 300, -2)).toBeUndefined();
});
