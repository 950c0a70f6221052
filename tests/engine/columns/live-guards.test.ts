/** Live verdicts: what keeps a limit by the guard inside it, what breaks it by the guard outside. */
import { describe, expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { bookOf, type Plain, type Sheets, table, um } from '../book-of.js';
import { liveValues } from './live-values.js';

type Cells = Readonly<Record<string, Plain>>;

const AT = { Engine: 'E', 'Engine type': 'X', Fit: 'main', Position: 1 };
const LIMITS = {
  ...{ 'Engine type': 'X', Fit: 'main', 'Clearance min': 0.02, 'Clearance max': 0.06, 'Service limit': 0.09 },
  ...{ 'Journal min': 41.9, 'Journal max': 42, 'Out-of-round limit': 0.01, 'Taper limit': 0.01 },
};
/** Steel that does not grow, and a gauge whose readings scatter by 2 µm. */
const SHEETS: Sheets = {
  Materials: table({ Material: 'steel', Expansion: 0 }),
  Gauges: table({ Gauge: 'R', 'Max error': 0, Repeatability: 0.002 }),
  Limits: table(LIMITS),
  Cases: table({ Part: 'C', ...AT, 'A 0': 45 }),
  Shells: table(
    { Part: 'U', ...AT, Half: 'upper', 'Wall 1': 1.5 },
    { Part: 'L', ...AT, Half: 'lower', 'Wall 1': 1.5 },
  ),
};
// Of four spots, by the tables of order statistics: 1.644854 · 2000 = 3289.7 grains inside a limit,
// 1.644854 · 0.7012 · 2000 + 1.0294 · 2000 = 4365.5 outside. Of two pairs of two: √2 · 1.644854 · 2000 = 4652.3 and
// √2 · 1.954508 · 2000 = 5528.2. Of the fit, with one part that scatters, as of its extremes.
const [INSIDE, OUTSIDE] = [3290, 4366];
const [FORM_INSIDE, FORM_OUTSIDE] = [4652, 5528];

/** The live formulas of Status, with a journal of four spots so many µm below 42 mm. */
async function statusOf(sheet: 'Journals' | 'Cases' | 'Fits', below: readonly number[], more: Sheets = {}) {
  const spots = Object.fromEntries(
    ['A 0', 'A 90', 'B 0', 'B 90'].map((spot, at) => [spot, Number((42 - below[at]! / 1e3).toFixed(6))]),
  );
  const Journals = table({ Part: 'J', ...AT, Gauge: 'R', ...spots });
  const assessment = await assessBook(bookOf({ ...SHEETS, Journals, ...more }), { seconds: 1 });
  const found = liveValues(assessment).filter(
    ({ sheet: own, stored }) => own === sheet && typeof stored === 'string',
  );
  // Status is the only live text of the row.
  expect(found).toHaveLength(1);
  return found[0]!;
}

test('the Status of a part holds each check against both of its guards', async () => {
  const { formula } = await statusOf('Journals', [40, 40, 40, 40]);
  const [fails, passes] = /OR\((.*)\),"beyond limits",IF\(AND\((.*)\),"within limits"/
    .exec(formula)!
    .slice(1);
  const numbersOf = (conditions: string, comparison: RegExp) =>
    [...conditions.matchAll(comparison)].map(([, guard]) => Number(guard));
  expect(numbersOf(fails!, />(\d+),FALSE/g)).toEqual([OUTSIDE, OUTSIDE, FORM_OUTSIDE, FORM_OUTSIDE]);
  expect(numbersOf(passes!, /<=(-?\d+),FALSE/g)).toEqual([-INSIDE, -INSIDE, -FORM_INSIDE, -FORM_INSIDE]);
});

test('the Status of a fit holds each limit against both of its guards', async () => {
  const { formula } = await statusOf('Fits', [40, 40, 40, 40]);
  const cells = formula
    .replaceAll(/ROUND\('Limits'!\$([A-Z])\$2\*1000000,0\)/g, '$1')
    .replaceAll(/ROUND\(([A-Z])2\*1000000,0\)/g, '$1')
    .replace(/^IF\(AND\([^()]*\),(.*),"run again"\)$/, '$1');
  // I, J, K are Clearance, Tightest and Loosest; C, D, E of Limits are min, max and Service limit.
  expect(cells).toBe(
    `IF(COUNT(I2)=0,"not measured",IF(J+${OUTSIDE}<C,"tight",IF(K-${OUTSIDE}>E,"loose",` +
      `IF(AND(J-${INSIDE}>=C,K+${INSIDE}<=D),"in range",` +
      `IF(AND(J-${INSIDE}>=C,K-${OUTSIDE}>D,K+${INSIDE}<=E),"within service limit","undecided")))))`,
  );
});

describe('they say what the run says', () => {
  const all = (micrometres: number): readonly number[] => [
    micrometres,
    micrometres,
    micrometres,
    micrometres,
  ];
  const [inside, outside, grain] = [INSIDE / um(1), OUTSIDE / um(1), 1 / um(1)];

  test.each<['Journals' | 'Fits', readonly number[], string]>([
    ['Fits', all(20 + inside), 'in range'],
    ['Fits', all(20 + inside - grain), 'undecided'],
    ['Fits', all(20 - inside - grain), 'undecided'],
    ['Fits', all(20 - outside), 'undecided'],
    ['Fits', all(20 - outside - grain), 'tight'],
    ['Fits', all(60 + outside), 'undecided'],
    ['Fits', all(60 + outside + grain), 'within service limit'],
    ['Fits', all(90 + outside), 'undecided'],
    ['Fits', all(90 + outside + grain), 'loose'],
    ['Journals', all(inside), 'within limits'],
    ['Journals', all(inside - grain), 'undecided'],
    ['Journals', all(-outside), 'undecided'],
    ['Journals', all(-outside - grain), 'beyond limits'],
    ['Journals', [40, 40, 40, 50 + FORM_OUTSIDE / um(1)], 'undecided'],
    ['Journals', [40, 40, 40, 50 + FORM_OUTSIDE / um(1) + grain], 'beyond limits'],
  ])('%s %j: %s', async (sheet, below, status) => {
    const { found, stored } = await statusOf(sheet, below);
    expect([found, stored]).toEqual([status, status]);
  });
});

test('of a strip by the guard of its step', async () => {
  const Shells = table({ Part: 'U', ...AT, Half: 'upper', 'Wall 1': undefined });
  const Fits = table({ Engine: 'E', Fit: 'main', Position: 1, 'Strip reading': 0.04 });
  const { formula, found } = await statusOf('Fits', [40, 40, 40, 40], { Shells, Fits });
  // 1.644854 · 25 000/√12 = 11 870.7.
  expect(formula.match(/[+-]\d{5}(?=[<>])/g)).toEqual([
    '+11871',
    '-11871',
    '-11871',
    '+11871',
    '-11871',
    '-11871',
    '+11871',
  ]);
  expect(found).toBe('in range');
});

describe('a part that is left uncorrected', () => {
  const warm = (cells: Cells = {}): Sheets => ({
    Cases: table({ Part: 'C', ...AT, Temperature: 30, 'A 0': 45, ...cells }),
    Limits: table({ ...LIMITS, 'Bore min': 44 }),
  });

  test('stays undecided, whatever is typed', async () => {
    const { formula, found } = await statusOf('Cases', [40, 40, 40, 40], warm());
    expect(formula).toMatch(/^IF\(A2="C",IF\([A-Z]+2="","not measured","undecided"\),"run again"\)$/);
    expect(found).toBe('undecided');
  });

  test('leaves its fit undecided, whatever is typed', async () => {
    const { formula, found } = await statusOf('Fits', [40, 40, 40, 40], warm());
    expect(formula).toMatch(
      /^IF\(AND\([^()]*\),IF\(COUNT\(I2\)=0,"not measured","undecided"\),"run again"\)$/,
    );
    expect(found).toBe('undecided');
  });
});
