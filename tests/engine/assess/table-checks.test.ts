/** What is wrong with the tables as typed, each finding on its row. */
import { describe, expect, test } from 'vitest';
import type { CheckedSheet } from '../../../src/engine/assess/table-checks.js';
import { assess, DATE, type Plain, type Sheets, table } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

/** The findings of each row of a sheet, joined; blank where it is consistent. */
function findings(sheet: CheckedSheet, sheets: Sheets): string[] {
  const rows = assess(sheets).tables[sheet];
  for (const { status, why } of rows) {
    expect(status).toBe(why.length === 0 ? 'consistent' : 'check the source');
  }
  return rows.map(({ why }) => why.join('; '));
}

const LIMITS = { 'Engine type': 'X', Fit: 'main', 'Clearance min': 0.02, 'Clearance max': 0.06 };

describe('Limits', () => {
  test.each<[string, Cells, string]>([
    ['consistent', { 'Service limit': 0.06, 'Journal min': 42, 'Journal max': 42 }, ''],
    ['Clearance min above max', { 'Clearance min': 0.07 }, 'Clearance min and max: 0.07 mm is above 0.06 mm'],
    [
      'Journal min above max',
      { 'Journal min': 43, 'Journal max': 42 },
      'Journal min and max: 43 mm is above 42 mm',
    ],
    ['Bore min above max', { 'Bore min': 61, 'Bore max': 60 }, 'Bore min and max: 61 mm is above 60 mm'],
    [
      'Service limit below max',
      { 'Service limit': 0.059999 },
      'Service limit 0.059999 mm is below Clearance max 0.06 mm',
    ],
    [
      'a bad cell',
      { 'Taper limit': 'x' },
      'Limits!E2 (Taper limit): found the text "x", expected a length of 0 or more (mm, in or µm)',
    ],
    [
      'all that is wrong',
      { 'Clearance min': 0.07, 'Service limit': 0.05 },
      'Clearance min and max: 0.07 mm is above 0.06 mm; Service limit 0.05 mm is below Clearance max 0.06 mm',
    ],
  ])('%s', (_words, cells, why) => {
    expect(findings('Limits', { Limits: table({ ...LIMITS, ...cells }) })).toEqual([why]);
  });

  test('two rows of one type and fit: on both, and the first rules', () => {
    const Limits = table(
      LIMITS,
      { ...LIMITS, Fit: 'big end' },
      { ...LIMITS, 'Engine type': ' x', Fit: 'MAIN', 'Clearance min': 0.01 },
    );
    const [first, other, second] = findings('Limits', { Limits });
    expect([first, other, second]).toEqual([
      '2 rows are for X, main: the first rules',
      '',
      '2 rows are for x, MAIN: the first rules',
    ]);
    // A strip is read to 11.9 µm: 5 µm is under 20, and not under 10.
    const { fits } = assess({
      Limits,
      Journals: table({ Part: 'J', Engine: 'E', Fit: 'main', Position: 1 }),
      Fits: table({ Engine: 'E', Fit: 'main', Position: 1, 'Strip reading': 0.005 }),
    });
    expect(fits[0]!.status).toBe('tight');
  });
});

