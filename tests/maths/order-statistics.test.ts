/** Extremes of normal values, against drawn ones and against printed tables. */
import { describe, expect, test } from 'vitest';
import { deviationOfLargest, meanOfLargest, widestRange } from '../../src/maths/order-statistics.js';

/** mulberry32: a small generator with a seed. */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function normals(seed: number): () => number {
  const random = uniform(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

const DRAWS = 60_000;

describe.each([1, 2, 3, 4, 6, 10, 12])('the largest of %i values', (count) => {
  const draw = normals(count);
  const largest = Array.from({ length: DRAWS }, () => {
    let most = Number.NEGATIVE_INFINITY;
    for (let each = 0; each < count; each++) most = Math.max(most, draw());
    return most;
  });
  const mean = largest.reduce((sum, value) => sum + value, 0) / DRAWS;
  const deviation = Math.sqrt(largest.reduce((sum, value) => sum + (value - mean) ** 2, 0) / DRAWS);

  test('lies as far above the mean as drawn ones do', () => {
    // Four standard errors of the mean of the draws.
    expect(Math.abs(meanOfLargest(count) - mean)).toBeLessThan(4 / Math.sqrt(DRAWS));
  });

  test('scatters as they do', () => {
    expect(Math.abs(deviationOfLargest(count) - deviation)).toBeLessThan(4 / Math.sqrt(DRAWS));
  });
});

test('beyond the table the integral goes on where it ends: 1.5864 for 11 (Teichroew 1956, from memory)', () => {
  expect(meanOfLargest(11)).toBeCloseTo(1.5864, 3);
});

test.each([
  [1, 3],
  [3, 3],
  [2, 4],
])('of %i groups of %i alike spots one range in twenty is wider', (groups, count) => {
  const draw = normals(100 * groups + count);
  const limit = widestRange(0.95, groups, count);
  let wider = 0;
  for (let time = 0; time < 20_000; time++) {
    let widest = 0;
    for (let group = 0; group < groups; group++) {
      const values = Array.from({ length: count }, draw);
      widest = Math.max(widest, Math.max(...values) - Math.min(...values));
    }
    if (widest > limit) wider += 1;
  }
  // Four standard errors of a share of 5 %.
  expect(Math.abs(wider / 20_000 - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / 20_000));
});

test('two spots that differ by the limit err to one side in half of the cases', () => {
  expect(widestRange(0.95, 1, 2)).toBeCloseTo(Math.SQRT2 * 1.6449, 3);
});
