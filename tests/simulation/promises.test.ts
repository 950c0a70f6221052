/**
 * What the verdicts promise, on small samples of the simulation; `npm run simulate` takes larger ones.
 *
 * Source of the promise: ISO 14253-1:2017, a proved conformity or non-conformity is wrong in at most 5 % of the cases on
 * a limit.
 */
import { describe, expect, test } from 'vitest';
import { promisesOf } from '../../scripts/simulate/promises.js';
import { SET_UPS } from '../../scripts/simulate/set-ups.js';

const SIZES = { even: 2000, limit: 2000 };
/** 5 % of them, and three standard deviations of that count. */
const MOST = 0.05 * SIZES.limit + 3 * Math.sqrt(SIZES.limit * 0.05 * 0.95);

describe.each(SET_UPS)('$name', (setUp) => {
  const { even, onMin, onMax } = promisesOf(setUp, 7, SIZES);

  test('a fit on a limit is seldom called in range', () => {
    expect(onMin.inRange).toBeLessThanOrEqual(MOST);
    expect(onMax.inRange).toBeLessThanOrEqual(MOST);
  });

  test('nor is it often called tight or loose', () => {
    expect(onMin.refused).toBeLessThanOrEqual(MOST);
    expect(onMax.refused).toBeLessThanOrEqual(MOST);
  });

  test('every fit has a verdict, and none far from the truth', () => {
    expect(even.inRange + even.tight + even.loose + even.undecided).toBe(SIZES.even);
    expect(even.falseInRange).toBeLessThanOrEqual(0.02 * SIZES.even);
    // A fit of which the truth is known to be far inside is not missed either.
    expect(even.deciles[9]!.inside).toBeGreaterThanOrEqual(0.9 * even.deciles[9]!.fits);
  });
});

test('a chance is a frequency where a part has one spot', () => {
  const setUp = SET_UPS.find(({ oneSpot }) => oneSpot)!;
  const { even } = promisesOf(setUp, 8, { even: 6000, limit: 0 });
  // Readings in whole micrometres give few different chances, so that some tenths are empty.
  const filled = [...even.deciles.entries()].filter(([, { fits }]) => fits >= 50);
  expect(filled.length).toBeGreaterThanOrEqual(7);
  for (const [tenth, { fits, inside, chances }] of filled) {
    const expected = chances / fits;
    const allowed = 4 * Math.sqrt((expected * (1 - expected)) / fits) + 0.03;
    expect(Math.abs(inside / fits - expected), `${tenth * 10} % and more, ${fits} fits`).toBeLessThan(
      allowed,
    );
  }
});

test('the simulation can find a broken promise: gauges worse than the workbook says', () => {
  const setUp = SET_UPS.find(({ oneSpot }) => oneSpot)!;
  const stated = setUp.gauges.map((gauge) => ({ ...gauge, maxError: gauge.maxError / 5 }));
  const { onMin, onMax } = promisesOf(setUp, 7, SIZES, stated);
  expect(onMin.inRange).toBeGreaterThan(MOST);
  expect(onMax.inRange).toBeGreaterThan(MOST);
});
