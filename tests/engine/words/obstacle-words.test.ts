/** Not matched tells apart what stands in the way of a journal. */
import { expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { unmatchedRows } from '../../../src/engine/words/not-matched.js';
import { bookOf, type Plain, type Sheets, table } from '../book-of.js';

type Row = Readonly<Record<string, Plain>>;
const LIMITS: Row = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.05 };
const PIN: Row = { Part: 'J1', Engine: 'C', Fit: 'big end', Position: 1, 'A 0': 42 };
const ROD: Row = { Part: 'R1', 'A 0': 45.01, Mass: 600 };
const UPPER: Row = { Part: 'U1', Half: 'upper', 'Wall 1': 1.4875 };
const LOWER: Row = { Part: 'L1', Half: 'lower', 'Wall 1': 1.4875 };
const MAIN: Sheets = {
  Limits: table({ ...LIMITS, Fit: 'main' }),
  Journals: table({ ...PIN, Fit: 'main' }),
  Cases: table({ Part: 'K1', Engine: 'C', Position: 1, 'A 0': 45.01 }),
};

test.each<[string, Sheets, RegExp]>([
  [
    'rods that are not usable',
    { Rods: table({ ...ROD, Usable: 'no' }, { Part: 'R2' }) },
    /^no rod of its engine type can be used: R1 not usable, R2 not measured(;|$)/,
  ],
  ['no rod at all', { Rods: table() }, /^no rod of its engine type can be used: there is none(;|$)/],
  [
    'shells that are not usable',
    { Shells: table(UPPER, { ...LOWER, Usable: 'no' }) },
    /^no lower shell of its engine type and fit can be used: L1 not usable(;|$)/,
  ],
  [
    'Half difference',
    {
      Setup: table({ Item: 'Half difference', Value: 0.003 }),
      Shells: table(UPPER, { ...LOWER, 'Wall 1': 1.4915 }),
    },
    /^refused by Half difference: every pair of shells that would fit differs by more than 0\.003 mm(;|$)/,
  ],
  [
    'clearances',
    { Shells: table(UPPER, { ...LOWER, 'Wall 1': 1.6 }) },
    /^no rod and pair of shells of the stock give an allowed fit(;|$)/,
  ],
  [
    'rods without a mass',
    { Limits: table({ ...LIMITS, 'Mass spread': 2 }), Rods: table({ ...ROD, Mass: undefined }) },
    /^no rod of its engine type has a Mass, and Mass spread asks for it(;|$)/,
  ],
  [
    'the masses of the rods that are left',
    {
      Limits: table({ ...LIMITS, 'Mass spread': 2 }),
      Journals: table(PIN, { ...PIN, Part: 'J2', Position: 2 }),
      Rods: table(ROD, { ...ROD, Part: 'R2', Mass: 610 }),
      Shells: table({ ...UPPER, Quantity: 2 }, { ...LOWER, Quantity: 2 }),
    },
    /^the rods left that would fit differ from the crank's others by more than Mass spread(;|$)/,
  ],
  [
    'parts that other sets hold',
    { Journals: table(PIN, { ...PIN, Part: 'J2', Position: 2 }) },
    /^no rod and pair of shells are left that give an allowed fit: those that would are in other sets(;|$)/,
  ],
  [
    'the shells of a main',
    { ...MAIN, Shells: table({ ...UPPER, Fit: 'main' }, { ...LOWER, Fit: 'main', 'Wall 1': 1.6 }) },
    /^no pair of shells of the stock gives an allowed fit(;|$)/,
  ],
])('%s', async (_, sheets, why) => {
  const book = bookOf({
    Limits: table(LIMITS),
    Journals: table(PIN),
    Rods: table(ROD),
    Shells: table(UPPER, LOWER),
    ...sheets,
  });
  const [row] = unmatchedRows(await assessBook(book, { seconds: 30 }));
  expect(row!.why).toMatch(why);
});
