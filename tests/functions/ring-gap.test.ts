import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

// TM 5-6115-593-34, p. 1-9: .003 in more gap for each .001 in of wear.
test('each .001 in of wear opens a gap by the printed .003 in', () => {
  const grown = evaluate('=RING_GAP_IN(0.01, 4, 4.001)', [], { lengthUnit: 'in' }) as number;
  expect(grown - 0.01).toBeCloseTo(0.003, 3);
  expect(grown).toBeCloseTo(0.01 + Math.PI * 0.001, 7);
});

// TM 5-3825-229-14&P, p. 6-24: a bore 0.03 mm under closes the gap by 0.08 to 0.094 mm.
test('a bore 0.03 mm under closes the gap as printed', () => {
  const less = 0.4 - (evaluate('=RING_GAP_IN(0.4, 100, 99.97)') as number);
  expect(less).toBeGreaterThan(0.08);
  expect(less).toBeCloseTo(0.094, 3);
  expect(less).toBeCloseTo(Math.PI * 0.03, 5);
});

test('the ends of a ring that is too long would butt: the gap is negative', () => {
  expect(evaluate('=RING_GAP_IN(0.1, 100, 99.95)')).toBeCloseTo(0.1 - Math.PI * 0.05, 6);
});
