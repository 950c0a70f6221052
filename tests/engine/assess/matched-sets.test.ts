/** The matched sets of a book as fits, what they need from outside the stock, and what they leave of it. */
import { beforeAll, describe, expect, test } from 'vitest';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import { pickList } from '../../../src/engine/assess/pick-list.js';
import { timesPrice } from '../../../src/engine/assess/to-buy.js';
import { setWords } from '../../../src/engine/words/stock-words.js';
import { bookOf, type Sheets, table, um } from '../book-of.js';

const BIG_END = { 'Engine type': 'X', Fit: 'big end' };
const LIMITS = { ...BIG_END, 'Clearance min': 0.02, 'Clearance max': 0.05, 'Service limit': 0.07 };
const GAUGES = table({ Gauge: 'mic', 'Max error': 0.001 });

/** Bores of 45.01 with two spots, walls of 1.4875, a pin of 42: a clearance of 0.035 mm. */
const BOOK: Sheets = {
  Limits: table({ ...LIMITS, Aim: 0.03 }, { ...LIMITS, Fit: 'main', Aim: 0.03 }),
  Gauges: GAUGES,
  Journals: table(
    { Part: 'P2', Engine: 'C', Fit: 'big end', Position: 2, Bin: 'B10', 'A 0': 42 },
    { Part: 'P1', Engine: 'C', Fit: 'big end', Position: 1, Bin: 'B2', Gauge: 'mic', 'A 0': 42 },
    { Part: 'M1', Engine: 'C', Fit: 'main', Position: 1, 'A 0': 60 },
  ),
  Rods: table(
    { Part: 'R1', Engine: 'C', Position: 1, Bin: 'B2', Gauge: 'mic', 'A 0': 45.009, 'B 0': 45.011 },
    { Part: 'R2', Engine: 'C', Position: 2, Bin: 'B2', 'A 0': 45.01 },
    { Part: 'R3', 'A 0': 47 },
  ),
  Cases: table({ Part: 'K1', Engine: 'C', Position: 1, 'A 0': 63.01 }),
  Shells: table(
    { Part: 'U1', Engine: 'C', Position: 1, Half: 'upper', Gauge: 'mic', 'Wall 1': 1.4875 },
    { Part: 'L1', Engine: 'C', Position: 1, Half: 'lower', Gauge: 'mic', 'Wall 1': 1.4875 },
    { Part: 'MU', Fit: 'main', Half: 'upper', 'Wall 1': 1.4875 },
    { Part: 'ML', Fit: 'main', Half: 'lower', 'Wall 1': 1.4875 },
    { Part: 'S', Half: 'either', Quantity: 5, Bin: 'A1', 'Wall 1': 1.7 },
  ),
  Setup: table({ Item: 'New shells', Value: 'yes' }),
  'New shells': table({
    ...{ ...BIG_END, Half: 'either', Mark: 'N', Price: 0.1 },
    ...{ 'Wall from': 1.487, 'Wall to': 1.488 },
  }),
};

let assessment: Assessment;
beforeAll(async () => {
  assessment = await assessBook(bookOf(BOOK), { seconds: 30 });
});
const placesOf = (at: string) => assessment.sets.find(({ fit, position }) => `${fit} ${position}` === at)!;

test('there is a set for each filled journal, in the order of the rows', () => {
  expect(assessment.sets.map(({ journal }) => journal.row.name)).toEqual(['P2', 'P1', 'M1']);
  expect(assessment.matching!.completeEngines).toEqual(['c']);
});

describe('a set is judged as a fit', () => {
  test('of parts of the stock, as the same parts are judged as a fit', () => {
    const set = placesOf('big end 1');
    const fit = assessment.fits.find(({ parts }) => parts.journal?.row.name === 'P1')!;
    expect(Object.values(fit.parts).map(({ row }) => row.name)).toEqual(
      expect.arrayContaining(['P1', 'R1', 'U1', 'L1']),
    );
    expect(set.names).toEqual({ journal: 'P1', bore: 'R1', upper: 'U1', lower: 'L1' });
    expect(set.parts).toEqual(fit.parts);
    const { kind, limits, clearance, guards, clearanceU, status } = fit;
    expect(set).toMatchObject({ kind, limits, clearance, guards, clearanceU, status });
    expect(set.clearance).toEqual({ clearance: um(35), tightest: um(34), loosest: um(36) });
    expect(set.offAim).toBe(um(5));
    expect(guards.inside).toBeGreaterThan(0);
  });

  test('of bought shells, which have no part and span their class', () => {
    const set = placesOf('big end 2');
    expect(set.names).toEqual({ journal: 'P2', bore: 'R2', upper: 'new N', lower: 'new N' });
    expect(Object.keys(set.parts).sort()).toEqual(['bore', 'journal']);
    // 45.01 − 42 − 2 · 1.4875, and 1 µm less or more for both walls at their ends.
    expect(set.clearance).toEqual({ clearance: um(35), tightest: um(34), loosest: um(36) });
    expect(set).toMatchObject({
      guards: { inside: 0, outside: 0 },
      ...{ clearanceU: undefined, status: 'in range' },
    });
  });

  test('of a main, in the case of its place', () => {
    expect(placesOf('main 1').names).toEqual({ journal: 'M1', bore: 'K1', upper: 'MU', lower: 'ML' });
    expect(placesOf('main 1').parts.bore!.row.sheet).toBe('Cases');
  });
});

test.each([
  ['big end 1', 'rod R1, upper shell U1 and lower shell L1, clearance 0.035 mm, in range'],
  ['big end 2', 'rod R2, upper shell new N and lower shell new N, clearance 0.035 mm, in range'],
  ['main 1', 'case K1, upper shell MU and lower shell ML, clearance 0.035 mm, in range'],
])('the set of %s in words', (at, words) => {
  expect(setWords(placesOf(at), 'mm')).toBe(words);
});

test('what is bought is counted by its row of New shells, and its price in decimals', () => {
  expect(assessment.toBuy).toEqual([
    {
      ...{ engineType: 'X', fit: 'big end', half: 'either', mark: 'N', quantity: 2 },
      ...{ price: 0.1, priceInAll: 0.2, places: ['C big end 2'] },
    },
  ]);
  expect(timesPrice(0.1, 3)).toBe(0.3);
});

test('left over are rods and shells that no set takes, not cases and journals', () => {
  expect(assessment.leftOver.map(({ part, count }) => [part.row.name, count])).toEqual([
    ['R3', 1],
    ['S', 5],
  ]);
});

test('parts are picked by bins in the order of their numbers, then by what they are', () => {
  const picked = pickList(assessment.sets).map(({ part, kind }) => [part.row.bin ?? '', kind, part.row.name]);
  expect(picked).toEqual([
    ['', 'case', 'K1'],
    ['', 'journal', 'M1'],
    ['', 'lower shell', 'L1'],
    ['', 'lower shell', 'ML'],
    ['', 'upper shell', 'MU'],
    ['', 'upper shell', 'U1'],
    ['B2', 'journal', 'P1'],
    ['B2', 'rod', 'R1'],
    ['B2', 'rod', 'R2'],
    ['B10', 'journal', 'P2'],
  ]);
});

test('a book without an engine to match has no sets, and nothing is left of it', async () => {
  const { Rods } = BOOK;
  const { matching, sets, toBuy, leftOver } = await assessBook(bookOf({ Rods: Rods! }), { seconds: 1 });
  expect({ matching, sets, toBuy, leftOver }).toEqual({
    ...{ matching: undefined, sets: [], toBuy: [], leftOver: [] },
  });
});
