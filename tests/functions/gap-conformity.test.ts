import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['0.12,0.14,0.1,0.2', 'in range'],
  ['0.08,0.14,0.1,0.2', 'tight'],
  ['0.12,0.24,0.1,0.2', 'loose'],
  ['0.12,0.24,,0.2', 'loose'],
  ['0.02,0.14,,0.2', 'in range'],
  ['0.12,0.94,0.1,', 'in range'],
])('by readings %s is %s', (values, verdict) => {
  expect(evaluate(`=GAP_VERDICT(${values},0.003,0.006)`)).toBe(verdict);
});

test.each([
  // Between the blades the gap may lie on either side of the limit.
  ['0.08,0.14,0.1,0.2', 'undecided'],
  ['0.08,0.09,0.1,0.2', 'tight'],
  ['0.08,0.095,0.1,0.2', 'undecided'],
  ['0.21,0.25,0.1,0.2', 'loose'],
  ['0.19,0.25,0.1,0.2', 'undecided'],
  ['0.12,0.14,0.1,0.2', 'in range'],
  [',0.09,0.1,0.2', 'tight'],
  [',0.15,0.1,0.2', 'undecided'],
  [',0.15,,0.2', 'in range'],
])('by feelers %s is %s', (values, verdict) => {
  expect(evaluate(`=FEELER_VERDICT(${values},0.003,0.006)`)).toBe(verdict);
});

test('worn: beyond max, within the service limit', () => {
  expect(evaluate('=FEELER_VERDICT(0.21,0.25,0.1,0.2,0.003,0.006,0.3)')).toBe('within service limit');
  expect(evaluate('=GAP_VERDICT(0.12,0.25,0.1,0.2,0.003,0.006,0.3)')).toBe('within service limit');
});
