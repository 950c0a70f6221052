/** Readings that are deviations from the size to which the gauge was set, in every place that a size stands. */
import { describe, expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { partsJson } from '../../../src/engine/columns/result-json.js';
import { assess, bookOf, type Plain, type Sheets, table, um, whyOf } from '../book-of.js';
import { liveValues } from '../columns/live-values.js';
import { expectSameAnew, stockOf } from '../merge/merged.js';

const AT = { 'Engine type': 'X', Engine: 'E1', Position: 1 };

function sheetsWith(journal: Readonly<Record<string, Plain>>, others: Sheets = {}): Sheets {
  return {
    Limits: table({
      ...{ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 },
      ...{ 'Journal min': 41.9, 'Journal max': 42.1 },
    }),
    Journals: table({ Part: 'J', ...AT, Fit: 'big end', ...journal }),
    Rods: table({ Part: 'R', ...AT, 'Set to': 45, 'A 0': 0.04, 'A 90': 0 }),
    Shells: table(
      { Part: 'U', ...AT, Half: 'upper', 'Set to': 1.5, 'Wall 1': -0.002 },
      { Part: 'L', ...AT, Half: 'lower', 'Set to': undefined, 'Wall 1': 1.501 },
    ),
    ...others,
  };
}

function journalOf(journal: Readonly<Record<string, Plain>>) {
  return assess(sheetsWith(journal))
    .parts.all()
    .find(({ row }) => row.sheet === 'Journals')!;
}

describe('a reading with Set to', () => {
  // Each size by hand: Set to and the mean of the deviations.
  test.each([
    ['in mm', { 'Set to': 42, 'A 0': 0.003, 'A 90': -0.001 }, 42_001],
    ['of 0', { 'Set to': 42, 'A 0': 0 }, 42_000],
    ['in the µm of its column', { 'Set to': 42, 'A 0 (µm)': -12 }, 41_988],
    ['in the µm of its cell', { 'Set to': 42, 'A 0': '+5 µm' }, 42_005],
    ['a signed text', { 'Set to': '42,000 mm', 'A 0': '-0,004' }, 41_996],
    ['in inches', { 'Set to (in)': 1.65, 'A 0 (in)': 0.0004 }, 41_920.16],
    ['an inch setting and µm', { 'Set to': '1.65 in', 'A 0 (µm)': 3 }, 41_913],
    ['a repeat', { 'Set to': 42, 'A 0': 0.002, 'A 0 #2': 0.004 }, 42_003],
    ['blank: a size', { 'Set to': undefined, 'A 0': 42.007 }, 42_007],
  ])('%s', (_, journal, size) => {
    expect(journalOf(journal).form?.size).toBe(um(size));
  });

  test.each([
    [
      'a sum of 0',
      { 'Set to': 42, 'A 0': -42 },
      'the number -42, expected a deviation from Set to; with it a length above 0',
    ],
    ['a sum of a kilometre', { 'Set to': 999_999, 'A 0': 2 }, 'less than a kilometre'],
    ['no number', { 'Set to': 42, 'A 0': 'ok' }, 'the text "ok", expected a length'],
    [
      'a size of 0 without Set to',
      { 'Set to': undefined, 'A 0': 0 },
      'the number 0, expected a length above 0',
    ],
    [
      'a Set to of 0',
      { 'Set to': 0, 'A 0': 0.003 },
      '(Set to): found the number 0, expected a length above 0',
    ],
    ['a Set to that is no length', { 'Set to': 'ring', 'A 0': 0 }, '(Set to): found the text "ring"'],
    ['a Set to and a reading', { 'Set to': 'ring', 'A 0': 'ok' }, '(A 0): found the text "ok"'],
  ])('refused: %s', (_, journal, why) => {
    const part = journalOf(journal);
    expect(part.status).toBe('bad reading');
    expect(part.form).toBeUndefined();
    expect(whyOf(part)).toContain(why);
  });

  test('of a refused Set to is no fault of its own', () => {
    expect(journalOf({ 'Set to': 'ring', 'A 0': 0, 'A 90': -0.003 }).why).toHaveLength(1);
  });

  test('alike in two rows is a size of each', () => {
    const Journals = table(
      { Part: 'J', ...AT, Fit: 'big end', 'Set to': 42, 'A 0': 0.003 },
      { Part: 'K', ...AT, Position: 2, Fit: 'big end', 'Set to': 50, 'A 0': 0.003 },
      { Part: 'L', ...AT, Position: 3, Fit: 'big end', 'Set to': undefined, 'A 0': 0.003 },
    );
    const { parts } = assess({ ...sheetsWith({}), Journals });
    expect(parts.of('Journals').map(({ form }) => form?.size)).toEqual([um(42_003), um(50_003), um(3)]);
  });
});

test('the clearance is that of the sizes: 45.020 − 1.498 − 1.501 − 41.981', () => {
  const { fits } = assess(sheetsWith({ 'Set to': 42, 'A 0': -0.019 }));
  expect(fits[0]!.clearance!.clearance).toBe(um(40));
});

describe('live formulas', () => {
  const JOURNALS: readonly Readonly<Record<string, Plain>>[] = [
    { 'Set to': 42, 'A 0': 0.003, 'A 90': -0.001, 'B 0': undefined, 'B 90': 0 },
    { 'Set to (in)': 1.65, 'A 0 (in)': 0.0004, 'A 90 (µm)': 3, Temperature: 25 },
    { 'Set to': 42, 'A 0': 0.003, 'A 0 #2': 0.005, 'B 0': -0.002, 'B 0 #2': undefined },
    { 'Set to': undefined, 'A 0': 42.001, 'A 90': 42.003 },
  ];

  test.each(JOURNALS)('agree with what is computed: %j', async (journal) => {
    const assessment = await assessBook(bookOf(sheetsWith(journal)), { seconds: 1 });
    const live = liveValues(assessment).filter(({ sheet }) => sheet === 'Journals' || sheet === 'Fits');
    expect(live.length).toBeGreaterThan(6);
    for (const { cell, stored, found } of live) expect([cell, found]).toEqual([cell, stored]);
  });

  test('follow the cell Set to', async () => {
    const assessment = await assessBook(bookOf(sheetsWith({ 'Set to': 42, 'A 0': 0.003 })), { seconds: 1 });
    const [size] = liveValues(assessment, (model) => {
      const copy = structuredClone(model);
      const { rows } = copy.sheets.find(({ name }) => name === 'Journals')!;
      const column = rows[0]!.findIndex((cell) => cell?.content?.value === 'Set to');
      rows[1]![column] = { content: { kind: 'number', value: 42.01 } };
      return copy;
    }).filter(({ sheet }) => sheet === 'Journals');
    expect(size).toMatchObject({ stored: 42.003, found: 42.013 });
  });
});

test('a stock keeps the deviations, and its cells say the same, whatever the units of its books', () => {
  const inches: Sheets = { Setup: table({ Item: 'Length unit', Value: 'in' }) };
  const stock = stockOf(
    sheetsWith({ 'Set to': 42, 'A 0': 0.003, 'A 90': '2 µm' }),
    sheetsWith({ 'Set to': 1.65, 'A 0': 0.0004, 'A 90 (µm)': -3 }, inches),
    sheetsWith({ 'Set to': 'ring', 'A 0': 0 }),
  );
  const sizes = stock.parts
    .of('Journals')
    .map(({ readings }) => readings.map(({ mm }) => Number(mm.numerator) / Number(mm.denominator)));
  expect(sizes).toEqual([[42.003, 42.002], [41.92016, 41.907], []]);
  expectSameAnew(stock);
});

test('JSON says what the gauge was set to, in mm', async () => {
  const assessment = await assessBook(bookOf(sheetsWith({ 'Set to': '1.65 in', 'A 0': 0 })), { seconds: 1 });
  const parts = partsJson(assessment.parts.all(), assessment);
  expect(parts.map(({ part, setTo, size }) => [part, setTo, size])).toEqual([
    ['J', 41.91, 41.91],
    ['R', 45, 45.02],
    ['U', 1.5, 1.498],
    ['L', null, 1.501],
  ]);
});
