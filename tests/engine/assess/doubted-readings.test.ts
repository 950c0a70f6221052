/** Slips of the hand: which reading is named, as what, and what may be as odd as it is without a word. */
import { describe, expect, test } from 'vitest';
import { assessMeasured } from '../../../src/engine/assess/assess.js';
import { doubtSentence } from '../../../src/engine/assess/doubt-words.js';
import { bookOf, type Plain, type Sheets, table } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const LIMITS = {
  ...{ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.05 },
  ...{ 'Journal min': 41.985, 'Journal max': 42.005 },
};
const BORES = { 'Bore min': 45, 'Bore max': 45.02 };
const SPOTS = ['A 0', 'A 90', 'B 0', 'B 90'];

/** `undefined` stands for a spot that was not read. */
function pin(position: number, spots: readonly Plain[], more: Cells = {}): Cells {
  return {
    ...{ Part: `J${position}`, Engine: 'E', Fit: 'big end', Position: position },
    ...Object.fromEntries(spots.map((value, at) => [SPOTS[at]!, value])),
    ...more,
  };
}

/** Pins read at one spot each. */
const pins = (sizes: readonly number[], more: Cells = {}) =>
  sizes.map((size, at) => pin(at + 1, [size], more));

function found(journals: readonly Cells[], sheets: Sheets = { Limits: table(LIMITS) }) {
  return assessMeasured(bookOf({ ...sheets, Journals: table(...journals) }));
}

/** `J1 B 0`, with what it would be without the slip. */
function named(measured: ReturnType<typeof found>) {
  return measured.doubts.map(({ part, reading, slip }) => {
    const would = slip ? ` ${slip.value / 1e6} ${slip.cause}` : '';
    return `${part.row.name} ${reading.column.header}${would}`;
  });
}

const NO_LIMITS: Sheets = {};

describe('a spot off the other spots of its part', () => {
  // The pitch of a metric thimble, 0.5 mm or 1 mm: DIN 863-1, from memory.
  test.each([
    ['half a turn', [42.001, 42.002, 42.503, 42.001], 'J1 B 0 42.003 half a turn'],
    ['a turn too little', [42.001, 42.002, 41.003, 42.001], 'J1 B 0 42.003 a turn'],
    ['inches', [42.001, 1.6536, 42.003, 42.001], 'J1 A 90 42.00144 inches'],
    ['a decimal point', [42.001, 420.02, 42.003, 42.001], 'J1 A 90 42.002 decimal point'],
    ['two digits', [42.001, 24.002, 42.003, 42.001], 'J1 A 90 42.002 digits exchanged'],
  ])('by %s', (_words, spots, words) => {
    expect(named(found([pin(1, spots)]))).toEqual([words]);
    expect(named(found([pin(1, spots)], NO_LIMITS))).toEqual([words]);
  });

  test('a reading is held against repeats too', () => {
    const repeated = pin(1, [42.001], { 'A 0 #2': 42.501 });
    expect(named(found([repeated]))).toEqual(['J1 A 0 #2 42.001 half a turn']);
  });

  test('a text is read in its own unit: 0.025 in is a turn of an inch thimble, common practice, no published source', () => {
    const { doubts, book } = found([pin(1, ['1.6536 in', '1.6786 in', 42.001, 42.002])]);
    expect(doubts.map((doubt) => doubtSentence(doubt, book))).toEqual([
      'engine.xlsx: Journals!F2 (J1, A 90): found 1.6786 in; 1.6536 in would agree with the other spots ' +
        '(a turn of the thimble); read it again, and correct the cell if it was a slip.',
    ]);
  });

  test('a wall', () => {
    const shell = { Part: 'U', Engine: 'E', Position: 1, Half: 'upper' };
    const walls = { 'Wall 1': 1.488, 'Wall 2': 1.988, 'Wall 3': 1.489 };
    expect(named(assessMeasured(bookOf({ Shells: table({ ...shell, ...walls }) })))).toEqual([
      'U Wall 2 1.488 half a turn',
    ]);
  });

  test('without a cause it is named where it is far from all that is known', () => {
    const { doubts, parts } = found([pin(1, [42.001, 42.002, 42.703, 42.001])]);
    expect(doubts.map(({ slip }) => slip)).toEqual([undefined]);
    expect(parts.of('Journals')[0]!.why).toContain(
      'B 0 is 42.703 mm, far from the other spots, 42.001 to 42.002 mm, and from Limits, 41.985 to 42.005 mm; ' +
        'read Journals!G2 again',
    );
  });
});

