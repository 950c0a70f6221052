/**
 * The propagated uncertainty against draws from the distributions of its inputs (JCGM 101:2008); `npm run
 * uncertainty` takes a million of them.
 */
import { describe, expect, test } from 'vitest';
import { drawsOf } from '../../scripts/simulate/draws.js';
import { clearanceComparison, formComparison, sizeComparison } from '../../scripts/simulate/monte-carlo.js';
import { SET_UPS } from '../../scripts/simulate/set-ups.js';
import { meanOfLargest } from '../../src/maths/order-statistics.js';

const DRAWS = 40_000;
/** Three standard deviations of a standard deviation of so many draws, and a little for tails. */
const WITHIN = 3 / Math.sqrt(2 * DRAWS) + 0.002;

describe('the law of propagation holds for sums', () => {
  test.each(SET_UPS)('clearance, $name', (setUp) => {
    const { propagated, deviation, bias } = clearanceComparison(setUp, drawsOf(3), DRAWS);
    expect(Math.abs(deviation / propagated - 1)).toBeLessThan(WITHIN);
    expect(Math.abs(bias) / propagated).toBeLessThan(4 / Math.sqrt(DRAWS));
  });

  test.each(SET_UPS)('size of four spots, $name', (setUp) => {
    const { propagated, deviation } = sizeComparison(setUp, drawsOf(4), DRAWS);
    expect(Math.abs(deviation / propagated - 1)).toBeLessThan(WITHIN);
  });
});

describe('differences of extremes', () => {
  const taper = (trueForm: number) =>
    formComparison('taper', SET_UPS[0]!, drawsOf(5), DRAWS, { stations: 2, angles: 1, trueForm });

  test('a taper of eight times its uncertainty is as the law says', () => {
    const { propagated, deviation, bias } = taper(8);
    expect(Math.abs(deviation / propagated - 1)).toBeLessThan(WITHIN);
    expect(Math.abs(bias) / propagated).toBeLessThan(0.03);
  });

  test('the taper of a true cylinder is |difference|: √(2/π) u too large, as the half-normal distribution has it', () => {
    const { propagated, deviation, bias } = taper(0);
    expect(bias / propagated).toBeCloseTo(Math.sqrt(2 / Math.PI), 1);
    expect(deviation / propagated).toBeCloseTo(Math.sqrt(1 - 2 / Math.PI), 1);
  });

  test.each([2, 3, 4, 5, 6])('the mean of the largest of %i standard normal values', (count) => {
    const draws = drawsOf(6);
    let sum = 0;
    for (let draw = 0; draw < DRAWS; draw++)
      sum += Math.max(...Array.from({ length: count }, () => draws.normal(1)));
    expect(Math.abs(sum / DRAWS - meanOfLargest(count))).toBeLessThan(0.02);
  });
});
