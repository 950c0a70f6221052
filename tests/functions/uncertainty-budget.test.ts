import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['signs do not matter', '{0.0003,-0.0004}', 0.0005, 0.001],
  ['one contribution', '0.0003', 0.0003, 0.0006],
  ['an empty text is a blank', 'Cells!A1:B1', 0.0003, 0.0006],
  ['blanks only', 'Cells!A1:A2', '', ''],
  ['no error at all', '{0,0}', 0, 0],
  // u = 0.00000012 mm is 0.12 grains: 2u rounds to nothing, u does not.
  ['below the grain', '0.00000012', 0.00000012, 0],
])('%s', (_words, contributions, u, expanded) => {
  const cells = [['=""', 0.0003]];
  const found = evaluate(`=STANDARD_UNCERTAINTY(${contributions})`, cells);
  if (typeof u === 'number') expect(found as number).toBeCloseTo(u, 14);
  else expect(found).toBe(u);
  expect(evaluate(`=EXPANDED_UNCERTAINTY(${contributions})`, cells)).toBe(expanded);
});
