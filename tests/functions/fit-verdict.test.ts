import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

// Guards of 3 µm inside a limit and 5 µm outside it.
const GUARDS = '0.003, 0.005';

test.each([
  ['inside both limits by just the guard', '0.023, 0.057, 0.02, 0.06', '', 'in range'],
  ['inside min by a grain less', '0.022999, 0.057, 0.02, 0.06', '', 'undecided'],
  ['inside max by a grain less', '0.023, 0.057001, 0.02, 0.06', '', 'undecided'],
  ['under min by just the guard outside', '0.015, 0.05, 0.02, 0.06', '', 'undecided'],
  ['under min by a grain more', '0.014999, 0.05, 0.02, 0.06', '', 'tight'],
  ['over max by just the guard outside', '0.03, 0.065, 0.02, 0.06', '', 'undecided'],
  ['over max by a grain more', '0.03, 0.065001, 0.02, 0.06', '', 'loose'],
  ['the same under a service limit', '0.03, 0.065001, 0.02, 0.06', ', 0.1', 'within service limit'],
  ['over max by the guard, a service limit typed', '0.03, 0.065, 0.02, 0.06', ', 0.1', 'undecided'],
  ['inside the service limit by just the guard', '0.03, 0.097, 0.02, 0.06', ', 0.1', 'within service limit'],
  ['inside it by a grain less', '0.03, 0.097001, 0.02, 0.06', ', 0.1', 'undecided'],
  ['over it by just the guard outside', '0.03, 0.105, 0.02, 0.06', ', 0.1', 'undecided'],
  ['over it by a grain more', '0.03, 0.105001, 0.02, 0.06', ', 0.1', 'loose'],
  ['an empty text is no service limit', '0.03, 0.065001, 0.02, 0.06', ', ""', 'loose'],
  ['a negative min', '-0.007, 0.01, -0.01, 0.02', '', 'in range'],
])('%s', (_words, given, serviceLimit, verdict) => {
  expect(evaluate(`=FIT_VERDICT(${given}, ${GUARDS}${serviceLimit})`)).toBe(verdict);
});

test.each([
  [
    'FIT_VERDICT(0.05, 0.04, 0.02, 0.06, 0, 0)',
    'FIT_VERDICT: tightest 0.05 lies above loosest 0.04; expected tightest at or below loosest',
  ],
  [
    'FIT_VERDICT(0.04, 0.04, 0.06, 0.02, 0, 0)',
    'FIT_VERDICT: min 0.06 lies above max 0.02; expected min at or below max',
  ],
  [
    'FIT_VERDICT(0.04, 0.04, 0.02, 0.06, 0, -0.001)',
    'FIT_VERDICT: guard_outside is -0.001; expected a length in mm of 0 or more',
  ],
])('%s is refused', (formula, message) => {
  expect(evaluate(`=${formula}`)).toEqual({ error: 'NUM', message });
});

test('with guards of one width it says what FIT_STATUS says of their uncertainty', () => {
  // z·2 µm = 3.290 µm at 95 %.
  for (const tightest of [0.016709, 0.01671, 0.02, 0.023289, 0.02329, 0.04]) {
    expect(evaluate(`=FIT_VERDICT(${tightest}, 0.05, 0.02, 0.06, 0.00329, 0.00329)`)).toBe(
      evaluate(`=FIT_STATUS(${tightest}, 0.05, 0.02, 0.06, 0.002)`),
    );
  }
});
