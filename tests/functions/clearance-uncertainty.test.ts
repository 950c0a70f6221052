import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test('fractions of a grain are kept', () => {
  expect(
    evaluate('=CLEARANCE_UNCERTAINTY(0.000003, 0, 0, 0.000004)', [], {}, { precisionRounding: 17 }),
  ).toBeCloseTo(0.000005, 15);
});

test.each([
  ['mm', '', 0.007],
  ['in', '', 0.007],
  ['mm', ', FALSE()', 0.007],
  ['mm', ', TRUE()', Math.sqrt(0.002 ** 2 + 0.009 ** 2)],
  ['in', ', TRUE()', Math.sqrt(0.002 ** 2 + 0.009 ** 2)],
] as const)('in %s with%s', (lengthUnit, shared, u) => {
  const formula = `=CLEARANCE_UNCERTAINTY(0.002, 0.003, 0.006, 0${shared})`;
  expect(evaluate(formula, [], { lengthUnit }) as number).toBeCloseTo(u, 11);
});
