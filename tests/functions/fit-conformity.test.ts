import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['one grain below min', '0.019999, 0.05, 0.02, 0.06', 'tight'],
  ['one grain above max', '0.03, 0.060001, 0.02, 0.06', 'loose'],
  ['above max with a service limit', '0.03, 0.060001, 0.02, 0.06, 0, 0.1', 'within service limit'],
  ['on the service limit', '0.03, 0.1, 0.02, 0.06, 0, 0.1', 'within service limit'],
  ['above the service limit', '0.03, 0.100001, 0.02, 0.06, 0, 0.1', 'loose'],
  ['a service limit below max rules', '0.03, 0.055, 0.02, 0.06, 0, 0.05', 'loose'],
  ['the guard of 2 µm is 3.29 µm: reached', '0.02329, 0.05671, 0.02, 0.06, 0.002', 'in range'],
  ['the guard of 2 µm is 3.29 µm: missed', '0.023289, 0.05671, 0.02, 0.06, 0.002', 'undecided'],
  ['outside by just the guard', '0.01671, 0.05, 0.02, 0.06, 0.002', 'undecided'],
  ['outside by more than the guard', '0.016709, 0.05, 0.02, 0.06, 0.002', 'tight'],
  ['at 50 % there is no guard', '0.02, 0.06, 0.02, 0.06, 0.002, , 50', 'in range'],
  ['a negative min', '-0.005, 0.01, -0.01, 0.02', 'in range'],
  ['min and max may be one', '0.02, 0.02, 0.02, 0.02', 'in range'],
])('%s', (_words, given, status) => {
  expect(evaluate(`=FIT_STATUS(${given})`)).toBe(status);
});

test.each([
  [
    'FIT_STATUS(0.05, 0.04, 0.02, 0.06)',
    'FIT_STATUS: tightest 0.05 lies above loosest 0.04; expected tightest at or below loosest',
  ],
  [
    'CHANCE_IN_RANGE(0.05, 0.04, 0, 0.02, 0.06)',
    'CHANCE_IN_RANGE: tightest 0.05 lies above loosest 0.04; expected tightest at or below loosest',
  ],
  [
    'CHANCE_IN_RANGE(0.04, 0.04, 0, 0.06, 0.02)',
    'CHANCE_IN_RANGE: min 0.06 lies above max 0.02; expected min at or below max',
  ],
])('%s is refused', (formula, message) => {
  expect(evaluate(`=${formula}`)).toEqual({ error: 'NUM', message });
});

test.each([
  ['0.02, 0.02, 0.001, 0.02, 0.06', 0.5],
  ['0.01, 0.07, 0.001, 0.02, 0.06', 0],
  ['0.03, 0.05, 0.01, 0.02, 0.06', 0.6827],
  ['0.02, 0.060001, 0, 0.02, 0.06', 0],
])('CHANCE_IN_RANGE(%s)', (given, chance) => {
  expect(evaluate(`=CHANCE_IN_RANGE(${given})`) as number).toBeCloseTo(chance, 4);
});

test('the unit of the book does not change a verdict or a chance', () => {
  const inches = { lengthUnit: 'in' } as const;
  expect(evaluate('=FIT_STATUS(0.0009, 0.0024, 0.0008, 0.0026, 0.0001)', [], inches)).toBe('undecided');
  expect(evaluate('=FIT_STATUS(0.0010, 0.0024, 0.0008, 0.0026, 0.0001)', [], inches)).toBe('in range');
  expect(evaluate('=CHANCE_IN_RANGE(0.0026, 0.0026, 0.0001, 0.0008, 0.0026)', [], inches)).toBe(0.5);
});
