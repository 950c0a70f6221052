/** The sheet Setup, and the names that may be left out. */
import { describe, expect, test } from 'vitest';
import { assess, bookOf, DATE, FILE, type Plain, table, um } from '../book-of.js';

const setupOf = (...items: [Plain, Plain][]) =>
  bookOf({ Setup: [['Item', 'Value'], ...items], Rods: [['Part'], ['R1']] }).setup;

describe('settings', () => {
  test('by default', () => {
    expect(bookOf({ Rods: [['Part']] }).setup).toEqual({
      lengthUnit: 'mm',
      temperatureUnit: 'C',
      confidence: 0.95,
      aimShare: 0.5,
      allowUndecided: false,
      allowWorn: false,
      buyNewShells: false,
      preferKeptPairs: true,
      rodsStay: false,
      halvesStay: true,
      newWithUsed: false,
      massSpread: undefined,
      halfDifference: undefined,
      stripStep: um(25),
      bad: [],
    });
  });

  test.each<[Plain, Plain, object]>([
    ['Length unit', 'in', { lengthUnit: 'in' }],
    ['LENGTH-UNIT', ' IN ', { lengthUnit: 'in' }],
    ['Length unit', 'inch', { lengthUnit: 'in' }],
    ['Temperature unit', 'F', { temperatureUnit: 'F' }],
    ['Temperature unit', '°C', { temperatureUnit: 'C' }],
    ['Temperature unit', '°f', { temperatureUnit: 'F' }],
    ['Confidence', '95 %', { confidence: 0.95 }],
    ['Confidence', 0.95, { confidence: 0.95 }],
    ['Confidence', 95, { confidence: 0.95 }],
    ['Confidence', '0,95', { confidence: 0.95 }],
    ['Confidence', '99,9%', { confidence: 0.999 }],
    ['Confidence', 99.99, { confidence: 0.9999 }],
    ['Confidence', 50, { confidence: 0.5 }],
    ['Aim', 'Middle', { aimShare: 0.5 }],
    ['Aim', 0.35, { aimShare: 0.35 }],
    ['Aim', '0,35', { aimShare: 0.35 }],
    ['Aim', 0, { aimShare: 0 }],
    ['Aim', 1, { aimShare: 1 }],
    ['Undecided fits', 'allow', { allowUndecided: true }],
    ['New shells', 'Yes', { buyNewShells: true }],
    ['Prefer', 'kept pairs', { preferKeptPairs: true }],
    ['Prefer', 'closest', { preferKeptPairs: false }],
    ['Worn fits', 'allow', { allowWorn: true }],
    ['Rods', 'stay', { rodsStay: true }],
    ['Halves', 'free', { halvesStay: false }],
    ['New with used', 'yes', { newWithUsed: true }],
    ['Mass spread', 5, { massSpread: 5 }],
    ['Mass spread (g)', '5 g', { massSpread: 5 }],
    ['Half difference', 0.003, { halfDifference: um(3) }],
    ['Half difference', '3 µm', { halfDifference: um(3) }],
    ['Half difference (µm)', 3, { halfDifference: um(3) }],
    ['Strip step', 0.01, { stripStep: um(10) }],
    ['Strip step', '10 µm', { stripStep: um(10) }],
    ['Strip step (µm)', 10, { stripStep: um(10) }],
    ['Strip step', ' ', { stripStep: um(25) }],
    ['Confidence', ' ', { confidence: 0.95 }],
    ['Something else', 3, { confidence: 0.95 }],
  ])('%s: %s', (item, value, expected) => {
    expect(setupOf([item, value])).toMatchObject(expected);
  });

  test('lengths of Setup are in the unit of the book, wherever it stands', () => {
    // 0.0001 in is 2.54 µm.
    expect(setupOf(['Half difference', 0.0001], ['Length unit', 'in']).halfDifference).toBe(um(2.54));
    expect(setupOf(['Length unit', 'in'], ['Strip step', 0.001]).stripStep).toBe(um(25.4));
    // Where nothing is typed, 0.025 mm in any unit.
    expect(setupOf(['Length unit', 'in']).stripStep).toBe(um(25));
  });

  test('the first of an item twice rules', () => {
    expect(setupOf(['Aim', 0.2], ['Aim', 0.3]).aimShare).toBe(0.2);
  });

  test.each<[string, Plain, string]>([
    ['Length unit', 'cm', 'mm or in'],
    ['Temperature unit', 'K', 'C or F'],
    ['Confidence', 49, 'a confidence from 50 to 99.99 %'],
    ['Confidence', '100 %', 'a confidence from 50 to 99.99 %'],
    ['Confidence', 1, 'a confidence from 50 to 99.99 %'],
    ['Confidence', '0.95 %', 'a confidence from 50 to 99.99 %'],
    ['Confidence', 'high', 'a confidence from 50 to 99.99 %'],
    ['Confidence', DATE, 'a confidence from 50 to 99.99 %'],
  ])('%s: %s stops the book', (item, value, expected) => {
    expect(() => setupOf([item, value])).toThrow(`${FILE}: Setup!B2 (${item}): found `);
    expect(() => setupOf([item, value])).toThrow(`expected ${expected};`);
  });

  test.each<[string, Plain, string, object]>([
    ['Aim', 1.1, 'middle or a number from 0 to 1', { aimShare: undefined }],
    ['Aim', 'loose', 'middle or a number from 0 to 1', { aimShare: undefined }],
    ['Undecided fits', 'yes', 'refuse or allow', { allowUndecided: false }],
    ['New shells', true, 'no or yes', { buyNewShells: false }],
    ['Prefer', 'cheap', 'kept pairs or closest', { preferKeptPairs: true }],
    ['Mass spread', -1, 'a mass in g, 0 or more', { massSpread: undefined }],
    ['Half difference', 'x', 'a length of 0 or more (mm, in or µm)', { halfDifference: undefined }],
  ])('%s: %s costs only what needs it', (item, value, expected, setting) => {
    const setup = setupOf([item, value], ['Confidence', 0.9]);
    expect(setup).toMatchObject({ ...setting, confidence: 0.9 });
    expect(setup.bad).toMatchObject([{ sheet: 'Setup', cell: 'B2', header: item, expected }]);
  });
});

