/**
 * Readings in steps: how often a fit on a limit is called in range or tight depends on where the limit lies between two
 * steps, as the equation of scripts/simulate/places.ts has it; `npm run simulate` prints all places.
 */
import { describe, expect, test } from 'vitest';
import { placeCounts } from '../../scripts/simulate/places.js';
import { SET_UPS } from '../../scripts/simulate/set-ups.js';

const FITS = 8000;

describe.each(['the same, one spot a part', 'coarse gauges, one spot a part'])('%s', (name) => {
  const setUp = SET_UPS.find((own) => own.name === name)!;

  test.each([0, 0.1, 0.5, 0.9])('a limit %d of a step above a whole step', (place) => {
    const { inRange, refused, expected } = placeCounts(setUp, place, FITS, 60);
    for (const [found, share] of [
      [inRange, expected.inRange],
      [refused, expected.refused],
    ] as const) {
      // Four standard deviations of the count, and half a percent since the errors are not quite normal.
      const allowed = 4 * Math.sqrt((share * (1 - share)) / FITS) + 0.005;
      expect(Math.abs(found / FITS - share)).toBeLessThan(allowed);
    }
  });
});

test('the worst place and the best lie on either side of 5 %', () => {
  const setUp = SET_UPS.find(({ oneSpot }) => oneSpot)!;
  const [whole, nearlyNext] = [0, 0.9].map((place) => placeCounts(setUp, place, FITS, 61).inRange / FITS);
  expect(whole!).toBeLessThan(0.045);
  expect(nearlyNext!).toBeGreaterThan(0.06);
});
