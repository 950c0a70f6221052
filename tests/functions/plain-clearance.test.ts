import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

/** TM 55-1905-219-14-4: skirt 4.2428 to 4.2450, liner 4.2495 to 4.2511, clearance .0045 to .0083 in. */
test.each([
  ['the smallest liner with the largest skirt', 4.2495, 4.245, 0.0045],
  ['the largest liner with the smallest skirt', 4.2511, 4.2428, 0.0083],
])('%s closes the printed range', (_words, liner, skirt, clearance) => {
  expect(evaluate(`=PLAIN_CLEARANCE(${liner}, ${skirt})`, [], { lengthUnit: 'in' })).toBe(clearance);
});

test('of ranges the means count', () => {
  const cells = [
    [22.01, 22.012],
    [21.98, 21.982],
  ];
  expect(evaluate('=PLAIN_CLEARANCE(Cells!A1:B1, Cells!A2:B2)', cells)).toBe(0.03);
});
