/** What Not matched suggests, taken at its word: the part is added to the book, and the book matched again. */
import { describe, expect, test } from 'vitest';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import { crankPlansOf, nextEngine } from '../../../src/engine/assess/suggestions.js';
import { unmatchedRows } from '../../../src/engine/words/not-matched.js';
import { windowText } from '../../../src/engine/words/suggestion-words.js';
import { grainOf } from '../../../src/maths/units.js';
import { bookOf, type Plain, type Sheets, table, um } from '../book-of.js';

type Row = Readonly<Record<string, Plain>>;

const KIND = { 'Engine type': 'X', Fit: 'big end' };
const LIMITS: Row = { ...KIND, 'Clearance min': 0.02, 'Clearance max': 0.05 };
const GAUGES: Sheets = {
  Gauges: table(
    { Gauge: 'mic', 'Max error': 0.002, Resolution: 0.001, Repeatability: 0.0008 },
    { Gauge: 'bore gauge', 'Max error': 0.0015, Resolution: 0.001, Repeatability: 0.001, 'Set from': 'mic' },
    { Gauge: 'ball mic', 'Max error': 0.001, Resolution: 0.001, Repeatability: 0.0005 },
  ),
};
const PIN: Row = { Part: 'J1', Engine: 'C', Fit: 'big end', Position: 1, Gauge: 'mic', 'A 0': 42 };
const ROD: Row = { Part: 'R1', Gauge: 'bore gauge', 'A 0': 45.01, Mass: 600 };
const UPPER: Row = { Part: 'U1', Half: 'upper', Gauge: 'ball mic', 'Wall 1': 1.4875 };
const LOWER: Row = { Part: 'L1', Half: 'lower', Gauge: 'ball mic', 'Wall 1': 1.4875 };
/** A pin of another crank. */
const OTHER: Row = { ...PIN, Part: 'K1', Engine: 'D' };

function sheetsOf(
  rods: readonly Row[],
  shells: readonly Row[],
  { limits = LIMITS, ...others }: Sheets | { limits?: Row } = {},
): Sheets {
  return {
    ...GAUGES,
    Limits: table(limits as Row),
    Journals: table(PIN),
    Rods: table(...rods),
    Shells: table(...shells),
    ...(others as Sheets),
  };
}

const assessed = (sheets: Sheets) => assessBook(bookOf(sheets), { seconds: 30 });
const filledBy = (assessment: Assessment) => unmatchedRows(assessment).map((row) => row.filledBy);

/** The two lengths that a suggestion names. */
function ends(suggestion: string | undefined): [number, number] {
  const match = /from ([\d.]+) (?:mm|in) to ([\d.]+) (?:mm|in)/.exec(suggestion ?? '');
  expect(match, suggestion).not.toBeNull();
  return [Number(match![1]), Number(match![2])];
}

/** How many engines are complete with each of these sizes of the part. */
async function completeWith(sizes: readonly number[], sheetsWith: (size: number) => Sheets) {
  const counts = [];
  for (const size of sizes) {
    const { matching } = await assessed(sheetsWith(size));
    counts.push(matching!.completeEngines.length);
  }
  return counts;
}

const STEP = 0.000001;
const around = ([from, to]: [number, number]) =>
  [from - STEP, from, to, to + STEP].map((size) => Number(size.toFixed(6)));

