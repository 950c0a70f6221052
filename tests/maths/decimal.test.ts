import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  add,
  decimalText,
  divide,
  exact,
  exactDouble,
  multiply,
  ONE,
  parseDecimal,
  roundHalfAway,
  toNumber,
} from '../../src/maths/decimal.js';

describe('parseDecimal', () => {
  test.each([
    ['42.003', 42003n, 1000n],
    ['-1.5e-3', -15n, 10000n],
    ['+7', 7n, 1n],
    ['.5', 5n, 10n],
    ['5.', 5n, 1n],
    ['1E2', 100n, 1n],
    ['1e+21', 10n ** 21n, 1n],
    ['0', 0n, 1n],
  ])('%s', (text, numerator, denominator) => {
    expect(parseDecimal(text)).toEqual({ numerator, denominator });
  });

  test.each(['', '.', '-', 'e5', '1.2.3', '1,5', ' 1', '1 ', '0x10', 'NaN', 'Infinity', '1e9999'])(
    'refuses "%s"',
    (text) => {
      expect(parseDecimal(text)).toBeUndefined();
    },
  );
});

describe('exact', () => {
  test('is the decimal that names the double, not the double', () => {
    expect(exact(0.1)).toEqual({ numerator: 1n, denominator: 10n });
  });

  test('names every finite double', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 }), (value) => {
        const { numerator, denominator } = exact(value);
        expect(denominator > 0n).toBe(true);
        const digits = denominator.toString().length - 1;
        expect(Number(`${numerator}e-${digits}`) + 0).toBe(value + 0);
      }),
    );
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %f', (value) => {
    expect(() => exact(value)).toThrow(RangeError);
  });
});

describe('arithmetic', () => {
  test('0.1 + 0.2 is 0.3', () => {
    expect(toNumber(add(exact(0.1), exact(0.2)))).toBe(0.3);
  });

  test('a quotient keeps its denominator positive', () => {
    expect(divide(ONE, exact(-4))).toEqual({ numerator: -1n, denominator: 4n });
    expect(toNumber(divide(multiply(exact(3), exact(-2)), exact(-4)))).toBe(1.5);
  });

  test('refuses to divide by zero', () => {
    expect(() => divide(ONE, exact(0))).toThrow('division by zero');
  });
});

test.each([
  [0.5, 1],
  [-0.5, -1],
  [1.5, 2],
  [-2.5, -3],
  [0.49, 0],
  [-0.49, 0],
  [2.4999, 2],
  [-7, -7],
])('roundHalfAway of %f is %i', (value, rounded) => {
  expect(roundHalfAway(exact(value))).toBe(rounded);
});

describe('decimalText', () => {
  test.each([
    [4_200_300n, 100_000n, '42.003'],
    [-123n, 100_000n, '-0.00123'],
    [1n, 8n, '0.125'],
    [6n, 3n, '2'],
    [0n, 7n, '0'],
    [10n ** 21n, 1n, '1000000000000000000000'],
    [1n, 3n, undefined],
    [-420n, 254n, undefined],
  ])('%i/%i is %s', (numerator, denominator, text) => {
    expect(decimalText({ numerator, denominator })).toBe(text);
  });

  test('is read back as the same number', () => {
    fc.assert(
      fc.property(fc.bigInt(-(10n ** 20n), 10n ** 20n), fc.nat(30), (numerator, places) => {
        const read = parseDecimal(decimalText({ numerator, denominator: 10n ** BigInt(places) })!)!;
        expect(read.numerator * 10n ** BigInt(places)).toBe(numerator * read.denominator);
      }),
    );
  });
});

describe('exactDouble', () => {
  test.each([
    [209_998n, 5000n, 41.9996],
    [-1n, 10n, -0.1],
    [0n, 5n, 0],
    // More digits than a double has, no end, and no double.
    [12_345_678_901_234_567_891n, 10n ** 18n, undefined],
    [1n, 3n, undefined],
    [10n ** 400n, 1n, undefined],
  ])('of %i/%i', (numerator, denominator, double) => {
    expect(exactDouble({ numerator, denominator })).toBe(double);
  });

  test('is the double that an exact number was made of', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -1e15, max: 1e15 }), (value) => {
        expect(exactDouble(exact(value))).toBe(value + 0);
      }),
    );
  });
});
