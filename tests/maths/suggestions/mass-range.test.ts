import { expect, test } from 'vitest';
import { massRange } from '../../../src/maths/suggestions/mass-range.js';

test.each([
  ['no spread asked', [612.1], undefined, undefined],
  ['no rod yet', [], 3, { from: undefined, to: undefined }],
  ['one rod, in decimals', [612.3], 0.2, { from: 612.1, to: 612.5 }],
  ['the widest pair of rods', [612.3, 612.1, 612.4], 0.3, { from: 612.1, to: 612.4 }],
])('%s', (_, masses, spread, range) => {
  expect(massRange(masses, spread)).toEqual(range);
});
