import { describe, expect, test } from 'vitest';
import { assessBook, assessMeasured, isAllGood } from '../../../src/engine/assess/assess.js';
import { normalQuantile } from '../../../src/maths/normal.js';
import { deviationOfLargest, meanOfLargest } from '../../../src/maths/order-statistics.js';
import { bookOf, DATE, type Plain, type Sheets, table } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const HEAD = { Engine: 'E1', Group: 'cylinder head' };
const sheets = (...rows: Cells[]): Sheets => ({
  Fasteners: table(...rows.map((row) => ({ ...HEAD, ...row }))),
});
const measured = (...rows: Cells[]) => assessMeasured(bookOf(sheets(...rows)));
const first = (row: Cells) => measured(row).fasteners[0]!;
const read = (row: Cells) => bookOf(sheets(row)).fasteners[0]!;
const ends = (cell: Plain, header = 'Torque') => {
  const { torque, bad } = read({ [header]: cell });
  return torque
    ? [torque.low, torque.high].map(({ value, unit }) => `${value.numerator}/${value.denominator} ${unit}`)
    : bad.map(({ cell: at, remedy }) => `${at}: ${remedy}`);
};

describe('a torque cell', () => {
  test.each([
    ['a number', 98, 'Torque', ['98/1 N·m', '98/1 N·m']],
    ['a number under a header with its unit', 72, 'Torque (lb·ft)', ['72/1 lb·ft', '72/1 lb·ft']],
    ['a unit in the cell wins', '10 kgf·m', 'Torque (lb·ft)', ['10/1 kgf·m', '10/1 kgf·m']],
    ['a range', '10–11', 'Torque [kgf·m]:', ['10/1 kgf·m', '11/1 kgf·m']],
    ['a range with a hyphen and its unit', '72 - 80 ft-lb', 'Torque', ['72/1 lb·ft', '80/1 lb·ft']],
    ['a range with a unit at both ends', '98 Nm to 108 Nm', 'Torque', ['98/1 N·m', '108/1 N·m']],
    ['a decimal comma', '9,8–10,8 N.m', 'Torque', ['98/10 N·m', '108/10 N·m']],
    ['pound-inches', '120 in-lb', 'Torque', ['120/1 lb·in', '120/1 lb·in']],
    ['a blank', undefined, 'Torque', []],
  ])('%s', (_, cell, header, expected) => {
    expect(ends(cell, header)).toEqual(expected);
  });

  test.each([
    ['a range upside down', '11–10', 'C2: type the smaller end first'],
    ['a range of which a spreadsheet made a date', DATE, 'C2: type a range as text, such as 10 to 11'],
    ['nothing above zero', 0, 'C2: correct the cell'],
    ['another quantity', '98 mm', 'C2: correct the cell'],
    ['two units', '98 N·m – 80 lb·ft', 'C2: correct the cell'],
    ['a sign of two readings', '1,200', 'C2: type it as a number, or without the thousands mark'],
  ])('%s is refused', (_, cell, words) => {
    expect(ends(cell)).toEqual([words]);
    expect(first({ Torque: cell }).status).toBe('bad reading');
  });
});

