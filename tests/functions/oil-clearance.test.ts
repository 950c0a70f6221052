import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

const CELLS = [
  [45.012, 45.014, 1.4875, 42.002],
  [45.013, 45.0135, 1.4885, 42.001],
];

test.each([
  [
    'a block of spots counts as one part',
    'SHELL_CLEARANCE(Cells!A1:B2, Cells!C1, Cells!C2, Cells!D1:D2)',
    // 45.013125 − 1.4875 − 1.4885 − 42.0015.
    0.035625,
  ],
  ['a column of walls', 'TIGHTEST_CLEARANCE(Cells!A1:B2, Cells!C1:C2, Cells!C1:C2, Cells!D1:D2)', 0.033],
  [
    'smallest walls are the loosest',
    'LOOSEST_CLEARANCE(Cells!A1:B2, Cells!C1:C2, Cells!C1:C2, Cells!D1:D2)',
    0.038,
  ],
  ['numbers and ranges together', 'TIGHTEST_CLEARANCE(45.02, Cells!C1:C2, 1.5, Cells!D1)', 0.0295],
  ['an array typed into the formula', 'LOOSEST_CLEARANCE({45.01,45.02}, 1.5, 1.5, 42)', 0.02],
])('%s', (_words, formula, clearance) => {
  expect(evaluate(`=${formula}`, CELLS)).toBe(clearance);
});

test('the two walls may change places', () => {
  const one = evaluate('=SHELL_CLEARANCE(45.0125, 1.4875, 1.4885, 42.0015)');
  expect(evaluate('=SHELL_CLEARANCE(45.0125, 1.4885, 1.4875, 42.0015)')).toBe(one);
});

test('in inches a fifty-millionth of an inch is kept', () => {
  const formula = '=SHELL_CLEARANCE(1.65365, 0.06, 0.06, 1.53205)';
  expect(evaluate(formula, [], { lengthUnit: 'in' }, { precisionRounding: 17 })).toBe(0.0016);
});
