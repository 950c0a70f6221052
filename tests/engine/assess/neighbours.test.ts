/** The fits of an engine together. */
import { expect, test } from 'vitest';
import { neighbourResults } from '../../../src/engine/assess/neighbours.js';
import { assess, type Plain, table, um } from '../book-of.js';

/** Pins of 42 in bores of 44.98 and so many thousandths, walls of 1.49: that many thousandths of clearance. */
function resultsOf(
  thousandths: readonly (number | undefined)[],
  limits: Readonly<Record<string, Plain>> = {},
) {
  const rows = thousandths.map((own, at) => ({ own, place: { Engine: 'E1', Position: at + 1 } }));
  const { fits } = assess({
    Limits: table({
      ...{ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.05 },
      ...{ 'Service limit': 0.07, ...limits },
    }),
    Journals: table(
      ...rows.map(({ place }, at) => ({ Part: `J${at}`, ...place, Fit: 'big end', 'A 0': 42 })),
    ),
    Rods: table(
      ...rows.map(({ own, place }, at) => ({
        ...{ Part: `R${at}`, ...place },
        'A 0': own === undefined ? undefined : Number((44.98 + own / 1000).toFixed(3)),
      })),
    ),
    Shells: table(
      ...rows.flatMap(({ place }, at) =>
        ['upper', 'lower'].map((Half) => ({ Part: `${Half} ${at}`, ...place, Half, 'Wall 1': 1.49 })),
      ),
    ),
  });
  return neighbourResults(fits);
}

test('each status is counted, and what waits for data together', () => {
  const [group, ...others] = resultsOf([30, 40, 60, 10, 80, undefined]);
  expect(others).toEqual([]);
  expect(group).toMatchObject({ engine: 'E1', fit: 'big end', waiting: 1 });
  expect(group!.counts).toEqual({
    ...{ 'bad reading': 0, unclear: 0, 'not measured': 1, 'no limits': 0 },
    ...{ 'in range': 2, 'within service limit': 1, tight: 1, loose: 1, undecided: 0 },
  });
  expect([group!.tightest, group!.loosest]).toEqual([um(10), um(80)]);
});

test.each<[string, (number | undefined)[], number | undefined, number | undefined, string | undefined]>([
  ['within', [50, 60], 0.01, 10, 'within its limit'],
  ['above', [50, 61], 0.01, 11, 'above its limit'],
  ['without a limit', [50, 60], undefined, 10, undefined],
  ['of one fit', [50], 0.01, undefined, undefined],
  ['of fits that are no neighbours', [50, undefined, 90], 0.01, undefined, undefined],
])('the spread of neighbours %s', (_, thousandths, limit, spread, status) => {
  const [group] = resultsOf(thousandths, { 'Neighbour spread': limit });
  expect(group!.spread).toBe(spread === undefined ? undefined : um(spread));
  expect(group!.spreadStatus).toBe(status);
});

test('nothing computed has no extremes', () => {
  expect(resultsOf([undefined])[0]).toMatchObject({ tightest: undefined, loosest: undefined, waiting: 1 });
});
