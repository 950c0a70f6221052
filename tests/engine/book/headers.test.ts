/** Which columns of a sheet are known, which hold readings, and which are the user's. */
import { describe, expect, test } from 'vitest';
import { findSheet } from '../../../src/engine/book/find-tables.js';
import { assess, bookOf, FILE, modelOf, type Plain, table, um, whyOf } from '../book-of.js';

const JOURNALS: Plain[] = ['Part', 'Engine', 'Fit', 'Position'];

function journalsWith(headers: readonly Plain[], values: readonly Plain[] = []) {
  return bookOf({
    Journals: [
      [...JOURNALS, ...headers],
      ['J1', 'E1', 'big end', 1, ...values],
    ],
  });
}

function readingColumns(sheet: 'Journals' | 'Shells', header: string) {
  const book =
    sheet === 'Journals'
      ? journalsWith([header])
      : bookOf({
          Shells: [
            ['Part', 'Half', header],
            ['S1', 'upper'],
          ],
        });
  return book.tables
    .get(sheet)!
    .readingColumns.map(({ station, angle, repeat, unit }) => ({ station, angle, repeat, unit }));
}

describe('a diameter column', () => {
  test.each([
    ['A 0', 'A', 0, 1, 'mm'],
    ['a 90', 'A', 90, 1, 'mm'],
    ['Front 45', 'Front', 45, 1, 'mm'],
    ['MID 0', 'Mid', 0, 1, 'mm'],
    ['middle 0', 'Mid', 0, 1, 'mm'],
    ['Centre 90', 'Centre', 90, 1, 'mm'],
    ['Rear 359', 'Rear', 359, 1, 'mm'],
    ['A 0 #2', 'A', 0, 2, 'mm'],
    ['A 0#3', 'A', 0, 3, 'mm'],
    ['A 0°', 'A', 0, 1, 'mm'],
    ['  A\u00a0 0 ', 'A', 0, 1, 'mm'],
    ['A 0 (in)', 'A', 0, 1, 'in'],
    ['A 0 [µm]', 'A', 0, 1, 'µm'],
    ['A 0 (")', 'A', 0, 1, 'in'],
    ['A 0 #2 (in)', 'A', 0, 2, 'in'],
    ['Ａ ９０', 'A', 90, 1, 'mm'],
    ['A 90:', 'A', 90, 1, 'mm'],
    ['A 90.', 'A', 90, 1, 'mm'],
    ['A 90 -', 'A', 90, 1, 'mm'],
    ['A 90°:', 'A', 90, 1, 'mm'],
    ['* A 90', 'A', 90, 1, 'mm'],
    ['- front 45 *', 'Front', 45, 1, 'mm'],
    ['(A 90)', 'A', 90, 1, 'mm'],
    ['A 0 #2:', 'A', 0, 2, 'mm'],
    ['A 0 (in):', 'A', 0, 1, 'in'],
    ['A 0 [in].', 'A', 0, 1, 'in'],
    ['A 0: (in) *', 'A', 0, 1, 'in'],
    ['* A 0 #2 (µm) -', 'A', 0, 2, 'µm'],
    ['(A 0 [µm])', 'A', 0, 1, 'µm'],
  ] as const)('%s', (header, station, angle, repeat, unit) => {
    expect(readingColumns('Journals', header)).toEqual([{ station, angle, repeat, unit }]);
  });

  test.each([
    ['A 360', 'an angle of a whole turn'],
    ['A 720', 'an angle beyond a turn'],
    ['A 22.5', 'no whole degrees'],
    ['A -90', 'a negative angle'],
    ['Lot 3', 'a word that is no station'],
    ['AB 0', 'two letters'],
    ['A', 'no angle'],
    ['0', 'no station'],
    ['A 0 (cm)', 'a unit not known'],
    ['A 0 old', 'a word behind it'],
    ['A 0 (new):', 'a word behind it, in brackets'],
    ['A 0 (in) old', 'a word behind its unit'],
    ['A 0 "', 'a unit outside brackets'],
    ['A 0 %:', 'a unit outside brackets'],
    ['A 0, mm', 'a unit outside brackets'],
    ['A-90', 'maybe a negative angle'],
    ['A: 90', 'punctuation within it'],
    ['A 0 2', 'two numbers'],
    ['A 90 #', 'a repeat without its number'],
    ['# A 90', 'a number sign before it'],
    ['Wall 1', 'a wall on a sheet of diameters'],
  ])("%s is the user's: %s", (header) => {
    expect(readingColumns('Journals', header)).toEqual([]);
  });
});

