/** What is said of a part: the verdict by its limits, its class and mark. */
import { describe, expect, test } from 'vitest';
import { assess, DATE, type Plain, type Sheets, table, um, whyOf } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const JOURNAL = { Part: 'J1', Engine: 'E1', Fit: 'main', Position: 1 };
const CASE = { Part: 'C1', Engine: 'E1', Position: 1 };
const LIMITS = { 'Engine type': 'X', Fit: 'main', 'Clearance min': 0.02, 'Clearance max': 0.06 };

function journalOf(cells: Cells, sheets: Sheets = {}) {
  return assess({ Journals: table({ ...JOURNAL, ...cells }), ...sheets }).parts.of('Journals')[0]!;
}

describe('the verdict of a journal', () => {
  // Max error 2 µm and 1 µm resolution on 42 mm, one spot: u = √(2000²/3 + 1000²/12 + 241.5²) = 1214.49 grains,
  // times 1.644854 is 1997.66.
  const Gauges = table({ Gauge: 'M1', 'Max error': 0.002, Resolution: 0.001 });
  const GUARD = 1998;
  const off = (grains: number) => Number((42 + grains / 1e6).toFixed(6));
  const verdict = (cells: Cells, limits: Cells) =>
    journalOf(cells, { Gauges, Limits: table({ ...LIMITS, ...limits }) });

  test.each<[string, Cells, Cells, string, string]>([
    [
      'no limits of its own',
      { 'A 0': 42 },
      { 'Bore min': 40 },
      'no limits',
      'Limits types no limit of its own for the journal',
    ],
    ['on Journal min', { 'A 0': 42 }, { 'Journal min': 42 }, 'within limits', ''],
    ['on Journal max', { 'A 0': 42 }, { 'Journal max': 42 }, 'within limits', ''],
    [
      'a grain under',
      { 'A 0': 41.999999 },
      { 'Journal min': 42 },
      'beyond limits',
      'smallest is 0.000001 mm under Journal min 42 mm',
    ],
    [
      'a grain over',
      { 'A 0': 42.000001 },
      { 'Journal max': 42 },
      'beyond limits',
      'largest is 0.000001 mm over Journal max 42 mm',
    ],
    [
      'the smallest spot counts',
      { 'A 0': 42.01, 'B 0': 41.99 },
      { 'Journal min': 42 },
      'beyond limits',
      'smallest is 0.01 mm',
    ],
    [
      'a worn journal by its Wear limit',
      { 'A 0': 41.98 },
      { 'Journal min': 41.99, 'Wear limit': 41.97 },
      'within limits',
      '',
    ],
    [
      'below its Wear limit',
      { 'A 0': 41.96 },
      { 'Journal min': 41.95, 'Wear limit': 41.97 },
      'beyond limits',
      'under Wear limit 41.97 mm',
    ],
    [
      'Journal max beside a Wear limit',
      { 'A 0': 42.01 },
      { 'Wear limit': 41.97, 'Journal max': 42 },
      'beyond limits',
      'over Journal max',
    ],
    ['on the Taper limit', { 'A 0': 42.005, 'B 0': 42 }, { 'Taper limit': 0.005 }, 'within limits', ''],
    [
      'over the Taper limit',
      { 'A 0': 42.005001, 'B 0': 42 },
      { 'Taper limit': 0.005 },
      'beyond limits',
      'taper is 0.000001 mm over Taper limit 0.005 mm',
    ],
    [
      'over the Out-of-round limit',
      { 'A 0': 42.006, 'A 90': 42 },
      { 'Out-of-round limit': 0.005 },
      'beyond limits',
      'out of round is 0.001 mm over Out-of-round limit 0.005 mm',
    ],
    [
      'a Taper limit with one station',
      { 'A 0': 42, 'A 90': 42 },
      { 'Taper limit': 0.005, 'Journal min': 41 },
      'undecided',
      "can't work out taper yet",
    ],
    [
      'the same where another check fails',
      { 'A 0': 42, 'A 90': 42 },
      { 'Taper limit': 0.005, 'Journal min': 43 },
      'beyond limits',
      'smallest is 1 mm under Journal min 43 mm',
    ],
    ['inside by its guard', { Gauge: 'M1', 'A 0': off(GUARD) }, { 'Journal min': 42 }, 'within limits', ''],
    [
      'inside by a grain less',
      { Gauge: 'M1', 'A 0': off(GUARD - 1) },
      { 'Journal min': 42 },
      'undecided',
      'smallest 42.001997 mm is 0.001997 mm from Journal min 42 mm, nearer than we can measure (±0.001998 mm)',
    ],
    [
      'outside by its guard',
      { Gauge: 'M1', 'A 0': off(-GUARD) },
      { 'Journal min': 42 },
      'undecided',
      'nearer than we can measure',
    ],
    [
      'outside by a grain more',
      { Gauge: 'M1', 'A 0': off(-GUARD - 1) },
      { 'Journal min': 42 },
      'beyond limits',
      'smallest is 0.001999 mm under',
    ],
    ['not measured', {}, { 'Journal min': 42 }, 'not measured', ''],
    [
      'a bad cell before all',
      { 'A 0': 30, 'A 90': 'x' },
      { 'Journal min': 42 },
      'bad reading',
      'Journals!F2 (A 90): found the text "x"',
    ],
    [
      'a bad Mark as well',
      { Mark: DATE, 'A 0': 42 },
      { 'Journal min': 41 },
      'bad reading',
      'Journals!E2 (Mark)',
    ],
  ])('%s', (_words, cells, limits, status, why) => {
    const part = verdict(cells, limits);
    expect(part.status).toBe(status);
    expect(part.why[0] ?? '').toContain(why);
  });

  test('a part that is not usable is judged all the same', () => {
    const part = verdict({ Usable: 'no', 'A 0': 42 }, { 'Journal min': 41 });
    expect(part).toMatchObject({ status: 'within limits' });
    expect(part.why).toContain('marked as not usable');
  });

  test.each<[string, Cells, string]>([
    [
      'a refused Journal min beside a Wear limit costs nothing',
      { 'Journal min': 'x', 'Wear limit': 41 },
      'within limits',
    ],
    ['a refused Wear limit costs the verdict', { 'Journal min': 41, 'Wear limit': 'x' }, 'undecided'],
    ['a refused Journal min alone costs the verdict', { 'Journal min': 'x', 'Journal max': 43 }, 'undecided'],
    ['unless another check fails', { 'Journal min': 'x', 'Journal max': 41 }, 'beyond limits'],
  ])('%s', (_words, limits, status) => {
    expect(verdict({ 'A 0': 42 }, limits).status).toBe(status);
  });

  test('a bad Journal material costs the journals of that type and fit', () => {
    const { parts } = assess({
      Limits: table({ ...LIMITS, 'Journal material': 'unobtainium', 'Bore min': 59 }),
      Journals: table({ ...JOURNAL, 'A 0': 42 }),
      Cases: table({ ...CASE, 'A 0': 60 }),
    });
    expect([parts.of('Journals')[0]!.status, parts.of('Cases')[0]!.status]).toEqual([
      'bad reading',
      'within limits',
    ]);
    expect(whyOf(parts.of('Journals')[0]!)).toContain('Limits!E2 (Journal material)');
  });
});