describe('two spots that disagree', () => {
  test.each([
    ['the limits decide', [42.001, 42.501], { Limits: table(LIMITS) }, [], 'J1 A 90 42.001 half a turn'],
    [
      'other pins of the engine decide',
      [42.001, 42.501],
      NO_LIMITS,
      [42.002, 42.003],
      'J1 A 90 42.001 half a turn',
    ],
    [
      'with nothing else known the first is named',
      [42.001, 42.501],
      NO_LIMITS,
      [],
      'J1 A 0 42.501 half a turn',
    ],
  ])('%s', (_words, spots, sheets, others, words) => {
    const journals = [pin(1, spots), ...others.map((size, at) => pin(at + 2, [size, size]))];
    expect(named(found(journals, sheets))).toEqual([words]);
  });
});

describe('of doubted readings that agree with each other the first is named', () => {
  test('some spots of a part', () => {
    const { doubts, parts } = found([pin(1, [42.501, 42.001, 42.502, 42.503])]);
    expect(doubts.map(({ reading }) => reading.column.header)).toEqual(['A 0']);
    expect(parts.of('Journals')[0]!.why).toContain(
      'A 0 is 42.501 mm, like B 0, B 90: 42.001 mm would agree with the other spots (half a turn of the thimble); ' +
        'read Journals!E2 again',
    );
  });

  test('all spots of a part', () => {
    const measured = found([pin(1, [42.501, 42.502, 42.503, 42.501])]);
    expect(named(measured)).toEqual(['J1 A 0 42.001 half a turn']);
    expect(measured.parts.of('Journals')[0]!.why).toContain(
      'A 0 is 42.501 mm, like A 90, B 0, B 90: 42.001 mm would agree with Limits (half a turn of the thimble); ' +
        'read Journals!E2 again',
    );
  });
});

describe('a part off its limits and the other parts of its Fit', () => {
  test.each([
    ['one pin of four', [42.001, 41.501, 42.002, 42.003], 'J2 A 0 42.001 half a turn'],
    ['inches', [42.001, 1.6536, 42.002, 42.003], 'J2 A 0 42.00144 inches'],
    ['two digits', [42.001, 24.001, 42.002, 42.003], 'J2 A 0 42.001 digits exchanged'],
  ])('%s', (_words, sizes, words) => {
    expect(named(found(pins(sizes)))).toEqual([words]);
    expect(named(found(pins(sizes), NO_LIMITS))).toEqual([words]);
  });

  test('without a cause, far from all that is known', () => {
    expect(named(found(pins([42.001, 43.703, 42.002])))).toEqual(['J2 A 0']);
  });
});

describe('no word is said of', () => {
  const turned = (values: readonly number[]) => pin(1, values);
  test.each<[string, readonly Cells[], Sheets]>([
    ['a tapered and oval pin', [turned([42, 41.96, 41.95, 41.92])], { Limits: table(LIMITS) }],
    ['a pin worn by 0.2 mm', pins([41.8, 41.98, 41.99]), { Limits: table(LIMITS) }],
    ['a pin worn hollow', [turned([41.99, 41.8, 41.99, 41.99])], { Limits: table(LIMITS) }],
    ['a crank that was reground', pins([41.5, 41.501, 41.502, 41.499]), { Limits: table(LIMITS) }],
    [
      'a reground crank beside one that was not',
      [...pins([42, 42.001, 42.002]), ...pins([41.5, 41.501], { Engine: 'F' })].map((row, at) => ({
        ...row,
        Part: `P${at}`,
      })),
      { Limits: table(LIMITS) },
    ],
    [
      'a single pin on a step of Undersizes',
      pins([41.495]),
      {
        Limits: table(LIMITS),
        Undersizes: table({
          ...{ 'Engine type': 'X', Fit: 'big end', Step: '0.5' },
          ...{ 'Journal min': 41.485, 'Journal max': 41.505 },
        }),
      },
    ],
    [
      'a single reground pin in its undersize shells',
      pins([41.5]),
      {
        Limits: table(LIMITS),
        Rods: table({ Part: 'R', Engine: 'E', Position: 1, 'A 0': 45 }),
        Shells: table(
          { Part: 'U', Engine: 'E', Position: 1, Half: 'upper', 'Wall 1': 1.7325 },
          { Part: 'L', Engine: 'E', Position: 1, Half: 'lower', 'Wall 1': 1.7325 },
        ),
      },
    ],
    ['two pins of two sizes, without limits', pins([42, 42.5]), NO_LIMITS],
    ['mains that are made in steps', pins([48, 48.5, 49, 49.5, 50]), NO_LIMITS],
    ['engines of no known type', [...pins([42, 42.001]), pin(9, [48.5], { Engine: 'F' })], NO_LIMITS],
  ])('%s', (_words, journals, sheets) => {
    expect(named(found(journals, sheets))).toEqual([]);
  });

  test('bores of several sizes', () => {
    const sizes = [45.001, 45.004, 45.251, 45.254, 45.501, 45.503];
    const rods = sizes.map((size, at) => ({ Part: `R${at}`, 'A 0': size, 'A 90': size + 0.02 }));
    const limits = table({ ...LIMITS, ...BORES });
    expect(named(assessMeasured(bookOf({ Limits: limits, Rods: table(...rods) })))).toEqual([]);
  });
});