describe('a wall column', () => {
  test.each([
    ['Wall 1', 'Wall 1', 1, 'mm'],
    ['wall 12', 'Wall 12', 1, 'mm'],
    ['Wall 1 [µm]', 'Wall 1', 1, 'µm'],
    ['Wall 2 #2', 'Wall 2', 2, 'mm'],
    ['Wall 1:', 'Wall 1', 1, 'mm'],
    ['Wall 1 [µm] *', 'Wall 1', 1, 'µm'],
    ['* Wall 2 #2 (in):', 'Wall 2', 2, 'in'],
  ])('%s', (header, station, repeat, unit) => {
    expect(readingColumns('Shells', header)).toEqual([{ station, angle: undefined, repeat, unit }]);
  });

  test.each(['A 0', 'Wall', 'Wall A', 'Wall thickness 1'])("%s is the user's", (header) => {
    expect(readingColumns('Shells', header)).toEqual([]);
  });
});

describe('a known column', () => {
  test.each([
    'Clearance min',
    'CLEARANCE MIN',
    ' clearance  min ',
    'Clearance-min',
    'Clearance_min.',
    'Clearance min (mm)',
    'Clearance min [mm]',
    'Clearance min (mm) -',
    'Clearance min [mm]:',
    '* Clearance min: (mm) *',
    '(Clearance min [mm])',
  ])('%s', (header) => {
    const book = bookOf({
      Limits: [
        ['Engine type', 'Fit', header, 'Clearance max', 'Out of round limit'],
        ['X', 'main', 0.02, 0.06, 0.005],
      ],
    });
    expect(book.limits[0]).toMatchObject({ clearanceMin: um(20), outOfRoundLimit: um(5) });
  });

  test.each(['Journal max [µm]:', 'Journal max (µm) -', 'Journal max. [ µm ] *'])(
    'its unit counts whatever punctuation follows: %s',
    (header) => {
      const limits = table({
        'Engine type': 'X',
        Fit: 'main',
        'Clearance min': 0.02,
        'Clearance max': 0.06,
        [header]: 42_005,
      });
      expect(bookOf({ Limits: limits }).limits[0]).toMatchObject({ journalMax: um(42_005) });
    },
  );

  test.each([
    'Journal max (new)',
    'Journal max (new):',
    'Journal max (mm) new',
    'Journal max, mm',
    'Journal max [mm] #2',
  ])("with other words is the user's: %s", (header) => {
    const limits = table({
      'Engine type': 'X',
      Fit: 'main',
      'Clearance min': 0.02,
      'Clearance max': 0.06,
      [header]: 42,
    });
    expect(bookOf({ Limits: limits }).limits[0]).toMatchObject({ journalMax: undefined });
  });

  test('a limit with unit and punctuation in its header finds the journal beyond it', () => {
    const { parts } = assess({
      Limits: table({
        'Engine type': 'X',
        Fit: 'main',
        'Clearance min': 0.02,
        'Clearance max': 0.06,
        'Journal max [µm]:': 42_005,
      }),
      Journals: [
        [...JOURNALS, 'A 0:', 'A 90 *'],
        ['J1', 'E1', 'main', 1, 42.004, 42.006],
      ],
    });
    expect(parts.of('Journals')[0]!.status).toBe('beyond limits');
    expect(whyOf(parts.of('Journals')[0]!)).toContain('largest is 0.001 mm over Journal max 42.005 mm');
  });

  test('its unit wins over Setup, and that of the cell over both', () => {
    const book = bookOf({
      Setup: [
        ['Item', 'Value'],
        ['Length unit', 'in'],
      ],
      Gauges: [
        ['Gauge', 'Max error (µm)', 'Resolution', 'Repeatability (µm)'],
        ['M1', 2, 0.0001, '0.001 mm'],
      ],
    });
    // 0.0001 in is 2.54 µm.
    expect(book.gauges[0]).toMatchObject({ maxError: um(2), resolution: um(2.54), repeatability: um(1) });
  });

  test('twice is read once, and said', () => {
    const book = journalsWith(['Mark', 'MARK', 'A 0', 'a 0'], ['B', 'C', 42.003, 42.004]);
    expect(book.parts.of('Journals')[0]).toMatchObject({ mark: 'B' });
    expect(book.parts.of('Journals')[0]!.readings).toHaveLength(1);
    expect(book.notices.join('\n')).toMatch(/second column of what the header "MARK" means.*\n.*"a 0" means/);
  });

  test('A 0 and A 0 #2 are repeats of one spot', () => {
    const book = journalsWith(['A 0', 'A 0 #2', 'A 0 #1'], [42.003, 42.004, 42.005]);
    expect(book.parts.of('Journals')[0]!.readings.map(({ column }) => column.repeat)).toEqual([1, 2]);
    expect(book.notices).toHaveLength(1);
  });
});