describe('the verdict of a part of several spots that scatter by 2 µm', () => {
  const sheets = {
    Materials: table({ Material: 'steel', Expansion: 0 }),
    Gauges: table({ Gauge: 'R', 'Max error': 0, Repeatability: 0.002 }),
  };
  /** Four spots, in µm above 42 mm. */
  const spotsOf = (...above: readonly [number, number, number, number]) =>
    Object.fromEntries(
      ['A 0', 'A 90', 'B 0', 'B 90'].map((spot, at) => [spot, Number((42 + above[at]! / 1e3).toFixed(6))]),
    );

  // Extremes of four: inside 1.644854 · 2000 = 3289.7 grains, outside 1.644854 · 0.7012 · 2000 + 1.0294 · 2000 = 4365.5.
  const [INSIDE, OUTSIDE] = [3.29, 4.366];
  // Form, two pairs: inside √2 · 1.644854 · 2000 = 4652.3; outside √2 · Φ⁻¹(√0.95) · 2000 = √2 · 1.954508 · 2000 = 5528.2.
  const [FORM_INSIDE, FORM_OUTSIDE] = [4.652, 5.528];
  const GRAIN = 0.001;

  test.each<[string, readonly [number, number, number, number], Cells, string, string]>([
    ['inside by the guard', [INSIDE, 9, 9, 9], { 'Journal min': 42 }, 'within limits', ''],
    [
      'inside by a grain less',
      [INSIDE - GRAIN, 9, 9, 9],
      { 'Journal min': 42 },
      'undecided',
      'smallest 42.003289 mm is 0.003289 mm from Journal min 42 mm, nearer than we can measure (±0.00329 mm)',
    ],
    [
      'under it by more than the guard inside',
      [-INSIDE - GRAIN, 9, 9, 9],
      { 'Journal min': 42 },
      'undecided',
      'smallest 41.996709 mm is 0.003291 mm from Journal min 42 mm, nearer than we can measure (±0.004366 mm)',
    ],
    ['under it by the guard outside', [-OUTSIDE, 9, 9, 9], { 'Journal min': 42 }, 'undecided', 'smallest'],
    [
      'under it by a grain more',
      [-OUTSIDE - GRAIN, 9, 9, 9],
      { 'Journal min': 42 },
      'beyond limits',
      'smallest is 0.004367 mm under Journal min 42 mm',
    ],
    ['over its max by the guard outside', [OUTSIDE, -9, -9, -9], { 'Journal max': 42 }, 'undecided', ''],
    [
      'over its max by a grain more',
      [OUTSIDE + GRAIN, -9, -9, -9],
      { 'Journal max': 42 },
      'beyond limits',
      'largest is 0.004367 mm over Journal max 42 mm',
    ],
    ['round by the guard', [10 - FORM_INSIDE, 0, 0, 0], { 'Out-of-round limit': 0.01 }, 'within limits', ''],
    [
      'out of round by the guard outside',
      [10 + FORM_OUTSIDE, 0, 0, 0],
      { 'Out-of-round limit': 0.01 },
      'undecided',
      'out of round 0.015528 mm is 0.005528 mm from Out-of-round limit 0.01 mm, nearer than we can measure (±0.005528 mm)',
    ],
    [
      'out of round by a grain more',
      [10 + FORM_OUTSIDE + GRAIN, 0, 0, 0],
      { 'Out-of-round limit': 0.01 },
      'beyond limits',
      'out of round is 0.005529 mm over',
    ],
    [
      'tapered by the guard outside',
      [0, 0, 10 + FORM_OUTSIDE, 0],
      { 'Taper limit': 0.01 },
      'undecided',
      'taper 0.015528 mm is 0.005528 mm from Taper limit 0.01 mm, nearer than we can measure (±0.005528 mm)',
    ],
    [
      'tapered by a grain more',
      [0, 0, 10 + FORM_OUTSIDE + GRAIN, 0],
      { 'Taper limit': 0.01 },
      'beyond limits',
      'taper is 0.005529 mm over',
    ],
  ])('%s', (_words, spots, limits, status, why) => {
    const part = journalOf(
      { Gauge: 'R', ...spotsOf(...spots) },
      { ...sheets, Limits: table({ ...LIMITS, ...limits }) },
    );
    expect(part.status).toBe(status);
    expect(part.why[0] ?? '').toContain(why);
  });
});