describe('status, the first that holds', () => {
  test.each([
    ['a refused cell before always', { Renew: 'always', 'Length max': 'x' }, 'bad reading'],
    ['always, whatever it measures', { Renew: 'always', 'Length 1': 47, 'Length max': 48 }, 'renew'],
    ['longer than its limit', { 'Length 1': 47, 'Length 2': 48.1, 'Length max': 48 }, 'renew'],
    ['thinner than its limit', { 'Neck 1': 7.2, 'Neck 2': 6.9, 'Neck min': 7 }, 'renew'],
    [
      'a limit passed before a reading that lacks',
      { Renew: 'by neck', 'Length 1': 49, 'Length max': 48 },
      'renew',
    ],
    ['by length, not measured', { Renew: 'by length', 'Length max': 48 }, 'not measured'],
    ['by neck, and its length was read', { Renew: 'by neck', 'Length 1': 47 }, 'not measured'],
    ['a typed limit without its reading', { 'Length 1': 47, 'Length max': 48, 'Neck min': 7 }, 'undecided'],
    ['every limit kept', { 'Length 1': 48, 'Length max': 48, 'Neck 1': 7, 'Neck min': 7 }, 'within limits'],
    ['no limit typed', { Torque: 98 }, 'no limits'],
    ['read, without a limit', { Renew: 'by length', 'Length 1': 47 }, 'no limits'],
  ])('%s', (_, row, status) => {
    expect(first(row).status).toBe(status);
  });

  test('the words say what is so', () => {
    expect(first({ 'Length 1': 48.1, 'Length max': 48 }).why).toEqual([
      'longest is 0.1 mm over Length max 48 mm',
      'uncertainty not given: no gauge',
    ]);
    expect(first({ Renew: 'by neck', 'Neck min': 7 }).why).toEqual([
      'Renew is by neck: measure it, in a column Neck 1',
    ]);
  });
});

/** Guards by hand: E = 20 µm, resolution 10 µm, repeatability 5 µm; no term of temperature or expansion. */
describe('guards', () => {
  const [E, resolution, repeatability] = [20_000, 10_000, 5_000];
  const z = normalQuantile(0.95);
  const inside = (repeats: number) =>
    Math.round(z * Math.sqrt(E ** 2 / 3 + resolution ** 2 / 12 + repeatability ** 2 / repeats));
  const outside = (spots: number) => {
    const u = Math.sqrt(resolution ** 2 / 12 + repeatability ** 2);
    const scatter =
      z * Math.sqrt(E ** 2 / 3 + (deviationOfLargest(spots) * u) ** 2) + meanOfLargest(spots) * u;
    return Math.round(Math.max(inside(1), scatter));
  };
  const withGauge = (row: Cells, gauge: Cells = {}): Sheets => ({
    ...sheets({ Gauge: 'C1', ...row }),
    Gauges: table({
      ...{ Gauge: 'C1', 'Max error': 0.02, Resolution: 0.01, Repeatability: 0.005, Material: 'aluminium' },
      ...gauge,
    }),
  });
  const statusOf = (row: Cells) => assessMeasured(bookOf(withGauge(row))).fasteners[0]!.status;
  const at = (grains: number) => 48 + grains / 1e6;

  test.each([
    ['inside by the guard', { 'Length 1': at(-inside(1)) }, 'within limits'],
    ['inside by a grain less', { 'Length 1': at(-inside(1) + 1) }, 'undecided'],
    ['outside by the guard', { 'Length 1': at(outside(1)) }, 'undecided'],
    ['outside by a grain more', { 'Length 1': at(outside(1) + 1) }, 'renew'],
    ['of three readings', { 'Length 1': 47.9, 'Length 2': 47.9, 'Length 3': at(outside(3)) }, 'undecided'],
    ['and a grain more', { 'Length 1': 47.9, 'Length 2': 47.9, 'Length 3': at(outside(3) + 1) }, 'renew'],
    ['repeats', { 'Length 1': at(-inside(2)), 'Length 1 #2': at(-inside(2)) }, 'within limits'],
  ])('%s', (_, row, status) => {
    expect(statusOf({ 'Length max': 48, ...row })).toBe(status);
  });

  test('readings of the neck have guards of their own', () => {
    const row = { 'Length 1': 47, 'Length 2': 47, 'Length 3': 47, 'Neck min': 48 };
    expect(statusOf({ ...row, 'Neck 1': 48 - (outside(1) + 1) / 1e6 })).toBe('renew');
    expect(statusOf({ ...row, 'Neck 1': 48 - outside(1) / 1e6 })).toBe('undecided');
  });

  test('a gauge without its error counts against the row', () => {
    const book = bookOf(withGauge({ 'Length 1': 47, 'Length max': 48 }, { 'Max error': undefined }));
    expect(assessMeasured(book).fasteners[0]!.status).toBe('bad reading');
  });
});

