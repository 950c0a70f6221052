import { describe, expect, test } from 'vitest';
import { exact, toNumber } from '../../src/maths/decimal.js';
import {
  fromCelsius,
  fromMm,
  grainOf,
  inUnit,
  isLengthUnit,
  isTemperatureUnit,
  snapToGrain,
  temperatureInUnit,
  toCelsius,
  toMm,
  unroundedGrains,
} from '../../src/maths/units.js';

describe('lengths', () => {
  test.each([
    [1, 'in', 25_400_000],
    [0.00001, 'in', 254],
    [0.000005, 'in', 127],
    [1.6536, 'in', 42_001_440],
    [36, 'µm', 36_000],
    [0.0005, 'µm', 1],
    [-0.0005, 'µm', -1],
    [42.003, 'mm', 42_003_000],
    [0, 'in', 0],
  ] as const)('%f %s is %i grains', (value, unit, grain) => {
    expect(grainOf(value, unit)).toBe(grain);
    expect(grainOf(exact(value), unit)).toBe(grain);
  });

  test('an inch is 25.4 mm exactly', () => {
    expect(toNumber(toMm(exact(1), 'in'))).toBe(25.4);
  });

  test.each(['mm', 'in', 'µm'] as const)('there and back in %s is the same exact length', (unit) => {
    const value = exact(1.65355);
    const back = fromMm(toMm(value, unit), unit);
    expect(back.numerator * value.denominator).toBe(value.numerator * back.denominator);
  });

  test.each([
    [42_003_000, 'mm', 42.003],
    [25_400_000, 'in', 1],
    [36_000, 'µm', 36],
  ] as const)('%i grains are %s %f', (grain, unit, value) => {
    expect(inUnit(grain, unit)).toBe(value);
    expect(snapToGrain(value, unit)).toBe(grain);
  });

  test('a small length keeps its fraction of a grain', () => {
    expect(unroundedGrains(0.00000025, 'mm')).toBeCloseTo(0.25, 12);
    expect(unroundedGrains(0.0000001, 'in')).toBeCloseTo(2.54, 12);
  });

  test('no number is no length', () => {
    expect(() => grainOf(Number.NaN, 'mm')).toThrow(RangeError);
  });
});

test.each([
  [68, 'F', 20],
  [-40, 'F', -40],
  [-459.67, 'F', -273.15],
  [21.5, 'C', 21.5],
] as const)('%f °%s is %f °C, and back', (value, unit, celsius) => {
  expect(toNumber(toCelsius(exact(value), unit))).toBe(celsius);
  expect(temperatureInUnit(celsius, unit)).toBe(value);
  expect(toNumber(fromCelsius(exact(celsius), unit))).toBe(value);
});

test('units are known by their spelling', () => {
  expect(['mm', 'in', 'µm', 'inch', 'cm', ''].map(isLengthUnit)).toEqual([
    true,
    true,
    true,
    false,
    false,
    false,
  ]);
  expect(['C', 'F', 'K', 'c'].map(isTemperatureUnit)).toEqual([true, true, false, false]);
});
