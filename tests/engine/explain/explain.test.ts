/** What was open to a part and what took it, in sentences, from a book of few parts. */
import { expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { explain } from '../../../src/engine/explain/explain.js';
import { explanationLines } from '../../../src/engine/explain/explanation-words.js';
import { partsMeant } from '../../../src/engine/explain/find-parts.js';
import { bookOf, type Plain, type Sheets, table } from '../book-of.js';

type Row = Readonly<Record<string, Plain>>;
const pin = (name: string, engine: string, position: number, size: number): Row => ({
  Part: name,
  Engine: engine,
  Fit: 'big end',
  Position: position,
  'A 0': size,
});

/**
 * Clearances of 0.02 to 0.05: pins of 42 take R1 (45.01) with the thin shells. D1 is ground too small for
 * anything; one thin lower shell is all there is, so of C1 and C2 one stays empty.
 */
const BOOK: Sheets = {
  Limits: table(
    { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.05 },
    { 'Engine type': 'X', Fit: 'main', 'Clearance min': 0.02, 'Clearance max': 0.05 },
  ),
  Journals: table(
    pin('C1', 'C', 1, 42),
    pin('C2', 'C', 2, 42.01),
    pin('D1', 'D', 1, 41.5),
    {
      ...pin('M1', 'C', 1, 42),
      Fit: 'main',
    },
    { ...pin('T1', 'C', 1, 42), Fit: 'thrust' },
  ),
  Rods: table(
    { Part: 'R1', 'A 0': 45.01 },
    { Part: 'R2', 'A 0': 46 },
    { Part: 'R3', 'A 0': 45.01, Usable: 'no' },
  ),
  Cases: table({ Part: 'K1', Engine: 'C', Position: 1, 'A 0': 45.01 }),
  Shells: table(
    { Part: 'U', Half: 'upper', 'Wall 1': 1.4875, Quantity: 2 },
    { Part: 'L', Half: 'lower', 'Wall 1': 1.4875 },
    { Part: 'E', Half: 'either', 'Wall 1': 1.6 },
    { Part: 'MU', Fit: 'main', Half: 'upper', 'Wall 1': 1.4875 },
    { Part: 'ML', Fit: 'main', Half: 'lower', 'Wall 1': 1.4875 },
  ),
};

async function linesOf(name: string, sheets: Sheets = BOOK): Promise<string[]> {
  const assessment = await assessBook(bookOf(sheets), { seconds: 30 });
  const rows = partsMeant(name, assessment.book.parts.all());
  return explain(rows, assessment).flatMap(explanationLines);
}

const SET = 'rod R1, upper shell U and lower shell L, clearance 0.035 mm, in range';
const AIMS = expect.stringMatching(
  /^Sets are chosen for the most complete engines, then the most filled journals/,
);

test.each<[string, unknown[]]>([
  [
    'C1',
    [
      `Journal C1 at C big end 1 has ${SET}.`,
      'Open to it: 1 of the 2 rods of its engine type that may be used: R1 (at C big end 1).',
      'Open to it as upper shell: 1 of the 2 rows of shells of its engine type and fit that may be used: U (at C big end 1, 1 left over).',
      'Open to it as lower shell: 1 of the 2 rows of shells of its engine type and fit that may be used: L (at C big end 1).',
      AIMS,
    ],
  ],
  [
    'C big end 2',
    [
      expect.stringMatching(
        /^Journal C2 at C big end 2 is empty: no rod and pair of shells are left .*needs /,
      ),
      'Open to it: 1 of the 2 rods of its engine type that may be used: R1 (at C big end 1).',
      expect.stringContaining('U (at C big end 1, 1 left over)'),
      expect.stringContaining('L (at C big end 1)'),
      AIMS,
    ],
  ],
  [
    'D1',
    [
      expect.stringMatching(
        /^Journal D1 at D big end 1 is empty: no rod and pair of shells of the stock give an allowed fit/,
      ),
      'None of the 2 rods of its engine type that may be used makes an allowed fit with it, whatever else of the stock goes with them.',
      expect.stringMatching(/^None of the 2 rows of shells .* as upper shell/),
      expect.stringMatching(/^None of the 2 rows of shells .* as lower shell/),
    ],
  ],
  [
    'R1',
    [
      `Rod R1 is in the set of C big end 1 (${SET}).`,
      'Open to it: 2 of the 3 big ends of its engine type that may be used: C big end 1 (its own), C big end 2 (empty).',
      AIMS,
    ],
  ],
  ['R2', ['Rod R2 is left over.', expect.stringMatching(/^None of the 3 big ends of its engine type/)]],
  ['R3', ['Rod R3 may not be matched: not usable.']],
  [
    'U',
    [
      `Shell U is in the set of C big end 1 (${SET}), 1 of 2 left over.`,
      'Open to it as upper shell: 2 of the 3 big end journals of its engine type that may be used: C big end 1 (its own), C big end 2 (empty).',
      AIMS,
    ],
  ],
  [
    'E',
    [
      'Shell E is left over.',
      expect.stringMatching(/^None of the 3 .* as upper shell/),
      expect.stringMatching(/^None of the 3 .* as lower shell/),
    ],
  ],
  [
    'K1',
    [
      'Case K1 is the housing of journal M1, which at C main 1 has case K1, upper shell MU and lower shell ML, clearance 0.035 mm, in range.',
      'Open to it as upper shell: 1 of the 1 rows of shells of its engine type and fit that may be used: MU (at C main 1).',
      'Open to it as lower shell: 1 of the 1 rows of shells of its engine type and fit that may be used: ML (at C main 1).',
      AIMS,
    ],
  ],
  ['T1', ['Journal T1 is outside matching, which is of big ends, and of mains whose case is there.']],
])('%s', async (name, lines) => {
  expect(await linesOf(name)).toEqual(lines);
});

test('says that masses are not counted where they limit the choice too', async () => {
  const limits = table({
    'Engine type': 'X',
    Fit: 'big end',
    'Clearance min': 0.02,
    'Clearance max': 0.05,
    'Mass spread': 2,
  });
  const rods = table({ Part: 'R1', 'A 0': 45.01, Mass: 600 });
  expect(await linesOf('R1', { ...BOOK, Limits: limits, Rods: rods })).toContain(
    'Mass spread, which limits the rods of one crank too, is not counted in these lists.',
  );
});

test('names no more than twenty parts', async () => {
  const rods = Array.from({ length: 25 }, (_, at) => ({ Part: `R${at + 1}`, 'A 0': 45.01 }));
  const lines = await linesOf('C1', { ...BOOK, Rods: table(...rods) });
  expect(lines[1]).toMatch(/^Open to it: 25 of the 25 rods .* R20 \(.*\) and 5 more\.$/);
});
