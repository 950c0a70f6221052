import { describe, expect, test } from 'vitest';
import {
  chanceInRange,
  fitVerdict,
  type LimitCheck,
  outcomeOf,
  partVerdict,
} from '../../src/maths/conformity.js';

const even = (guard: number) => ({ inside: guard, outside: guard });

describe('fitVerdict', () => {
  const LIMITS = { min: 200, max: 600 };
  const WORN = { ...LIMITS, serviceLimit: 1000 };
  test.each([
    ['on both limits', 200, 600, LIMITS, 0, 'in range'],
    ['one grain below min', 199, 600, LIMITS, 0, 'tight'],
    ['one grain above max', 200, 601, LIMITS, 0, 'loose'],
    ['tight comes before loose', 199, 601, LIMITS, 0, 'tight'],
    ['inside by just the guard', 230, 570, LIMITS, 30, 'in range'],
    ['one grain less than the guard inside min', 229, 570, LIMITS, 30, 'undecided'],
    ['one grain less than the guard inside max', 230, 571, LIMITS, 30, 'undecided'],
    ['below min by just the guard', 170, 500, LIMITS, 30, 'undecided'],
    ['below min by more than the guard', 169, 500, LIMITS, 30, 'tight'],
    ['above max by just the guard', 300, 630, LIMITS, 30, 'undecided'],
    ['above max by more than the guard', 300, 631, LIMITS, 30, 'loose'],
    ['above max, a service limit given', 300, 631, WORN, 30, 'within service limit'],
    ['above max by just the guard, a service limit given', 300, 630, WORN, 30, 'undecided'],
    ['below the service limit by just the guard', 300, 970, WORN, 30, 'within service limit'],
    ['below the service limit by less', 300, 971, WORN, 30, 'undecided'],
    ['above the service limit by just the guard', 300, 1030, WORN, 30, 'undecided'],
    ['above the service limit by more', 300, 1031, WORN, 30, 'loose'],
    ['on the service limit', 200, 1000, WORN, 0, 'within service limit'],
    ['on max, a service limit given', 200, 600, WORN, 0, 'in range'],
    ['worn at one end, too near min at the other', 229, 700, WORN, 30, 'undecided'],
    ['a negative min', -10, 50, { min: -10, max: 50 }, 0, 'in range'],
  ] as const)('%s', (_words, tightest, loosest, limits, guard, verdict) => {
    expect(fitVerdict({ tightest, loosest }, limits, even(guard))).toBe(verdict);
  });

  test.each([
    ['inside by the inside guard', 230, 570, LIMITS, 'in range'],
    ['below min by more than the inside guard, not the outside one', 160, 500, LIMITS, 'undecided'],
    ['below min by more than the outside guard', 149, 500, LIMITS, 'tight'],
    ['above max by just the outside guard', 300, 650, LIMITS, 'undecided'],
    ['above max by more', 300, 651, LIMITS, 'loose'],
    ['worn for certain, the service limit kept by the inside guard', 300, 970, WORN, 'within service limit'],
    ['worn by less than the outside guard', 300, 650, WORN, 'undecided'],
  ] as const)('guards of 30 and 50: %s', (_words, tightest, loosest, limits, verdict) => {
    expect(fitVerdict({ tightest, loosest }, limits, { inside: 30, outside: 50 })).toBe(verdict);
  });
});

describe('chanceInRange', () => {
  const LIMITS = { min: 200, max: 600 };
  test.each([
    ['the middle, two u to each side', 400, 400, 200, 0.6827],
    ['on a limit', 600, 600, 20, 0.5],
    ['a fit wider than its range', 100, 700, 20, 0],
    ['spread takes its share', 300, 500, 100, 0.6827],
  ])('%s', (_words, tightest, loosest, u, chance) => {
    expect(chanceInRange({ tightest, loosest }, LIMITS, u)).toBeCloseTo(chance, 4);
  });

  test('known exactly it is 1 or 0, the limits included', () => {
    expect(chanceInRange({ tightest: 200, loosest: 600 }, LIMITS, 0)).toBe(1);
    expect(chanceInRange({ tightest: 199, loosest: 600 }, LIMITS, 0)).toBe(0);
    expect(chanceInRange({ tightest: 200, loosest: 601 }, LIMITS, 0)).toBe(0);
  });
});

const check = (side: LimitCheck['side'], value: number | undefined, guard = 10): LimitCheck => ({
  quantity: 'size',
  limitName: 'limit',
  limit: 100,
  side,
  value,
  guards: even(guard),
});

test.each([
  ['at least', 110, 'passes'],
  ['at least', 109, 'undecided'],
  ['at least', 90, 'undecided'],
  ['at least', 89, 'fails'],
  ['at most', 90, 'passes'],
  ['at most', 91, 'undecided'],
  ['at most', 110, 'undecided'],
  ['at most', 111, 'fails'],
  ['at most', undefined, 'undecided'],
] as const)('%s 100 with a guard of 10: %s %s', (side, value, outcome) => {
  expect(outcomeOf(check(side, value))).toBe(outcome);
});

test('on a limit without a guard a part passes', () => {
  expect(outcomeOf(check('at least', 100, 0))).toBe('passes');
  expect(outcomeOf(check('at most', 100, 0))).toBe('passes');
});

test.each([
  ['nothing to check', [], 'no limits'],
  ['all pass', [check('at most', 0), check('at least', 200)], 'within limits'],
  ['one undecided', [check('at most', 0), check('at least', 105)], 'undecided'],
  ['one fails, one cannot be formed', [check('at most', 200), check('at most', undefined)], 'beyond limits'],
  ['one passes, one cannot be formed', [check('at most', 0), check('at most', undefined)], 'undecided'],
])('partVerdict: %s', (_words, checks, verdict) => {
  expect(partVerdict(checks)).toBe(verdict);
});
