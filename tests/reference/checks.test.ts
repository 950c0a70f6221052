import { describe, expect, test } from 'vitest';
import { agrees } from './checks/check.js';
import { NOT_TOUCHED, REFERENCE_CHECKS } from './checks/index.js';
import { items } from './published.js';

const contradicting = REFERENCE_CHECKS.filter(({ contradiction }) => contradiction);
const consistent = REFERENCE_CHECKS.filter(({ contradiction }) => !contradiction);

describe('what is printed is computed', () => {
  test.each(consistent)('$item, $what', (check) => {
    const computed = check.computed();
    expect(agrees(check, computed), `printed ${check.printed}, computed ${computed}`).toBe(true);
  });
});

describe('what does not follow from its own numbers is not reproduced, and is named', () => {
  test.each(contradicting)('$item, $what', (check) => {
    expect(agrees(check, check.computed())).toBe(false);
    expect(check.contradiction!()).not.toBe('');
  });
});

test('every item of the collection is checked, or is said not to touch the program', () => {
  const checked = new Set(REFERENCE_CHECKS.map(({ item }) => item));
  const both = items.filter(({ id }) => checked.has(id) === id in NOT_TOUCHED);
  expect(both.map(({ id }) => id)).toEqual([]);
  expect(Object.keys(NOT_TOUCHED).filter((id) => !items.some((item) => item.id === id))).toEqual([]);
});

test('agreement is to the tolerance and no further', () => {
  const check = { ...REFERENCE_CHECKS[0]!, printed: [1, 2], tolerance: 0.1 };
  expect(agrees(check, [1.05, 1.95])).toBe(true);
  expect(agrees(check, [1.05, 2.15])).toBe(false);
  expect(agrees(check, [1])).toBe(false);
  expect(agrees({ ...check, printed: 'ok' }, 'not')).toBe(false);
});
