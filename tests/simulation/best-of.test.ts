/** A matching that may choose among rods on a limit makes a false set more often than one rod does. */
import { expect, test } from 'vitest';
import { bestOfCounts } from '../../scripts/simulate/best-of.js';
import { SET_UPS } from '../../scripts/simulate/set-ups.js';

const CASES = 1500;

test.each(['the same, one spot a part', 'gauges of poor repeatability, one spot a part'])('%s', (name) => {
  const { falseSets } = bestOfCounts(SET_UPS.find((setUp) => setUp.name === name)!, CASES, 70);
  expect(falseSets[1]).toBeLessThanOrEqual(CASES * 0.05 + 3 * Math.sqrt(CASES * 0.05 * 0.95));
  expect(falseSets[2]).toBeGreaterThanOrEqual(falseSets[1]);
  expect(falseSets[10]).toBeGreaterThan(1.5 * falseSets[1]);
  // The rods share what errs in the journal, the walls and the bore gauge: fewer than of ten that err alone.
  expect(falseSets[10]).toBeLessThan(CASES * (1 - 0.95 ** 10));
});