describe('Classes', () => {
  const of = (Mark: Plain, From: Plain, To: Plain, cells: Cells = {}) => ({
    'Engine type': 'X',
    Fit: 'main',
    Of: 'journal',
    Mark,
    From,
    To,
    ...cells,
  });

  test.each<[string, Cells[], string[]]>([
    ['touching, in any order', [of('B', 42.01, 42.02), of('A', 42, 42.01)], ['', '']],
    [
      'a gap',
      [of('A', 42, 42.01), of('B', 42.010001, 42.02)],
      ['gap to B from 42.01 mm to 42.010001 mm', 'gap to A from 42.01 mm to 42.010001 mm'],
    ],
    [
      'an overlap',
      [of('A', 42, 42.011), of('B', 42.01, 42.02)],
      ['overlap with B from 42.01 mm to 42.011 mm', 'overlap with A from 42.01 mm to 42.011 mm'],
    ],
    [
      'From above To, which makes no gap or overlap',
      [of('A', 42, 42.01), of('B', 42.05, 42.001), of('C', 42.01, 42.02)],
      ['', 'From is above To: the row holds no size', ''],
    ],
    [
      'a mark named twice, in any case',
      [of('a', 42, 42.01), of('B', 42.01, 42.02), of(' A', 42.02, 42.03)],
      ['mark a is named twice', '', 'mark A is named twice'],
    ],
    [
      'a bad cell, whose row takes no part',
      [of('A', 42, 42.01), of('B', 'x', 42.02)],
      ['', 'Classes!E3 (From): found the text "x", expected a length above 0 (mm, in or µm)'],
    ],
    ['blank cells', [of(undefined, 42, undefined)], ['Mark, To left blank']],
    [
      'one kind is not held against another',
      [
        of('A', 42, 42.01),
        of('A', 42, 42.01, { Fit: 'big end' }),
        of('A', 42, 42.01, { Of: 'bore' }),
        of('A', 42, 42.01, { 'Engine type': 'Y' }),
      ],
      ['', '', '', ''],
    ],
    [
      'kinds match in any case',
      [of('A', 42, 42.01), of('B', 42.02, 42.03, { 'Engine type': 'x', Fit: ' MAIN', Of: 'Journal' })],
      ['gap to B from 42.01 mm to 42.02 mm', 'gap to A from 42.01 mm to 42.02 mm'],
    ],
    [
      'a word that is none',
      [of('A', 42, 42.01, { Of: 'crank' })],
      ['Classes!C2 (Of): found the text "crank", expected journal, bore, shell, piston, shaft or cylinder'],
    ],
  ])('%s', (_words, rows, why) => {
    expect(findings('Classes', { Classes: table(...rows) })).toEqual(why);
  });

  test('in inches', () => {
    expect(
      findings('Classes', {
        Setup: table({ Item: 'Length unit', Value: 'in' }),
        Classes: table(of('A', 1.65, 1.6505), of('B', 1.651, 1.6515)),
      }),
    ).toEqual(['gap to B from 1.6505 in to 1.651 in', 'gap to A from 1.6505 in to 1.651 in']);
  });
});