describe('what is done with it', () => {
  const good = [42.001, 42.002, 42.003, 42.001];
  const slipped = [42.001, 42.002, 42.503, 42.001];

  test('no verdict and no value changes, and Why keeps what it said', () => {
    const { parts, doubts } = found([pin(1, slipped)]);
    const [part] = parts.of('Journals');
    expect(doubts).toHaveLength(1);
    expect([part!.status, part!.form!.largest]).toEqual(['beyond limits', 42_503_000]);
    expect(part!.why[0]).toBe('largest is 0.498 mm over Journal max 42.005 mm');
    expect(part!.why.at(-1)).toBe(
      'B 0 is 42.503 mm: 42.003 mm would agree with the other spots (half a turn of the thimble); read Journals!G2 again',
    );
  });

  test('Re-measure names it behind a cell that could not be read and before what was not', () => {
    // No fit waits for these, so each decides its own verdict alone.
    const unusable = { Usable: 'no' };
    const { remeasure } = found([
      pin(1, [], unusable),
      pin(2, slipped, unusable),
      pin(3, ['x'], unusable),
      pin(4, good),
    ]);
    expect(remeasure.map(({ parts, spot, why }) => [...parts, spot, why])).toEqual([
      ['J3', 'A 0', 'F4: found the text "x"'],
      [
        'J2',
        'B 0',
        'found 42.503 mm; 42.003 mm would agree with the other spots (half a turn of the thimble)',
      ],
      ['J1', 'all', 'not measured'],
    ]);
  });
});

describe('the first wall, where no class of shells is typed', () => {
  /** (45.01 − 42 − 0.05 to 0.02) / 2 = 1.48 to 1.495 mm. */
  const walls = (upper: number, lower: number, more: Sheets = {}) =>
    found(pins([42]), {
      Limits: table({ ...LIMITS, ...BORES }),
      Rods: table({ Part: 'R', Engine: 'E', Position: 1, 'A 0': 45.01 }),
      Shells: table(
        { Part: 'U', Engine: 'E', Position: 1, Half: 'upper', 'Wall 1': upper },
        { Part: 'L', Engine: 'E', Position: 1, Half: 'lower', 'Wall 1': lower },
      ),
      ...more,
    });

  test('is expected from bore, journal and clearance', () => {
    const { parts, doubts } = walls(1.988, 1.488);
    expect(doubts.map(({ slip }) => slip)).toEqual([{ cause: 'half a turn', value: 1_488_000 }]);
    expect(parts.of('Shells')[0]!.why.at(-1)).toContain(
      '1.488 mm would agree with bore, journal and clearance (half a turn of the thimble)',
    );
    expect(walls(1.488, 1.487).doubts).toEqual([]);
  });

  test('a class of shells goes before', () => {
    const wide = table({
      ...{ 'Engine type': 'X', Fit: 'big end', Of: 'shell', Mark: 'A' },
      ...{ From: 1.98, To: 1.99 },
    });
    expect(walls(1.988, 1.988, { Classes: wide }).doubts).toEqual([]);
  });
});
