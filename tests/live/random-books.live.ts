/** Random books: what the core computes, what HyperFormula and what LibreOffice make of the written formulas. */
import { expect, test } from 'vitest';
import { compareRandomBooks, describeRandom } from '../../scripts/live-random.js';

const SEEDS = Array.from({ length: 12 }, (_, place) => 4000 + place);

test('the three agree on each column', async () => {
  const report = await compareRandomBooks(SEEDS);
  console.log(describeRandom(report));
  expect(report.differences).toEqual([]);
  const live = [...report.columns].filter(([, column]) => column.live > 0).map(([name]) => name);
  expect(live).toEqual(
    expect.arrayContaining([
      'Size',
      'Wall',
      'Taper',
      'Out of round',
      'Status',
      'Fits: Clearance',
      'Fits: Status',
    ]),
  );
});
