import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

/** Three stations, two angles; the greatest taper is at the second angle, the greatest oval at the third station. */
const ROWS = [
  [42.0, 42.003],
  [42.002, 42.006],
  [42.001, 42.008],
];

test.each([
  ['JOURNAL_TAPER(Cells!A1:B3, 3)', 0.005],
  ['OUT_OF_ROUND(Cells!A1:B3, 3)', 0.007],
  // The same six readings as two stations of three angles: 42, 42.003, 42.002 and 42.006, 42.001, 42.008.
  ['JOURNAL_TAPER(Cells!A1:B3, 2)', 0.006],
  ['OUT_OF_ROUND(Cells!A1:B3, 2)', 0.007],
  // A column, station by station.
  ['JOURNAL_TAPER(Cells!A1:A3, 3)', 0.002],
  ['OUT_OF_ROUND(Cells!A1:A3, 1)', 0.002],
])('%s', (formula, value) => {
  expect(evaluate(`=${formula}`, ROWS)).toBe(value);
});

test('equal readings have a form of 0', () => {
  expect(evaluate('=JOURNAL_TAPER({42,42,42,42}, 2)')).toBe(0);
  expect(evaluate('=OUT_OF_ROUND({42,42,42,42}, 2)')).toBe(0);
});

test('a fraction of a station is refused', () => {
  expect(evaluate('=JOURNAL_TAPER({42,42,42,42}, 1.5)')).toEqual({
    error: 'NUM',
    message: 'JOURNAL_TAPER: stations is 1.5; expected a whole number from 1 to 1000',
  });
});