describe('a part whose material is not typed, measured away from 20 °C', () => {
  const bore = (cells: Cells, limits: Cells) =>
    assess({
      Gauges: table({ Gauge: 'M1', 'Max error': 0.002, Resolution: 0.001 }),
      Limits: table({ ...LIMITS, ...limits }),
      Cases: table({ ...CASE, Gauge: 'M1', 'A 0': 60, ...cells }),
    }).parts.of('Cases')[0]!;
  const WANTED = 'not corrected to 20 °C: type Bore material in Limits';

  test.each<[string, Cells, Cells, string]>([
    ['far inside its limits', { Temperature: 30 }, { 'Bore min': 59, 'Bore max': 61 }, 'undecided'],
    ['far beyond them', { Temperature: 10 }, { 'Bore min': 61 }, 'undecided'],
    ['near one', { Temperature: 30 }, { 'Bore min': 60 }, 'undecided'],
    ['without limits of its own', { Temperature: 30 }, {}, 'no limits'],
    ['bad', { Temperature: 30, 'A 90': 'x' }, { 'Bore min': 59 }, 'bad reading'],
    ['not measured', { Temperature: 30, 'A 0': undefined }, { 'Bore min': 59 }, 'not measured'],
    ['at 20 °C', { Temperature: 20 }, { 'Bore min': 59 }, 'within limits'],
    ['at no temperature', {}, { 'Bore min': 59 }, 'within limits'],
    ['of a material', { Temperature: 30 }, { 'Bore min': 59, 'Bore material': 'steel' }, 'within limits'],
  ])('%s: as %s', (_words, cells, limits, status) => {
    const part = bore(cells, limits);
    expect(part.status).toBe(status);
    const isWanted = status === 'undecided' || status === 'no limits';
    expect(part.why.includes(WANTED)).toBe(isWanted);
  });

  test('a limit of its own that was refused is named beside the material', () => {
    const part = bore({ Temperature: 30 }, { 'Bore min': 'x' });
    expect(part.status).toBe('undecided');
    expect(part.why).toContain(WANTED);
    expect(whyOf(part)).toContain('(Bore min): found the text "x"');
  });

  test('its sizes, class and U are shown, without a term of temperature', () => {
    const part = bore({ Temperature: 30 }, { 'Bore min': 59 });
    expect(part.form?.size).toBe(um(60_000));
    expect(part.why[0]).toBe(WANTED);
    // 2 · √(2000²/3 + 1000²/12).
    expect(part.sizeU).toBe(Math.round(2 * Math.sqrt(2000 ** 2 / 3 + 1000 ** 2 / 12)));
    expect(part.measured).toMatchObject({
      temperatureVariance: 0,
      ownExpansion: 0,
      gaugeExpansion: undefined,
    });
  });

  test('journals, rods and shells are of steel where nothing is typed', () => {
    const { parts } = assess({
      Limits: table({ ...LIMITS, 'Journal min': 41 }, { ...LIMITS, Fit: 'big end', 'Bore min': 44 }),
      Journals: table({ ...JOURNAL, Temperature: 30, 'A 0': 42 }),
      Rods: table({ Part: 'R1', Temperature: 30, 'A 0': 45 }),
      Shells: table({ Part: 'S1', Half: 'upper', Temperature: 30, 'Wall 1': 1.5 }),
    });
    const found = [...parts.of('Journals'), ...parts.of('Rods'), ...parts.of('Shells')];
    expect(found.map(({ status, isUncorrected }) => [status, isUncorrected])).toEqual([
      ['within limits', false],
      ['within limits', false],
      ['measured', false],
    ]);
  });
});

