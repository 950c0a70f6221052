import { describe, expect, test } from 'vitest';
import { parseDecimal, toNumber } from '../../src/maths/decimal.js';
import {
  areTorquesApart,
  newtonMetres,
  type TorqueRange,
  type TorqueUnit,
  torqueIn,
} from '../../src/maths/torque.js';

const end = (text: string, unit: TorqueUnit) => ({ value: parseDecimal(text)!, unit });
const range = (low: string, high: string, unit: TorqueUnit): TorqueRange => ({
  low: end(low, unit),
  high: end(high, unit),
});
const one = (text: string, unit: TorqueUnit) => range(text, text, unit);

/** NIST SP 811 (2008), Appendix B.8: factors to N·m, as printed to seven figures; kgf·m exact. */
describe('NIST SP 811, B.8', () => {
  test.each([
    ['lb·ft', 1.355818, 5e-7],
    ['lb·in', 0.1129848, 5e-8],
    ['kgf·m', 9.80665, 0],
    ['N·m', 1, 0],
  ] as const)('%s', (unit, printed, tolerance) => {
    const found = toNumber(newtonMetres(end('1', unit)));
    expect(Math.abs(found - printed)).toBeLessThanOrEqual(tolerance);
  });

  test('a pound-foot is exact: 0.45359237 kg, 9.80665 m/s², 0.3048 m', () => {
    expect(toNumber(newtonMetres(end('1', 'lb·ft')))).toBeCloseTo(1.355_817_948_331_4, 13);
    expect(torqueIn(end('12', 'lb·in'), 'lb·ft')).toBe(1);
  });
});

test('a torque in its own unit is the number that was typed', () => {
  expect(torqueIn(end('72', 'lb·ft'), 'lb·ft')).toBe(72);
});

test.each([
  // TM 10-3930-653, p. 4-35: 10 to 11 kgf·m, 72 to 80 lb·ft, 98 to 108 N·m.
  ['as printed there', range('10', '11', 'kgf·m'), range('72', '80', 'lb·ft'), false],
  ['as printed there', range('98', '108', 'N·m'), range('72', '80', 'lb·ft'), false],
  ['as printed there', range('10', '11', 'kgf·m'), range('98', '108', 'N·m'), false],
  ['a digit of one end changed', range('10', '11', 'kgf·m'), range('72', '90', 'lb·ft'), true],
  ['a digit of the other', range('98', '108', 'N·m'), range('27', '80', 'lb·ft'), true],
  ['the units exchanged', range('98', '108', 'lb·ft'), range('72', '80', 'N·m'), true],
  ['pound-inches for pound-feet', one('98', 'N·m'), one('72', 'lb·in'), true],
  ['a range against a number', range('98', '108', 'N·m'), one('72', 'lb·ft'), true],
  // Half a step of lb·ft is 0.678 N·m: 72 lb·ft = 97.619 N·m.
  ['within half a step', one('98.2', 'N·m'), one('72', 'lb·ft'), false],
  ['beyond half a step', one('98.3', 'N·m'), one('72', 'lb·ft'), true],
  // 72.0 lb·ft is typed to a tenth: half a step is 0.068 N·m, and that of 98 N·m is 0.5.
  ['the coarser counts', one('98', 'N·m'), one('72.0', 'lb·ft'), false],
  ['both fine', one('98.0', 'N·m'), one('72.0', 'lb·ft'), true],
])('%s: %o and %o', (_, a, b, isApart) => {
  expect(areTorquesApart(a, b)).toBe(isApart);
  expect(areTorquesApart(b, a)).toBe(isApart);
});
