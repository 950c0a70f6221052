import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

test.each([
  ['the gauge is of steel where nothing is said', '66.02, 30, 23', '66.02, 30, 23, 11.5'],
  ['and where its cell is blank', '66.02, 30, 23, Cells!A1', '66.02, 30, 23, 11.5'],
  ['at 20 °C expansions do not matter', '66.02, 20, 23, 0', '66.02, 20, 0, 23'],
])('%s', (_words, one, other) => {
  const found = evaluate(`=AT_20C(${one})`);
  expect(found).toBeTypeOf('number');
  expect(found).toBe(evaluate(`=AT_20C(${other})`));
});

test('a warm aluminium part is smaller at 20 °C, a cold one larger', () => {
  // 66.02·1.000115/1.00023 = 66.0124094… and 66.02·0.999885/0.99977 = 66.0275940…
  expect(evaluate('=AT_20C(66.02, 30, 23)')).toBe(66.012409);
  expect(evaluate('=AT_20C(66.02, 10, 23)')).toBe(66.027594);
});

test('68 °F is 20 °C', () => {
  expect(evaluate('=AT_20C(2.6, 68, 23)', [], { lengthUnit: 'in', temperatureUnit: 'F' })).toBe(2.6);
});