describe('Selection', () => {
  const HEAD = ['Engine type', 'Fit', 'Of', 'Mark', 'From', 'To'];
  const Classes = [
    HEAD,
    ['X', 'main', 'journal', '1', 42, 42.01],
    ['X', 'main', 'journal', '2', 42.01, 42.02],
    ['X', 'main', 'bore', 'A', 45.05, 45.06],
    ['X', 'main', 'shell', 'n', 1.5, 1.503],
    ['X', 'main', 'shell', 'l', 1.495, 1.498],
  ];
  const Limits = table({ ...LIMITS, 'Clearance max': 0.07 });
  const pair = (journal: Plain, bore: Plain, shell: Plain, cells: Cells = {}) => ({
    'Engine type': 'X',
    Fit: 'main',
    'Journal mark': journal,
    'Bore mark': bore,
    'Shell mark': shell,
    ...cells,
  });
  const check = (rows: readonly Cells[], more: Sheets = {}) =>
    findings('Selection', { Limits, Classes, Selection: table(...rows), ...more });

  // Journal 1, bore A, n: 45.05 − 3.006 − 42.01 = 0.034 to 45.06 − 3 − 42 = 0.06.
  // Journal 2, bore A, l: 45.05 − 2.996 − 42.02 = 0.034 to 45.06 − 2.99 − 42.01 = 0.06.
  const GOOD = [pair(1, 'a', 'N'), pair('2', 'A', 'l')];

  test.each<[string, Cells[], string[]]>([
    ['consistent', GOOD, ['', '']],
    ['a pair missing stands on the first row', [GOOD[0]!], ['no row for journal 2 with bore A']],
    [
      'on the first row of its type and fit, whole or not',
      [pair(1, undefined, 'n'), GOOD[0]!],
      ['a mark is blank; no row for journal 2 with bore A', ''],
    ],
    [
      'a pair twice stands on both',
      [...GOOD, pair(1, 'A', 'n')],
      ['journal 1 with bore a is named twice', '', 'journal 1 with bore A is named twice'],
    ],
    [
      'marks that are in no table',
      [...GOOD, pair(3, 'B', 'm')],
      ['', '', 'journal mark 3 is in no table; bore mark B is in no table; shell mark m is in no table'],
    ],
    // L with journal 1: 45.05 − 2.996 − 42.01 = 0.044 to 45.06 − 2.99 − 42 = 0.07; with n 2: 0.024 to 0.05.
    ['a worst case on the limit', [pair(1, 'A', 'l'), pair(2, 'A', 'n')], ['', '']],
    [
      'a bad cell',
      [...GOOD, pair(DATE, 'A', 'n')],
      ['', '', 'Selection!C4 (Journal mark): found a date or time (serial number 45000), expected a name'],
    ],
  ])('%s', (_words, rows, why) => {
    expect(check(rows)).toEqual(why);
  });

  test.each<[string, Cells, string]>([
    [
      'over Clearance max',
      { 'Clearance max': 0.069999 },
      'worst case 0.044 mm to 0.07 mm leaves the clearance range 0.02 mm to 0.069999 mm',
    ],
    [
      'under Clearance min',
      { 'Clearance min': 0.044001, 'Clearance max': 0.08 },
      'worst case 0.044 mm to 0.07 mm leaves the clearance range 0.044001 mm to 0.08 mm',
    ],
    ['without a range there is none', { 'Clearance max': undefined }, ''],
  ])('a worst case %s', (_words, limits, why) => {
    const rows = [pair(1, 'A', 'l'), pair(2, 'A', 'l')];
    expect(check(rows, { Limits: table({ ...LIMITS, ...limits }) })[0]).toBe(why);
  });

  describe('the wall of a mark', () => {
    const head = ['Engine type', 'Fit', 'Half', 'Mark', 'Wall from', 'Wall to'];
    const rows = [pair(1, 'A', 'm'), GOOD[1]!];
    // M of 1.47: 45.05 − 2.94 − 42.01 = 0.1 to 45.06 − 2.94 − 42 = 0.12.
    const worst = 'worst case 0.1 mm to 0.12 mm leaves the clearance range 0.02 mm to 0.07 mm';
    test.each<[string, Plain[][], string]>([
      ['is its row of New shells', [['X', 'main', 'upper', 'M', 1.47, 1.47]], worst],
      [
        'is one, though both halves are listed',
        [
          ['X', 'main', 'upper', 'M', 1.47, 1.47],
          ['X', 'main', 'lower', 'm', 1.47, 1.47],
        ],
        worst,
      ],
      [
        'is not that of another fit',
        [['X', 'big end', 'upper', 'm', 1.47, 1.47]],
        'shell mark m is in no table',
      ],
      [
        'is not that of a row of a bad type',
        [[DATE, 'main', 'upper', 'm', 1.47, 1.47]],
        'shell mark m is in no table',
      ],
      ['is not known from a bad row, though the mark is', [['X', 'main', 'upper', 'm', 'x', 1.47]], ''],
    ])('%s', (_words, shells, why) => {
      expect(check(rows, { 'New shells': [head, ...shells] })).toEqual([why, '']);
    });

    test('is its Classes row before that', () => {
      const shells = [head, ['X', 'main', 'upper', 'n', 1.4, 1.4]];
      expect(check(GOOD, { 'New shells': shells })).toEqual(['', '']);
    });
  });

  test('each type and fit by itself', () => {
    const rows = [...GOOD, pair(1, 'A', 'n', { Fit: 'big end' })];
    expect(check(rows)).toEqual([
      '',
      '',
      'journal mark 1 is in no table; bore mark A is in no table; shell mark n is in no table',
    ]);
  });
});