describe('a sheet', () => {
  test.each(['Journals', 'JOURNALS', ' journals ', 'Journals.'])('%s', (name) => {
    expect(bookOf({ [name]: [JOURNALS, ['J1', 'E1', 'main', 1]] }).parts.of('Journals')).toHaveLength(1);
  });

  test('New shells may be one word', () => {
    expect(findSheet(modelOf({ Newshells: [] }), 'New shells')).toBeDefined();
  });

  test('that is not known stays as it is', () => {
    const book = bookOf({ Journals: [JOURNALS, ['J1', 'E1', 'main', 1]], Notes: [['anything']] });
    expect([...book.tables.keys()]).toEqual(['Journals']);
  });

  test('of blank cells is as good as none', () => {
    const book = bookOf({ Journals: [JOURNALS, ['J1', 'E1', 'main', 1]], Limits: [[undefined, ' '], []] });
    expect([...book.tables.keys()]).toEqual(['Journals']);
  });

  test('begins at its first row that is not blank, and skips blank rows', () => {
    const book = bookOf({
      Journals: [[], [undefined, ''], JOURNALS, ['J1', 'E1', 'main', 1], [' '], ['J2', 'E1', 'main', 2]],
    });
    expect(book.parts.of('Journals').map(({ name, row }) => [name, row])).toEqual([
      ['J1', 3],
      ['J2', 5],
    ]);
  });

  test('without a needed column is refused by name', () => {
    expect(() => bookOf({ Journals: [['Part', 'Engine', 'Fit'], ['J1']] })).toThrow(
      `${FILE}: sheet Journals: found no column "Position" in row 1; expected one header row with it; add the column`,
    );
  });

  test('none that is known', () => {
    expect(() => bookOf({ Notes: [['anything']] })).toThrow(/found no sheet that oilgap knows/);
  });
});

