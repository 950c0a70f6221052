import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['on both limits', '42.012, 42, , , 42, 42.012', 'within limits'],
  ['one grain below', '42.012, 41.999999, , , 42, 42.012', 'beyond limits'],
  ['one grain above', '42.012001, 42, , , 42, 42.012', 'beyond limits'],
  ['only a lower limit', '50, 42, , , 42', 'within limits'],
  ['inside by just the guard', '42.011, 42.001, , , 42, 42.012, , , 0.001', 'within limits'],
  ['inside by less', '42.011001, 42.001, , , 42, 42.012, , , 0.001', 'undecided'],
  ['outside by just the guard', '42.013, 42.001, , , 42, 42.012, , , 0.001', 'undecided'],
  ['outside by more', '42.013001, 42.001, , , 42, 42.012, , , 0.001', 'beyond limits'],
  ['the guard of form is its own', '42.005, 42.005, 0.004, 0, , , 0.005, , 0.1, 0.001', 'within limits'],
  ['form nearer than its guard', '42.005, 42.005, 0.004001, 0, , , 0.005, , 0, 0.001', 'undecided'],
  ['a limit of form of zero', '42, 42, 0, 0, , , 0, 0', 'within limits'],
  ['more than a limit of form of zero', '42, 42, 0.000001, 0, , , 0, 0', 'beyond limits'],
  ['a limit without its value', ', , , , 42, 42.012', 'undecided'],
  ['outside by just the guard there', '42.014, 42.001, , , 42, 42.012, , , 0.001, , 0.002', 'undecided'],
  ['outside by more than that', '42.014001, 42.001, , , 42, 42.012, , , 0.001, , 0.002', 'beyond limits'],
  [
    'inside it is the other that counts',
    '42.011, 42.001, , , 42, 42.012, , , 0.001, , 0.002',
    'within limits',
  ],
  ['out of round by its own', '42, 42, 0.008, 0, , , 0.005, 0.005, , 0.001, , 0.003, 0.001', 'undecided'],
  ['the taper by its own', '42, 42, 0, 0.008, , , 0.005, 0.005, , 0.001, , 0.001, 0.002', 'beyond limits'],
  [
    'a guard outside left blank is that inside',
    '42, 42, 0.007, 0, , , 0.005, , , 0.001, , ""',
    'beyond limits',
  ],
  ['no limit, no value', ', , , ', 'no limits'],
])('%s', (_words, given, status) => {
  expect(evaluate(`=PART_STATUS(${given})`)).toBe(status);
});