test('a case bore of another fit goes by the limits of that fit', () => {
  const { parts } = assess({
    Limits: table(
      { ...LIMITS, Fit: 'main', 'Bore min': 59, 'Bore max': 61 },
      { ...LIMITS, Fit: 'balance shaft', 'Bore min': 29, 'Bore max': 31 },
    ),
    Cases: table(
      { ...CASE, Part: 'C1', 'A 0': 60 },
      { ...CASE, Part: 'C2', Fit: 'Balance shaft', 'A 0': 30 },
    ),
  });
  expect(parts.of('Cases').map(({ row, status }) => [row.fit, status])).toEqual([
    ['main', 'within limits'],
    ['Balance shaft', 'within limits'],
  ]);
});

test.each<[string, Cells, Cells, string]>([
  ['on Bore min', { 'A 0': 60 }, { 'Bore min': 60 }, 'within limits'],
  ['under Bore min', { 'A 0': 59.99 }, { 'Bore min': 60 }, 'beyond limits'],
  ['over Bore max', { 'A 0': 60.01 }, { 'Bore max': 60 }, 'beyond limits'],
  ['the largest spot counts', { 'A 0': 60.01, 'B 0': 59.9 }, { 'Bore max': 60 }, 'beyond limits'],
  [
    'limits of journals are none of its own',
    { 'A 0': 60 },
    { 'Wear limit': 61, 'Journal max': 42 },
    'no limits',
  ],
  ['out of round', { 'A 0': 60, 'A 90': 60.006 }, { 'Out-of-round limit': 0.005 }, 'beyond limits'],
])('the verdict of a bore: %s', (_words, cells, limits, status) => {
  const sheets = { Limits: table({ ...LIMITS, ...limits }), Cases: table({ ...CASE, ...cells }) };
  expect(assess(sheets).parts.of('Cases')[0]!.status).toBe(status);
});

describe('a shell', () => {
  const shellOf = (cells: Cells, sheets: Sheets = {}) =>
    assess({ Shells: table({ Part: 'S1', Half: 'upper', ...cells }), ...sheets }).parts.of('Shells')[0]!;

  test.each<[string, Cells, string, string]>([
    ['measured', { 'Wall 1': 1.5 }, 'measured', ''],
    ['not measured', {}, 'not measured', ''],
    ['a bad wall', { 'Wall 1': 0 }, 'bad reading', 'Shells!C2 (Wall 1)'],
    ['a blank Half', { Half: undefined, 'Wall 1': 1.5 }, 'measured', 'Half is blank: the shell is not used'],
    ['not usable', { Usable: 'no', 'Wall 1': 1.5 }, 'measured', 'marked as not usable'],
  ])('%s', (_words, cells, status, why) => {
    const part = shellOf(cells);
    expect(part.status).toBe(status);
    expect(whyOf(part)).toContain(why);
  });

  test('by default is of a big end, and one', () => {
    expect(shellOf({ 'Wall 1': 1.5 }).row).toMatchObject({ fit: 'big end', quantity: 1 });
    expect(shellOf({ Fit: 'Main', Quantity: '4', Half: 'EITHER' }).row).toMatchObject({
      fit: 'Main',
      quantity: 4,
      half: 'either',
    });
  });
});