describe('the header row', () => {
  const ROW = ['J1', 'E1', 'main', 1];
  const TITLE = ['Crankshaft of the green engine', undefined, undefined, undefined, undefined, 'A 0'];

  test.each([
    ['a title', [TITLE]],
    ['a title with an empty row below it', [TITLE, []]],
    ['four rows of titles', [TITLE, ['Part'], ['Part', 'Engine'], ['Part', 'Engine', 'Fit']]],
  ])('stands below %s', (_, titles) => {
    const book = bookOf({ Journals: [...titles, [...JOURNALS, 'A 0'], [...ROW, 42.003]] });
    const [part] = book.parts.of('Journals');
    expect(part).toMatchObject({ name: 'J1', row: titles.length + 1 });
    expect(part!.readings).toHaveLength(1);
    expect(book.tables.get('Journals')!.headerRow).toBe(titles.length);
    expect(book.notices).toEqual([]);
  });

  test('is the first that holds every needed header', () => {
    const book = bookOf({ Journals: [[...JOURNALS, 'A 0'], [...JOURNALS, 'A 90'], ROW] });
    expect(book.tables.get('Journals')!.headerRow).toBe(0);
  });

  test.each([
    ['below the fifth row', [...Array(5).fill(['Title']), JOURNALS, ROW], 'in its first five rows'],
    ['without a needed header', [['Title'], ['Part', 'Engine', 'Fit'], ROW], 'in row 2'],
  ])('%s: the sheet is named and not read', (_, rows, place) => {
    const book = bookOf({ Journals: rows, Rods: [['Part'], ['R1']] });
    expect([...book.tables.keys()]).toEqual(['Rods']);
    expect(book.notices).toEqual([
      expect.stringMatching(
        new RegExp(
          `^${FILE}: sheet Journals: found no column .*"Position" ${place}; .*the sheet is not read\\.$`,
        ),
      ),
    ]);
  });

  test('of Setup stands below a title too', () => {
    const book = bookOf({
      Setup: [['Settings'], ['Item', 'Value'], ['Length unit', 'in']],
      Journals: [JOURNALS, ROW],
    });
    expect(book.setup.lengthUnit).toBe('in');
  });
});

describe('a header of two names', () => {
  const columnsOf = (...headers: string[]) => {
    const { columns, readingColumns } = journalsWith(headers).tables.get('Journals')!;
    return {
      known: [...columns].filter(([, { column }]) => column >= JOURNALS.length).map(([name]) => name),
      readings: readingColumns.map(({ column, header, unit }) => `${column} ${header} ${unit}`),
    };
  };

  test.each([
    ['Mark / Klasse', ['Mark'], []],
    ['Klasse/Mark', ['Mark'], []],
    ['Klasse\nMark', ['Mark'], []],
    ['Klasse ／ Mark', ['Mark'], []],
    ['Mark / Klasse / Classe', ['Mark'], []],
    ['Gauge / Temperature', ['Gauge', 'Temperature'], []],
    ['Ma\nrk', ['Mark'], []],
    ['Vorne 0 / A 0', [], ['4 A 0 mm']],
    ['A 0\nVorne 0 (in)', [], ['4 A 0 in']],
    ['A 0 [µm] / Vorne 0', [], ['4 A 0 µm']],
    ['A 0 / B 90', [], ['4 A 0 mm']],
    ['A 0\n(in)', [], ['4 A 0 in']],
    ['A 0 / Vorne 0\n(in)', [], ['4 A 0 in']],
    ['Klasse (alt / Mark)', [], []],
    ['Klasse [alt / Mark] B', [], []],
    ['Klasse - Mark', [], []],
  ])('%j', (header, known, readings) => {
    expect(columnsOf(header)).toEqual({ known, readings });
  });

  test('makes needed columns known, and the first of two columns counts', () => {
    const book = bookOf({
      Journals: [
        ['Part / Teil', 'Engine / Motor', 'Sitz\nFit', 'Position / Stelle', 'Mark / Klasse', 'Mark'],
        ['J1', 'E1', 'main', 1, 'B', 'C'],
      ],
    });
    expect(book.parts.of('Journals')).toMatchObject([{ name: 'J1', engine: 'E1', fit: 'main', mark: 'B' }]);
    expect(book.notices.join()).toContain('a second column of what the header "Mark" means');
  });
});
