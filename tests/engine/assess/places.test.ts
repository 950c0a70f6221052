/** Which parts make a fit: by name, by place, and where the book leaves a choice. */
import { describe, expect, test } from 'vitest';
import { assess, DATE, type Plain, type Sheets, table, whyOf } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const AT_1 = { Engine: 'E1', Position: 1 };
const journal = (Part: Plain, cells: Cells = {}) => ({ Part, ...AT_1, Fit: 'big end', 'A 0': 42, ...cells });
const rod = (Part: Plain, cells: Cells = {}) => ({ Part, ...AT_1, 'A 0': 45.035, ...cells });
const shell = (Part: Plain, Half: Plain, cells: Cells = {}) => ({
  Part,
  Half,
  ...AT_1,
  'Wall 1': 1.5,
  ...cells,
});
const row = (cells: Cells = {}) => ({ ...AT_1, Fit: 'big end', ...cells });

/** One journal J1 and one rod R1 at the place, the shells given, and Fits where it is given. */
function fitsOf(shells: readonly Cells[], fits?: readonly Cells[], more: Sheets = {}) {
  return assess({
    Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 }),
    Journals: table(journal('J1')),
    Rods: table(rod('R1')),
    Shells: shells.length > 0 ? table(...shells) : [['Part', 'Half']],
    ...(fits && { Fits: table(...fits) }),
    ...more,
  }).fits;
}

const namesOf = (fit: ReturnType<typeof fitsOf>[number]) =>
  Object.fromEntries(Object.entries(fit.parts).map(([slot, part]) => [slot, part.row.name]));

const BOTH = { journal: 'J1', bore: 'R1' };

describe('without Fits', () => {
  test.each<[string, Cells[], string, Cells]>([
    ['upper and lower', [shell('L', 'lower'), shell('U', 'upper')], 'in range', { upper: 'U', lower: 'L' }],
    [
      'two either, in row order',
      [shell('B', 'either'), shell('A', 'either')],
      'in range',
      { upper: 'B', lower: 'A' },
    ],
    [
      'one either of Quantity 2 takes both',
      [shell('S', 'either', { Quantity: 2 })],
      'in range',
      { upper: 'S', lower: 'S' },
    ],
    ['one either of Quantity 1 takes one', [shell('S', 'either')], 'not measured', { upper: 'S' }],
    ['upper and either', [shell('S', 'either'), shell('U', 'upper')], 'in range', { upper: 'U', lower: 'S' }],
    ['lower and either', [shell('S', 'either'), shell('L', 'lower')], 'in range', { upper: 'S', lower: 'L' }],
    [
      'an either of Quantity 2 beside an upper takes the other',
      [shell('S', 'either', { Quantity: 2 }), shell('U', 'upper')],
      'in range',
      { upper: 'U', lower: 'S' },
    ],
    [
      'two either of Quantity 2',
      [shell('A', 'either', { Quantity: 2 }), shell('B', 'either', { Quantity: 2 })],
      'in range',
      { upper: 'A', lower: 'B' },
    ],
    [
      'an upper of Quantity 2 is no lower',
      [shell('U', 'upper', { Quantity: 2 })],
      'not measured',
      { upper: 'U' },
    ],
    ['none', [], 'not measured', {}],
    ['one at another place', [shell('U', 'upper', { Position: 2 })], 'not measured', {}],
    ['one of another fit', [shell('U', 'upper', { Fit: 'main' })], 'not measured', {}],
    ['one without a place', [shell('U', 'upper', { Engine: undefined })], 'not measured', {}],
    ['one without a Half', [shell('U', undefined), shell('L', 'lower')], 'not measured', { lower: 'L' }],
    [
      'one not usable',
      [shell('U', 'upper', { Usable: 'no' }), shell('V', 'upper'), shell('L', 'lower')],
      'in range',
      { upper: 'V', lower: 'L' },
    ],
    [
      'the place by names in any case, 1 and `1`',
      [shell('U', 'upper', { Engine: ' e1', Fit: 'BIG END', Position: '1' }), shell('L', 'lower')],
      'in range',
      { upper: 'U', lower: 'L' },
    ],
  ])('%s', (_words, shells, status, halves) => {
    const [fit] = fitsOf(shells);
    expect(namesOf(fit!)).toEqual({ ...BOTH, ...halves });
    expect(fit).toMatchObject({ status, unclear: [] });
  });

  test.each<[string, Cells[], string]>([
    ['two uppers', [shell('U', 'upper'), shell('V', 'upper'), shell('L', 'lower')], 'U, V, L'],
    ['three either', [shell('A', 'either'), shell('B', 'either'), shell('C', 'either')], 'A, B, C'],
    ['an either beside both', [shell('U', 'upper'), shell('L', 'lower'), shell('S', 'either')], 'U, L, S'],
    ['two either beside one', [shell('U', 'upper'), shell('S', 'either'), shell('T', 'either')], 'U, S, T'],
  ])('%s are more than free slots', (_words, shells, names) => {
    const [fit] = fitsOf(shells);
    expect(fit).toMatchObject({ status: 'unclear', clearance: undefined });
    expect(whyOf(fit!)).toContain(`${names} of Shells all stand at this place`);
  });

  test('two rods, two journals at one place', () => {
    const shells = [shell('U', 'upper'), shell('L', 'lower')];
    const [twoRods] = fitsOf(shells, undefined, { Rods: table(rod('R1'), rod('R2')) });
    expect(twoRods!.status).toBe('unclear');
    expect(whyOf(twoRods!)).toContain('R1, R2 of Rods all stand at this place');
    const twoJournals = fitsOf(shells, undefined, { Journals: table(journal('J1'), journal('J2')) });
    expect(twoJournals.map(({ status }) => status)).toEqual(['unclear', 'unclear']);
    expect(whyOf(twoJournals[0]!)).toContain('J1, J2 of Journals all stand at this place');
  });

  test('one fit a journal, none for one that is not usable', () => {
    const fits = fitsOf([], undefined, {
      Journals: table(
        journal('J1'),
        journal('J2', { Position: 2, Usable: 'no' }),
        journal('J3', { Position: 3 }),
        journal('J4', { Position: undefined }),
        journal('J5', { Position: undefined }),
      ),
    });
    expect(fits.map((fit) => [namesOf(fit).journal, fit.unclear])).toEqual([
      ['J1', []],
      ['J3', []],
      ['J4', []],
      ['J5', []],
    ]);
  });

  test('mains take their bore from Cases', () => {
    const [fit] = fitsOf([], undefined, {
      Journals: table(journal('M1', { Fit: 'Main' })),
      Cases: table(rod('C1')),
    });
    expect(namesOf(fit!)).toEqual({ journal: 'M1', bore: 'C1' });
  });
});