describe('a book in inches', () => {
  const setup = (...more: [Plain, Plain][]) =>
    [['Item', 'Value'], ['Length unit', 'in'], ...more] as Plain[][];

  test('reads inches, and other units where they are named', () => {
    const { parts } = assess({
      Setup: setup(),
      Journals: table({
        Part: 'J1',
        Engine: 'E1',
        Fit: 'main',
        Position: 1,
        'A 0': 1.6536,
        'A 90': '1,6536"',
        'B 0': '42.00144 mm',
        'B 90 (mm)': 42.00144,
        'C 0 (µm)': 42_001.44,
        'C 90': '1 653/1000',
      }),
    });
    // 1.6536 in = 42.00144 mm exactly; 1.653 in = 41.9862 mm.
    expect(parts.of('Journals')[0]!.spots.map(({ value }) => value)).toEqual([
      ...[42_001.44, 42_001.44, 42_001.44, 42_001.44, 42_001.44, 41_986.2].map(um),
    ]);
  });

  test('says its limits in inches', () => {
    const { parts } = assess({
      Setup: setup(),
      Limits: table({
        'Engine type': 'X',
        Fit: 'main',
        'Clearance min': 0.001,
        'Clearance max': 0.002,
        'Journal max': 1.65,
      }),
      Journals: table({ Part: 'J1', Engine: 'E1', Fit: 'main', Position: 1, 'A 0': 1.6501 }),
    });
    expect(parts.of('Journals')[0]).toMatchObject({ status: 'beyond limits' });
    expect(parts.of('Journals')[0]!.why[0]).toBe('largest is 0.0001 in over Journal max 1.65 in');
  });
});

