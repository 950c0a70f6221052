/**
 * Repeatability and reproducibility of a gauge by analysis of variance, where all repeats agree: no variation within,
 * so that F is infinite and its chance 0. The expected figures follow by hand from the formulas of AIAG, Measurement
 * Systems Analysis, 4th ed. (2010), appendix A. tests/engine checks the printed example of the same source.
 */
import { describe, expect, test } from 'vitest';
import { chanceOf } from '../../src/maths/analysis-of-variance.js';
import { analyseStudy, averageAndRange } from '../../src/maths/gauge-study.js';

const twice = (...parts: number[]) => parts.map((part) => [part, part]);

describe('repeats that agree', () => {
  const study = analyseStudy([twice(50, 50.1, 50.2), twice(50, 50.13, 50.18)]);

  test('the persons differ, the gauge repeats', () => {
    expect(study.isPooled).toBe(false);
    expect(study.repeatability).toBe(0);
    expect(study.reproducibility).toBeCloseTo(0.0178, 4);
    expect(Math.floor(study.categories!)).toBe(7);
  });

  test('F is infinite and chance gives it never', () => {
    expect(chanceOf(study.interaction, study.within)).toEqual({ f: Number.POSITIVE_INFINITY, p: 0 });
    expect(chanceOf(study.within, study.within)).toEqual({ f: 0, p: 1 });
  });

  test('persons who read alike have no interaction, whatever rounding leaves of it', () => {
    const alike = analyseStudy([twice(50, 50.1, 50.2), twice(50, 50.1, 50.2)]);
    expect(alike.isPooled).toBe(true);
    expect(alike).toMatchObject({ repeatability: 0, reproducibility: 0, gauge: 0 });
    expect(alike.categories).toBe(Number.POSITIVE_INFINITY);
    expect(averageAndRange([twice(50, 50.1, 50.2), twice(50, 50.1, 50.2)]).gauge).toBe(0);
  });
});
