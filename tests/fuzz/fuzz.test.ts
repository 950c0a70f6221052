/** A few dozen damaged books; `npm run fuzz` tries thousands. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from './cases.js';

test('damaged books are refused by name or checked without a loss', async () => {
  const outcomes = new Set<string>();
  await fc.assert(
    fc.asyncProperty(cases, async ({ run }) => {
      outcomes.add(await run());
    }),
    { seed: 7, numRuns: 60 },
  );
  expect([...outcomes].sort()).toEqual(['checked', 'refused']);
});
