import { expect, test } from 'vitest';
import { normalProbability, normalQuantile } from '../../src/maths/normal.js';

test.each([
  [0, 0.5],
  [1, 0.841344746068543],
  [-1.96, 0.0249978951482204],
])('Φ(%f)', (z, probability) => {
  expect(normalProbability(z)).toBeCloseTo(probability, 12);
});

test.each([0.5, 0.6, 0.95, 0.975, 0.9999])('the quantile of %f leads back to it', (probability) => {
  expect(normalProbability(normalQuantile(probability))).toBeCloseTo(probability, 9);
});

test('half is at zero exactly', () => {
  expect(normalQuantile(0.5)).toBe(0);
});