describe('the class', () => {
  const Classes = [
    ['Engine type', 'Fit', 'Of', 'Mark', 'From', 'To'],
    ['X', 'main', 'journal', 'A', 42, 42.006],
    ['X', 'main', 'Journal', 'B', 42.006, 42.012],
    ['X', 'main', 'journal', 'C', 42.01, 42.018],
    ['X', 'main', 'journal', 'E', 42.024, 42.03],
    ['X', 'main', 'journal', 'bad', 'x', 50],
    ['X', 'main', 'journal', 'upside down', 42.04, 42.02],
    ['X', 'big end', 'journal', 'other fit', 41, 43],
    ['Y', 'main', 'journal', 'other type', 41, 43],
    ['X', 'main', 'bore', 'bore', 41, 43],
  ];
  const classOf = (size: number, cells: Cells = {}, sheets: Sheets = {}) =>
    journalOf({ 'Engine type': 'x', 'A 0': size, ...cells }, { Classes, ...sheets });

  test.each([
    [42, 'A'],
    [42.005999, 'A'],
    [42.006, 'B'],
    [42.01, 'B/C'],
    [42.012, 'C'],
    [42.018, 'between C and E'],
    [42.02, 'between C and E'],
    [42.03, 'E'],
    [42.030001, 'above E'],
    [41.999999, 'below A'],
  ])('of %f', (size, text) => {
    expect(classOf(size).classification?.text).toBe(text);
  });

  test.each<[Plain, number, string]>([
    ['B', 42.003, 'marked B, measured class A'],
    ['a', 42.003, ''],
    [' B ', 42.01, ''],
    ['A', 42.02, 'marked A, measured class between C and E'],
    [undefined, 42.003, ''],
  ])('the mark %s on a part of %f', (mark, size, why) => {
    const part = classOf(size, { Mark: mark }, { Limits: table({ ...LIMITS, 'Journal min': 40 }) });
    expect(part.status).toBe('within limits');
    expect(part.why.filter((reason) => reason.startsWith('marked')).join()).toBe(why);
  });

  test('a row with a bad cell takes no part, whichever cell it is', () => {
    const bad = [
      Classes[0]!,
      [DATE, 'main', 'journal', 'A', 42, 42.006],
      ['X', 'main', 'journal', DATE, 42, 43],
    ];
    const part = classOf(42, {}, { Classes: bad, Limits: table(LIMITS) });
    expect(part.classification?.text).toBe('');
  });

  test('of a part without a known type is blank', () => {
    const Limits = table(LIMITS, { ...LIMITS, 'Engine type': 'Y' });
    const untyped = [Classes[0]!, [undefined, 'main', 'journal', 'A', 42, 42.006]];
    const part = journalOf({ 'A 0': 42 }, { Limits, Classes: untyped });
    expect(part).toMatchObject({ status: 'no limits', classification: { text: '' } });
  });

  test('of shells and bores', () => {
    const { parts } = assess({
      Classes: [Classes[0]!, ['X', 'main', 'bore', 'I', 60, 60.01], ['X', 'main', 'shell', 'n', 1.5, 1.503]],
      Cases: table({ ...CASE, 'Engine type': 'X', 'A 0': 60 }),
      Shells: table({
        Part: 'S1',
        'Engine type': 'X',
        Fit: 'main',
        Half: 'upper',
        Mark: 'l',
        'Wall 1': 1.501,
      }),
    });
    expect(parts.of('Cases')[0]!.classification?.text).toBe('I');
    expect(parts.of('Shells')[0]!).toMatchObject({ status: 'measured', classification: { text: 'n' } });
    expect(whyOf(parts.of('Shells')[0]!)).toContain('marked l, measured class n');
    expect(parts.of('Shells')[0]!.form?.size).toBe(um(1501));
  });
});