describe('findings stand in Why and change no status', () => {
  const oddOf = (row: Cells) => first(row).why.join('; ');

  test.each([
    ['a torque printed in two units', { Torque: '98–108', 'Torque as printed (lb·ft)': '72–80' }, ''],
    [
      'one that is not the same',
      { Torque: '98–108', 'Torque as printed (lb·ft)': '72–90' },
      'Torque is 98–108 N·m and as printed 72–90 lb·ft, which differ by more than rounding: check them against the manual',
    ],
    ['an angle with its torque', { Torque: 30, Angle: '90°' }, ''],
    ['an angle alone', { Angle: 90 }, 'Angle is 90° without a Torque: type the torque that it starts from'],
    [
      'by length without its limit',
      { Renew: 'by length', 'Length 1': 47 },
      "uncertainty not given: no gauge; Renew is by length without a Length max: type the maker's",
    ],
  ])('%s', (_, row, why) => {
    expect(oddOf(row)).toBe(why);
    expect(first(row).status).toBe('no limits');
  });

  test('the numbers of a group, on its first row', () => {
    const rows = [{ Number: 2 }, { Number: 2 }, { Number: 5 }, {}];
    const other = { Engine: 'E2', Number: 1 };
    const whys = measured(...rows, other).fasteners.map(({ why }) => why);
    expect(whys).toEqual([
      [
        'Number of this Group has no 1, 3 to 4, has 2 more than once, is blank in 1 row: ' +
          'check the order of tightening against the manual',
      ],
      ...[[], [], [], []],
    ]);
  });
});

describe('what follows', () => {
  const rows = [
    { Number: 1, Thread: 'M10', Length: 48, Renew: 'always', Price: 2.5 },
    { Number: 2, Thread: 'm10', Length: 48, Renew: 'always', Price: 2.5, Quantity: 3 },
    { Engine: 'E2', Number: 1, Thread: 'M10', Length: 48, Renew: 'always', Price: 2.5 },
    { Engine: 'E2', Number: 2, Thread: 'M10', Length: 60, Renew: 'always' },
    { Engine: 'E2', Number: 3, Thread: 'M10', Length: 48, Renew: 'by length', 'Length max': 48.5 },
    { Engine: 'E2', Number: 4, Torque: 'x' },
  ];

  test('To buy, by thread and length; a blank price counts nothing', async () => {
    const assessment = await assessBook(bookOf(sheets(...rows)), { seconds: 1 });
    expect(assessment.toBuy).toEqual([
      {
        ...{ engineType: '', fit: 'cylinder head', half: 'fastener', mark: 'M10, 48 mm', quantity: 5 },
        ...{ price: 2.5, priceInAll: 12.5, places: ['E1 cylinder head', 'E2 cylinder head'] },
      },
      {
        ...{ engineType: '', fit: 'cylinder head', half: 'fastener', mark: 'M10, 60 mm', quantity: 1 },
        ...{ price: undefined, priceInAll: undefined, places: ['E2 cylinder head'] },
      },
    ]);
  });

  test('Re-measure', () => {
    expect(measured(...rows).remeasure).toEqual([
      {
        ...{ sheet: 'Fasteners', parts: ['E2 cylinder head 4'], spot: 'Torque' },
        why: 'J7: found the text "x"',
      },
      { sheet: 'Fasteners', parts: ['E2 cylinder head 3'], spot: 'Length 1', why: 'not measured' },
    ]);
  });

  test.each([
    ['renew', { Renew: 'always' }, false],
    ['not measured', { Renew: 'by length' }, false],
    ['no limits', { Torque: 98 }, true],
    ['within limits', { 'Length 1': 47, 'Length max': 48 }, true],
  ])('the exit code of %s', async (_, row, isGood) => {
    expect(isAllGood(await assessBook(bookOf(sheets(row)), { seconds: 1 }))).toBe(isGood);
  });
});