describe('with Fits', () => {
  const pair = [shell('U', 'upper'), shell('L', 'lower')];
  const away = { Position: 9 };

  test.each<[string, Cells[], Cells, Cells]>([
    ['blank cells are filled by place', pair, {}, { ...BOTH, upper: 'U', lower: 'L' }],
    [
      'names win over places',
      [...pair, shell('V', 'upper', away)],
      { 'Upper shell': ' v ' },
      { ...BOTH, upper: 'V', lower: 'L' },
    ],
    [
      'a typed half leaves the other to exactly that half',
      [shell('V', 'upper', away), shell('S', 'either')],
      { 'Upper shell': 'V' },
      { ...BOTH, upper: 'V' },
    ],
    [
      'the same for a typed lower',
      [shell('W', 'lower', away), shell('U', 'upper'), shell('S', 'either'), shell('T', 'either')],
      { 'Lower shell': 'W' },
      { ...BOTH, upper: 'U', lower: 'W' },
    ],
    [
      'an either may be named for a half',
      [shell('S', 'either'), shell('L', 'lower')],
      { 'Upper shell': 'S' },
      { ...BOTH, upper: 'S', lower: 'L' },
    ],
    [
      'one either of Quantity 2 may be named twice',
      [shell('S', 'either', { Quantity: 2 })],
      { 'Upper shell': 'S', 'Lower shell': 's' },
      { ...BOTH, upper: 'S', lower: 'S' },
    ],
    [
      'one that is not usable may be named',
      [shell('U', 'upper', { Usable: 'no' }), shell('L', 'lower')],
      { 'Upper shell': 'U' },
      { ...BOTH, upper: 'U', lower: 'L' },
    ],
    ['a place with nothing', pair, { Position: 5 }, {}],
  ])('%s', (_words, shells, cells, names) => {
    const [fit] = fitsOf(shells, [row(cells)]);
    expect(namesOf(fit!)).toEqual(names);
    expect(fit!.unclear).toEqual([]);
  });

  test.each<[string, Cells[], Cells, string]>([
    ['a journal that no row has', pair, { Journal: 'J9' }, 'Journal names J9, which no row of Journals has'],
    ['a bore that no row has', pair, { Bore: 'R9' }, 'Bore names R9, which no row of Rods has'],
    [
      'a shell that no row has',
      pair,
      { 'Lower shell': 'L9' },
      'Lower shell names L9, which no row of Shells has',
    ],
    ['a lower named as upper', pair, { 'Upper shell': 'L' }, 'shell L is lower, named as upper'],
    ['an upper named as lower', pair, { 'Lower shell': 'U' }, 'shell U is upper, named as lower'],
    ['one without a Half', [shell('S', undefined)], { 'Upper shell': 'S' }, 'shell S has no Half'],
    [
      'one on both halves with Quantity 1',
      [shell('S', 'either')],
      { 'Upper shell': 'S', 'Lower shell': 'S' },
      'shell S stands on both halves with Quantity 1',
    ],
    [
      'two lowers for a half left open',
      [shell('U', 'upper'), shell('K', 'lower'), shell('L', 'lower')],
      { 'Upper shell': 'U' },
      'K, L of Shells all stand at this place',
    ],
  ])('%s', (_words, shells, cells, why) => {
    const [fit] = fitsOf(shells, [row(cells)]);
    expect(fit).toMatchObject({ status: 'unclear', clearance: undefined, chance: undefined });
    expect(fit!.unclear.join('; ')).toContain(why);
  });

  test('a shell on the wrong side does not fill its own side as well', () => {
    const [fit] = fitsOf([shell('L', 'lower')], [row({ 'Upper shell': 'L' })]);
    expect(fit!.unclear).toEqual(['shell L is lower, named as upper']);
  });

  test('a part in more fits than its Quantity makes all of them unclear, and no other', () => {
    const fits = fitsOf(pair, [row(), row({ Position: 2, Bore: 'r1' }), row({ Position: 3, Bore: 'R3' })], {
      Rods: table(rod('R1'), rod('R3', { Position: 3 })),
    });
    expect(fits.map(({ unclear }) => unclear)).toEqual([
      ['R1 is taken 2 times, with Quantity 1'],
      ['R1 is taken 2 times, with Quantity 1'],
      [],
    ]);
  });

  test('a shell serves as often as its Quantity', () => {
    const shells = [shell('S', 'either', { Quantity: 3 })];
    const named = { 'Upper shell': 'S', 'Lower shell': 'S' };
    expect(
      fitsOf(shells, [row(named), row({ Position: 2, 'Upper shell': 'S' })]).map(({ unclear }) => unclear),
    ).toEqual([[], []]);
    const [first, second] = fitsOf(shells, [row(named), row({ Position: 2, ...named })]);
    expect(first!.unclear).toEqual(['S is taken 4 times, with Quantity 3']);
    expect(second!.unclear).toEqual(first!.unclear);
  });

  test('an overused part is named beside a shell on both halves', () => {
    const both = { 'Upper shell': 'S', 'Lower shell': 'S' };
    const [first] = fitsOf([shell('S', 'either')], [row(both), row({ Position: 2, Journal: 'J1' })]);
    expect(first!.unclear).toEqual([
      'shell S stands on both halves with Quantity 1',
      'J1 is taken 2 times, with Quantity 1',
    ]);
  });

  test('a bore is looked for in the sheet of its fit', () => {
    const more = { Cases: table(rod('C1', { Position: 7 })) };
    const [main] = fitsOf(pair, [row({ Fit: 'main', Bore: 'C1' })], more);
    expect(namesOf(main!)).toEqual({ bore: 'C1' });
    const [bigEnd] = fitsOf(pair, [row({ Bore: 'C1' })], more);
    expect(bigEnd!.unclear).toEqual(['Bore names C1, which no row of Rods has']);
    const [other] = fitsOf(pair, [row({ Fit: 'any other', Bore: 'C1' })], more);
    expect(namesOf(other!)).toEqual({ bore: 'C1' });
  });

  test.each(['Journal', 'Bore', 'Upper shell', 'Lower shell', 'Engine', 'Fit', 'Position'])(
    'a refused %s is not filled by place: the fit is a bad reading',
    (header) => {
      const [fit] = fitsOf(pair, [row({ [header]: DATE })]);
      expect(fit).toMatchObject({ status: 'bad reading', clearance: undefined, chance: undefined });
      expect(fit!.parts).toEqual({});
      expect(whyOf(fit!)).toMatch(new RegExp(`Fits![A-D]2 \\(${header}\\): found a date`));
    },
  );
});

