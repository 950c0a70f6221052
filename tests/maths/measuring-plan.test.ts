import { describe, expect, test } from 'vitest';
import { fitVerdict, type LimitCheck, outcomeOf } from '../../src/maths/conformity.js';
import {
  chanceCheckDecided,
  chanceFitDecided,
  FINEST_GAUGE,
  maxErrorFor,
  readingsNeeded,
  readVarianceWith,
} from '../../src/maths/measuring-plan.js';

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

const even = (guard: number) => ({ inside: guard, outside: guard });
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
  ])(
    '%s: as the verdicts of shifted extremes',
    (_words, { tightest, loosest }, limits, inside, deviation) => {
      const guards = { inside, outside: inside + 60 };
      const shifts = normalShifts(deviation);
      const decided = shifts.filter(
        (shift) =>
          fitVerdict({ tightest: tightest + shift, loosest: loosest + shift }, limits, guards) !==
          'undecided',
      );
      const chance = chanceFitDecided({ tightest, loosest }, limits, guards, deviation);
      expect(Math.abs(chance - decided.length / shifts.length)).toBeLessThan(4e-3);
      expect(chance).toBeGreaterThan(0.01);
      expect(chance).toBeLessThan(0.99);
    },
  );

  test('readings that change nothing decide what the guard decides', () => {
    expect(chanceFitDecided({ tightest: 2100, loosest: 3000 }, LIMITS, even(100), 0)).toBe(1);
    expect(chanceFitDecided({ tightest: 2100, loosest: 3000 }, LIMITS, even(101), 0)).toBe(0);
  });
});

test('the chance that a check is decided: as the outcomes of shifted values', () => {
  const check: LimitCheck = {
    ...{ quantity: 'smallest', limitName: 'Journal min', limit: 5000, side: 'at least' },
    ...{ value: 5040, guards: even(100) },
  };
  const shifts = normalShifts(80);
  const decided = shifts.filter(
    (shift) =>
      outcomeOf({ ...check, value: 5040 + shift, guards: { inside: 60, outside: 90 } }) !== 'undecided',
  );
  expect(
    Math.abs(chanceCheckDecided(check, { inside: 60, outside: 90 }, 80) - decided.length / shifts.length),
  ).toBeLessThan(4e-3);
  expect(chanceCheckDecided({ ...check, value: undefined }, even(60), 80)).toBe(0);
});

describe('more readings', () => {
  const repeats = [1, 3];
  const gauge = { resolution: 0, repeatability: 120 };

  test.each([
    [1, 120 ** 2],
    [2, 120 ** 2 / 2],
    [4, 120 ** 2 / 4],
  ])('the spot that was read least counts: %i of each', (least, variance) => {
    expect(readVarianceWith(repeats, gauge, least)).toBe(variance);
  });

  test.each([
    [1, 0],
    [2, 1],
    [4, 4],
  ])('to %i of each spot takes %i', (least, readings) => {
    expect(readingsNeeded(repeats, least)).toBe(readings);
  });
});

describe('the max error that would decide', () => {
  test('is the greatest that does', () => {
    expect(maxErrorFor(3000, (maxError) => maxError <= 1234)).toBe(1234);
  });

  test('is not asked for where no workshop has such a gauge', () => {
    expect(maxErrorFor(3000, (maxError) => maxError < FINEST_GAUGE)).toBeUndefined();
    expect(maxErrorFor(FINEST_GAUGE, () => true)).toBeUndefined();
  });
});
