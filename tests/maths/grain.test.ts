import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grainOfMm, meanGrain, mmOfGrain, roundToWhole } from '../../src/maths/grain.js';

test.each([
  [42.003, 42_003_000],
  [42.0000005, 42_000_001],
  [-42.0000005, -42_000_001],
  [0.0000004, 0],
  [-0.0000004, 0],
  [0.00000049999, 0],
  [-0.035, -35_000],
  // As doubles these products lie beside the half that the decimals are on.
  [1.0000025, 1_000_003],
  [8.0000045, 8_000_005],
  [0.0001245, 125],
])('%f mm is %i grains', (mm, grain) => {
  expect(grainOfMm(mm)).toBe(grain);
});

test.each([
  [0.5, 1],
  [-0.5, -1],
  [2.5, 3],
  [-2.5, -3],
  [0.49999999999999994, 0],
  [-0.2, 0],
])('roundToWhole of %f is %i', (value, whole) => {
  expect(roundToWhole(value)).toBe(whole);
});

describe('meanGrain', () => {
  test.each([
    [[1, 2], 2],
    [[-1, -2], -2],
    [[-1, 2], 1],
    [[1, 1, 2], 1],
    [[1, 2, 2], 2],
    [[7], 7],
  ])('of %j is %i', (lengths, mean) => {
    expect(meanGrain(lengths)).toBe(mean);
  });

  test('of nothing does not exist', () => {
    expect(() => meanGrain([])).toThrow('the mean of no lengths');
  });

  test('is exact: twice the mean errs from twice the sum over n by at most one', () => {
    const lengths = fc.array(fc.integer({ min: -20_000_000, max: 20_000_000 }), {
      minLength: 1,
      maxLength: 60,
    });
    fc.assert(
      fc.property(lengths, (values) => {
        const sum = values.reduce((a, b) => a + b, 0);
        const excess = 2 * (meanGrain(values) * values.length - sum);
        expect(Math.abs(excess)).toBeLessThanOrEqual(values.length);
        // On a half, away from zero.
        if (Math.abs(excess) === values.length) expect(Math.sign(excess)).toBe(Math.sign(sum));
      }),
      { numRuns: 2000 },
    );
  });
});

test('grains and mm are one to one', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), (grain) => {
      expect(grainOfMm(mmOfGrain(grain))).toBe(grain);
    }),
  );
});
