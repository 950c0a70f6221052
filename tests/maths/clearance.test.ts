import { expect, test } from 'vitest';
import { clearanceOf, neighbourSpread } from '../../src/maths/clearance.js';

const sizes = (smallest: number, size: number, largest: number) => ({ smallest, size, largest });

test('each half-shell is its own', () => {
  const parts = {
    bore: sizes(4501200, 4501250, 4501300),
    upper: sizes(148700, 148750, 148800),
    lower: sizes(148800, 148850, 148900),
    journal: sizes(4200100, 4200150, 4200200),
  };
  expect(clearanceOf(parts)).toEqual({
    clearance: 4501250 - 148750 - 148850 - 4200150,
    tightest: 4501200 - 148800 - 148900 - 4200200,
    loosest: 4501300 - 148700 - 148800 - 4200100,
  });
});

test.each([
  ['of consecutive fits', [10, 13, 8, 9], 5],
  ['not across a fit that is not computed', [10, undefined, 90, 92], 2],
  ['none of one fit', [10], undefined],
  ['none of none', [], undefined],
  ['none where no two neighbours are computed', [10, undefined, 11], undefined],
  ['of equal fits', [7, 7], 0],
])('neighbour spread %s', (_words, clearances, spread) => {
  expect(neighbourSpread(clearances)).toBe(spread);
});
