import { describe, expect, test } from 'vitest';
import { exact } from '../../src/maths/decimal.js';
import { runningClearance, sizeAt20C } from '../../src/maths/expansion.js';

const size = (mm: number, celsius: number, part: number, gauge: number) =>
  sizeAt20C(exact(mm), exact(celsius), part, gauge);

describe('sizeAt20C', () => {
  test.each([
    ['at 20 °C nothing is corrected', 42.00301, 20, 23, 11.5, 42_003_010],
    ['one material, any temperature', 42.00301, 35, 11.5, 11.5, 42_003_010],
    // 66.02·(1 + 11.5e-6·10)/(1 + 23e-6·10) = 66.01240944…
    ['a warm aluminium bore by a steel gauge', 66.02, 30, 23, 11.5, 66_012_409],
    // 66.02·(1 − 11.5e-6·10)/(1 − 23e-6·10) = 66.02759404…
    ['the same bore, cold', 66.02, 10, 23, 11.5, 66_027_594],
    // 50/(1 + 10e-6·100) = 49.95004995…
    ['a gauge that does not grow', 50, 120, 10, 0, 49_950_050],
  ])('%s', (_words, mm, celsius, part, gauge, grain) => {
    expect(size(mm, celsius, part, gauge)).toBe(grain);
  });

  test('the reading is rounded once, after the correction', () => {
    // 42 000 000.48 + 4200.42 grains; the reading rounded first would give 42 004 200.
    expect(size(42.00000048, 30, 0, 10.001)).toBe(42_004_201);
    expect(size(42, 30, 0, 10.001)).toBe(42_004_200);
  });

  test('a temperature at which no part exists is refused', () => {
    expect(() => size(42, -1e6, 11.5, 0)).toThrow(RangeError);
  });
});

describe('runningClearance', () => {
  const at = (celsius: number, expansion: number) => ({ celsius: exact(celsius), expansion });

  test.each([
    ['both warm, the bore of aluminium', 5000, 6_000_000, at(80, 23), at(80, 11.5), 9140],
    ['only the journal warm', 5000, 6_000_000, at(20, 23), at(80, 11.5), 860],
    ['at 20 °C', 5000, 6_000_000, at(20, 23), at(20, 11.5), 5000],
    // 0.5·1·1e-6·1 000 000 = half a grain.
    ['half a grain opens away from zero', 10, 1_000_000, at(21, 0.5), at(20, 11.5), 11],
    ['half a grain closes towards zero', 10, 1_000_000, at(19, 0.5), at(20, 11.5), 10],
    ['a half below zero goes away from it', -10, 1_000_000, at(19, 0.5), at(20, 11.5), -11],
    // 23·0.7·5 = 80.5 exactly; in doubles 80.49999999999993.
    ['a half that doubles miss', 0, 5_000_000, at(20.7, 23), at(20, 11.5), 81],
  ])('%s', (_words, clearance, journal, bore, shaft, running) => {
    expect(runningClearance(clearance, journal, bore, shaft)).toBe(running);
  });
});