describe('Engine type', () => {
  const limits = (...types: Plain[]) =>
    table(
      ...types.map((type, at) => ({
        'Engine type': type,
        Fit: at === 0 ? 'main' : 'big end',
        'Clearance min': 0.02,
        'Clearance max': 0.06,
        'Journal min': 40,
      })),
    );
  const journal = (type: Plain) =>
    table({ Part: 'J1', 'Engine type': type, Engine: 'E1', Fit: 'main', Position: 1, 'A 0': 42 });

  test.each<[string, Plain[], Plain, string, string]>([
    ['left out where Limits names one', ['X'], undefined, 'within limits', ''],
    ['left out where Limits names one twice, in other case', ['X', 'x '], undefined, 'within limits', ''],
    ['left out in a Limits row as well', [undefined, 'X'], 'X', 'within limits', ''],
    ['left out in all', [undefined], undefined, 'within limits', ''],
    ['a number', [2], '2', 'within limits', ''],
    ['blank where Limits names several', ['X', 'Y'], undefined, 'no limits', 'name the Engine type'],
    ['one that Limits does not know', ['X'], 'Y', 'no limits', 'Limits has no row for Y, main'],
  ])('%s', (_words, types, own, status, why) => {
    const [part] = assess({ Limits: limits(...types), Journals: journal(own) }).parts.of('Journals');
    expect(part!.status).toBe(status);
    expect(part!.why.join('; ')).toContain(why);
  });

  test('a Limits row whose Engine type was refused is for none', () => {
    const { book, parts } = assess({ Limits: limits(DATE, 'X'), Journals: journal(undefined) });
    expect(book.limits.map(({ engineType }) => engineType)).toEqual(['', 'X']);
    expect(parts.of('Journals')[0]!.status).toBe('no limits');
  });

  test.each<[string, Plain[], string]>([
    ['the one that Classes names', ['X', 'x'], 'A'],
    ['none where Classes names several', ['X', 'Y'], ''],
  ])('left out without Limits is %s', (_words, types, expected) => {
    const classes = types.map((type, at) => ({
      'Engine type': type,
      Fit: 'main',
      Of: 'journal',
      Mark: 'AB'[at]!,
      From: 41.9 + at,
      To: 42.1 + at,
    }));
    const [part] = assess({ Classes: table(...classes), Journals: journal(undefined) }).parts.of('Journals');
    expect([part!.status, part!.classification?.text]).toEqual(['no limits', expected]);
  });

  test('without Limits no one asks for it', () => {
    const [part] = assess({ Journals: journal(undefined) }).parts.of('Journals');
    expect(part).toMatchObject({ status: 'no limits' });
    expect(part!.why).toEqual(['uncertainty not given: no gauge']);
  });
});

describe('a Fits sheet that the program made', () => {
  const sheets = (last: string) => ({
    Journals: table({ Part: 'J1', Engine: 'E1', Fit: 'main', Position: 1, 'A 0': 42 }),
    Fits: [
      ['Engine', 'Fit', 'Position', 'Journal', 'Strip reading', last],
      ['e1', 'MAIN', '1', DATE, 0.05, undefined],
      ['E9', 'main', 1, undefined, 0.05, undefined],
    ],
  });

  test('lends its strip readings by place, and nothing else', () => {
    const { book, fits } = assess(sheets('Made by oilgap'));
    expect(book.fits).toBeUndefined();
    expect(book.bad).toEqual([]);
    expect(fits.map(({ engine, isStrip, clearance }) => [engine, isStrip, clearance?.clearance])).toEqual([
      ['E1', true, um(50)],
    ]);
  });

  test("is the user's once that header is gone", () => {
    const { book, fits } = assess(sheets('Remark'));
    expect(book.fits).toHaveLength(2);
    expect(fits.map(({ engine }) => engine)).toEqual(['e1', 'E9']);
  });
});
