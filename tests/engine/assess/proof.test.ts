/** How far sets are proved the best. */
import { expect, test } from 'vitest';
import { gapOf, isProved } from '../../../src/engine/assess/proof.js';

const stage = (reached: number, bound: number) => ({
  ...{ aim: 'complete engines' as const, reached, bound, gapStays: undefined },
});
const matching = (...stages: ReturnType<typeof stage>[]) => ({
  ...{ fits: [], completeEngines: [], hopelessEngines: [], grid: undefined, stages },
});

test.each([
  [3, 3, 0],
  [3, 5, 2],
  [250, 100, 150],
])('what reached %i of a proven best of %i has a gap of %i', (reached, bound, gap) => {
  expect(gapOf(stage(reached, bound))).toBe(gap);
});

test.each([
  ['nothing was matched', undefined, true],
  ['every aim reached its best', matching(stage(3, 3), stage(1, 1)), true],
  ['one did not', matching(stage(3, 3), stage(1, 2)), false],
])('where %s', (_, found, isBest) => {
  expect(isProved({ matching: found })).toBe(isBest);
});