describe('a part of the sizes that are named completes the engine, and just outside them it does not', () => {
  test('an upper shell', async () => {
    const assessment = await assessed(sheetsOf([ROD], [LOWER]));
    const [suggestion] = filledBy(assessment);
    expect(suggestion).toMatch(/^needs an upper shell with a wall from .*, with rod R1 and lower shell L1$/);
    const counts = await completeWith(around(ends(suggestion)), (size) =>
      sheetsOf([ROD], [LOWER, { ...UPPER, 'Wall 1': size }]),
    );
    expect(counts).toEqual([0, 1, 1, 0]);
    expect(nextEngine(assessment)).toBe('C');
  });

  test('an upper and a lower shell', async () => {
    const [suggestion] = filledBy(await assessed(sheetsOf([ROD], [{ ...UPPER, 'Wall 1': 2 }])));
    expect(suggestion).toMatch(/^needs an upper and a lower shell, each with a wall from .*, with rod R1$/);
    const counts = await completeWith(around(ends(suggestion)), (size) =>
      sheetsOf(
        [ROD],
        [
          { ...UPPER, 'Wall 1': size },
          { ...LOWER, 'Wall 1': size },
        ],
      ),
    );
    expect(counts).toEqual([0, 1, 1, 0]);
  });

  test('a rod', async () => {
    const [suggestion] = filledBy(await assessed(sheetsOf([{ ...ROD, Usable: 'no' }], [UPPER, LOWER])));
    expect(suggestion).toMatch(/^needs a rod with a bore from .*, with upper shell U1 and lower shell L1$/);
    const counts = await completeWith(around(ends(suggestion)), (size) =>
      sheetsOf([{ ...ROD, 'A 0': size }], [UPPER, LOWER]),
    );
    expect(counts).toEqual([0, 1, 1, 0]);
  });

  test('a rod whose mass must agree with the others of the crank', async () => {
    const journals = { Journals: table(PIN, { ...PIN, Part: 'J2', Position: 2 }) };
    const two = [
      { ...UPPER, Quantity: 2 },
      { ...LOWER, Quantity: 2 },
    ];
    const limits = { ...LIMITS, 'Mass spread': 2.5 };
    const [suggestion] = filledBy(await assessed(sheetsOf([ROD], two, { limits, ...journals })));
    expect(suggestion).toContain('and a mass from 597.5 to 602.5 g');
    const [bore] = ends(suggestion);
    for (const [mass, complete] of [
      [597.4, 0],
      [597.5, 1],
      [602.5, 1],
      [602.6, 0],
    ] as const) {
      const more = { ...ROD, Part: 'R2', 'A 0': bore, Mass: mass };
      const { matching } = await assessed(sheetsOf([ROD, more], two, { limits, ...journals }));
      expect(matching!.completeEngines, `${mass}`).toHaveLength(complete);
    }
  });

  test('the walls of a book in inches', async () => {
    const inches = {
      Setup: table({ Item: 'Length unit', Value: 'in' }),
      Gauges: table({ Gauge: 'mic', 'Max error': 0.0001 }),
      Limits: table({ ...KIND, 'Clearance min': 0.0008, 'Clearance max': 0.002 }),
      Journals: table({ ...PIN, 'A 0': 1.6535 }),
      Rods: table({ Part: 'R1', 'A 0': 1.772 }),
    };
    const [suggestion] = filledBy(
      await assessed({ ...inches, Shells: table({ ...LOWER, Gauge: 'mic', 'Wall 1': 0.0585 }) }),
    );
    const [from, to] = ends(suggestion);
    const outside = 0.0000002;
    const counts = await completeWith([from - outside, from, to, to + outside], (size) => ({
      ...inches,
      Shells: table(
        { ...LOWER, Gauge: 'mic', 'Wall 1': 0.0585 },
        { ...UPPER, Gauge: 'mic', 'Wall 1': Number(size.toFixed(7)) },
      ),
    }));
    expect(counts).toEqual([0, 1, 1, 0]);
  });
});

describe('new shells are suggested whether or not matching may buy', () => {
  const NEW = { ...KIND, Half: 'either', 'Wall from': 1.487, 'Wall to': 1.488 };
  const sold = (...rows: Row[]) => ({ 'New shells': table(...rows.map((row) => ({ ...NEW, ...row }))) });

  test('one beside a half that is left, the cheapest that fits', async () => {
    const offers = sold(
      { Mark: 'A', Price: 9 },
      { Mark: 'B', Price: 7.5 },
      { Mark: 'Z', Price: 1, 'Wall from': 1.6, 'Wall to': 1.61 },
    );
    const mixed = { Item: 'New with used', Value: 'yes' };
    expect(filledBy(await assessed(sheetsOf([ROD], [LOWER], { ...offers, Setup: table(mixed) })))).toEqual([
      'needs a new upper shell of mark B (price 7.5), with rod R1 and lower shell L1',
    ]);
    const buying = { ...offers, Setup: table(mixed, { Item: 'New shells', Value: 'yes' }) };
    expect((await assessed(sheetsOf([ROD], [LOWER], buying))).matching!.completeEngines).toEqual(['c']);
  });

  test('a pair of one mark', async () => {
    expect(filledBy(await assessed(sheetsOf([ROD], [], sold({ Mark: 'B', Price: 0.1 }))))).toEqual([
      'needs a new upper and a new lower shell of mark B (price 0.1 each, 0.2 in all), with rod R1',
    ]);
  });

  test('where none of them fits, a wall that would', async () => {
    const [suggestion] = filledBy(
      await assessed(sheetsOf([ROD], [LOWER], sold({ Mark: 'Z', 'Wall from': 1.6, 'Wall to': 1.61 }))),
    );
    expect(suggestion).toContain('an upper shell with a wall from');
  });
});