describe('Gauges', () => {
  const gauge = (Gauge: Plain, from?: Plain, cells: Cells = {}) => ({
    Gauge,
    'Max error': 0.002,
    'Set from': from,
    ...cells,
  });
  test.each<[string, Cells[], string[]]>([
    ['a chain', [gauge('A', 'B'), gauge('B', 'c'), gauge('C')], ['', '', '']],
    [
      'a circle, on each row of it',
      [gauge('A', 'B'), gauge('B', 'a')],
      ['Set from leads in a circle back to A', 'Set from leads in a circle back to B'],
    ],
    ['set from itself', [gauge('A', 'A')], ['Set from leads in a circle back to A']],
    [
      'set from a circle',
      [gauge('A', 'B'), gauge('B', 'C'), gauge('C', 'B')],
      ['', 'Set from leads in a circle back to B', 'Set from leads in a circle back to C'],
    ],
    [
      'set from a gauge that is not listed',
      [gauge('A', 'Z')],
      ['Set from names Z, which Gauges does not list'],
    ],
    [
      'named twice',
      [gauge('A'), gauge('a ')],
      ['gauge A is named 2 times: the first rules', 'gauge a is named 2 times: the first rules'],
    ],
    [
      'a chain goes by the first of two rows',
      [gauge('A', 'B'), gauge('B'), gauge('B', 'A')],
      ['', 'gauge B is named 2 times: the first rules', 'gauge B is named 2 times: the first rules'],
    ],
    [
      'a blank Max error',
      [gauge('A', undefined, { 'Max error': undefined })],
      ['Max error is blank: rows of this gauge cannot be judged'],
    ],
    [
      'a bad cell',
      [gauge('A', undefined, { 'Max error': -1 })],
      ['Gauges!B2 (Max error): found the number -1, expected a length of 0 or more (mm, in or µm)'],
    ],
    [
      'a material in no table',
      [gauge('A', undefined, { Material: 'wood' })],
      [
        'Gauges!D2 (Material): found the text "wood", expected a material of Materials or steel, cast iron, aluminium or magnesium',
      ],
    ],
  ])('%s', (_words, rows, why) => {
    expect(findings('Gauges', { Gauges: table(...rows) })).toEqual(why);
  });
});

test('Materials named twice, or bad', () => {
  const Materials = table(
    { Material: 'bronze', Expansion: 18 },
    { Material: 'Bronze', Expansion: 19 },
    { Material: 'steel', Expansion: 12 },
    { Material: 'wood', Expansion: 'some' },
    { Material: 'slate' },
  );
  expect(findings('Materials', { Materials })).toEqual([
    'material bronze is named 2 times: the first rules',
    'material Bronze is named 2 times: the first rules',
    '',
    'Materials!B5 (Expansion): found the text "some", expected an expansion in 1e-6 per K from 0 to 1000',
    'Expansion is blank: the row says nothing of this material',
  ]);
});

/** Walking the chain anew from every gauge took 8 s for 4,000 gauges, and minutes for these: longer than a test may. */
describe.each([4_000, 20_000])('%i gauges', (COUNT) => {
  const gauges = (last: string | undefined) =>
    table(
      ...Array.from({ length: COUNT }, (_, at) => ({
        Gauge: `G${at}`,
        'Max error': 0.002,
        'Set from': at + 1 < COUNT ? `G${at + 1}` : last,
      })),
    );

  test('in a circle: each is named as part of it, and stands behind a reading once', () => {
    const Gauges = gauges('G0');
    const found = findings('Gauges', { Gauges });
    expect(found.every((why, at) => why === `Set from leads in a circle back to G${at}`)).toBe(true);
    const Journals = table({ Part: 'J1', Engine: 'E', Position: 1, Fit: 'main', 'A 0': 42, Gauge: 'G7' });
    expect(assess({ Gauges, Journals }).parts.all()[0]!.measured!.systematic).toHaveLength(COUNT);
  });

  test('in a chain: nothing is wrong, and those above a gauge stand behind its readings', () => {
    const Gauges = gauges(undefined);
    expect(findings('Gauges', { Gauges }).every((why) => why === '')).toBe(true);
    const Journals = table(
      ...['G0', `G${COUNT - 10}`].map((Gauge, at) => ({
        Part: `J${at}`,
        Engine: 'E',
        Position: at,
        Fit: 'main',
        'A 0': 42,
        Gauge,
      })),
    );
    const { parts } = assess({ Gauges, Journals });
    expect(parts.all().map(({ measured }) => measured!.systematic.length)).toEqual([COUNT, 10]);
  });
});