describe('bad readings', () => {
  const pair = [shell('U', 'upper'), shell('L', 'lower')];

  test('of a part that the fit names', () => {
    const [fit] = fitsOf([shell('U', 'upper', { 'Wall 1': 0 }), shell('L', 'lower')]);
    expect(fit).toMatchObject({ status: 'bad reading', clearance: undefined });
    expect(whyOf(fit!)).toContain('U: Shells!E2 (Wall 1): found the number 0');
  });

  test('come before unclear, where they are of parts that are determined', () => {
    const Journals = table(journal('J1', { 'A 0': 'x' }));
    const [known] = fitsOf([...pair, shell('V', 'upper')], undefined, { Journals });
    expect(known!.status).toBe('bad reading');
    const [unknown] = fitsOf([...pair, shell('V', 'upper', { 'Wall 1': 'x' })]);
    expect(unknown!.status).toBe('unclear');
  });

  test('of a name that two rows share: every fit that names it', () => {
    const Rods = table(rod('R1', { Position: 7 }), rod('r1', { Position: 8 }));
    const [fit] = fitsOf(pair, [row({ Bore: 'R1' })], { Rods });
    expect(fit).toMatchObject({ status: 'bad reading', clearance: undefined });
    expect(whyOf(fit!)).toContain('R1 is named more than once in Rods');
  });
});