describe('grinding', () => {
  const STEPS = {
    Undersizes: table(
      { ...KIND, Step: 0.25, 'Journal min': 41.73, 'Journal max': 41.75 },
      { ...KIND, Step: 0.5, 'Journal min': 41.48, 'Journal max': 41.5 },
    ),
    'New shells': table(
      { ...KIND, Half: 'either', Mark: 'S', 'Wall from': 1.487, 'Wall to': 1.488, Price: 9 },
      { ...KIND, Half: 'either', Mark: 'U25', 'Wall from': 1.612, 'Wall to': 1.613, Price: 9, Step: '0.25' },
      { ...KIND, Half: 'either', Mark: 'U50', 'Wall from': 1.737, 'Wall to': 1.738, Price: 9, Step: '0.50' },
    ),
  };
  const worn = { ...LIMITS, 'Wear limit': 41.98 };
  const journals = (...sizes: number[]) => ({
    Journals: table(
      ...sizes.map((size, at) => ({ ...PIN, Part: `J${at + 1}`, Position: at + 1, 'A 0': size })),
    ),
  });
  const RODS = [ROD, { ...ROD, Part: 'R2', 'A 0': 45.005 }];

  test('is suggested for all journals of the fit together, with the shells of the step', async () => {
    const sheets = sheetsOf(RODS, [UPPER, LOWER], { limits: worn, ...journals(42, 41.9), ...STEPS });
    const assessment = await assessed(sheets);
    const rows = unmatchedRows(assessment);
    expect(rows).toHaveLength(1);
    expect(rows[0]!.why).toMatch(
      /^journal: beyond limits; needs all of the crank's big end journals \(2\) ground to undersize 0\.25, each to a size from .* to .*, with new shells: 4 of mark U25, price 36 in all; here with rod R2$/,
    );
    // Suggested, never assumed: the sound journal keeps the set that it has.
    expect(assessment.matching!.fits.map(({ journal }) => journal.name)).toEqual(['J1']);
    // Ground to either end, with that step's shells, the crank is complete.
    for (const size of ends(rows[0]!.why)) {
      const ground = sheetsOf(RODS, [UPPER, LOWER], {
        ...journals(size, size),
        ...STEPS,
        Setup: table({ Item: 'New shells', Value: 'yes' }),
      });
      expect((await assessed(ground)).matching!.completeEngines).toEqual(['c']);
    }
  });

  test('of two empty journals the second points to the first', async () => {
    const rows = unmatchedRows(
      await assessed(sheetsOf(RODS, [UPPER, LOWER], { limits: worn, ...journals(41.9, 41.9), ...STEPS })),
    );
    expect(rows[1]!.filledBy).toMatch(/^needs the grinding named at big end 1; here with rod R\d$/);
  });

  test.each([
    ['that is not usable', { Usable: 'no' }],
    ['that is not measured', { 'A 0': undefined }],
  ])('is not suggested for a journal %s', async (_, row) => {
    const sheets = sheetsOf(RODS, [UPPER, LOWER], {
      limits: worn,
      Journals: table({ ...PIN, ...row }, { ...PIN, Part: 'J2', Position: 2 }),
      ...STEPS,
    });
    expect(unmatchedRows(await assessed(sheets))[0]!.filledBy).toBeUndefined();
  });
});

test('a crank takes parts of other cranks that stay incomplete, and says where they are', async () => {
  // Two cranks of two pins; one lower shell is there, so one pin is filled and neither crank complete.
  const second = (row: Row) => ({ ...row, Part: `${row.Part} 2`, Position: 2 });
  const sheets = sheetsOf([ROD, { ...ROD, Part: 'R2' }], [{ ...UPPER, Quantity: 2 }, LOWER], {
    Journals: table(PIN, second(PIN), OTHER, second(OTHER)),
  });
  const assessment = await assessed(sheets);
  const [filled] = assessment.matching!.fits;
  const holder = `${filled!.engine.toUpperCase()} big end ${filled!.journal.position}`;
  const rows = unmatchedRows(assessment).filter(
    ({ journal }) => journal.row.engine !== filled!.engine.toUpperCase(),
  );
  expect(rows[0]!.filledBy).toMatch(
    /^could be filled by rod R\d, upper shell U1 and lower shell L1 \(now at /,
  );
  expect(rows[0]!.filledBy).toContain(`lower shell L1 (now at ${holder})`);
  expect(rows[1]!.filledBy).toMatch(/^needs a lower shell with a wall from .*, with rod R\d/);
});

test.each([
  [{ from: um(1487.5), to: um(1489) }, 'mm', { from: '1.4875 mm', to: '1.489 mm' }],
  // 1.4875 mm is 0.058562992 in; 1.489 mm is 0.058622047 in (1 in = 25.4 mm).
  [{ from: um(1487.5), to: um(1489) }, 'in', { from: '0.058563 in', to: '0.058622 in' }],
  // 1.480001 mm is 0.05826776 in: seven decimals of it, 0.0582678 in, are 1.4800021 mm, on the grain 1.480002 mm.
  [{ from: um(1480.001), to: um(1480.002) }, 'in', { from: '0.0582678 in', to: '0.0582678 in' }],
] as const)('a window %j in %s is shown inside itself', (window, unit, shown) => {
  expect(windowText(window, unit)).toEqual(shown);
  for (const text of Object.values(windowText(window, unit))) {
    const size = grainOf(Number.parseFloat(text), unit);
    expect(size).toBeGreaterThanOrEqual(window.from);
    expect(size).toBeLessThanOrEqual(window.to);
  }
});

test.each([
  [undefined, 'the search was ended before it found them; give it more with --seconds'],
  [100, 'the grid on which the stock was matched passed them over'],
])(
  'parts that are left and would do are named, with why no set was made of them (grid %s)',
  async (grid, why) => {
    const whole = await assessed(sheetsOf([ROD], [UPPER, LOWER]));
    const matching = { fits: [], completeEngines: [], hopelessEngines: [], stages: [], grid };
    const plans = crankPlansOf(whole.parts, whole.stock, matching, whole.context);
    expect(filledBy({ ...whole, matching, plans })).toEqual([
      `could be filled by rod R1, upper shell U1 and lower shell L1: ${why}`,
    ]);
  },
);
