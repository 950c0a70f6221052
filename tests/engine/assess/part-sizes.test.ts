/** Sizes of parts: names, form, correction to 20 °C, by the arithmetic of the norms. */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, type Sheets, table, um } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const JOURNAL = { Part: 'J1', Engine: 'E1', Fit: 'main', Position: 1 };
const CASE = { Part: 'C1', Engine: 'E1', Position: 1 };
const LIMITS = { 'Engine type': 'X', Fit: 'main', 'Clearance min': 0.02, 'Clearance max': 0.06 };

function journalOf(cells: Cells, sheets: Sheets = {}) {
  return assess({ Journals: table({ ...JOURNAL, ...cells }), ...sheets }).parts.of('Journals')[0]!;
}

describe('names', () => {
  const journals = (...names: Plain[]) =>
    assess({
      Limits: table({ ...LIMITS, 'Journal min': 40 }),
      Journals: table(
        ...names.map((Part, at) => ({
          ...JOURNAL,
          Part,
          Position: at,
          'A 0': 42,
          'A 90': 42,
        })),
      ),
    }).parts.of('Journals');

  test.each<[string, Plain, Plain]>([
    ['the number 2 and the text 2', 2, '2'],
    ['case', 'a1', 'A1'],
    ['outer spaces', 'A1', ' A1 '],
  ])('%s are one name: both are bad readings, and keep their sizes', (_words, one, other) => {
    for (const part of journals(one, other)) {
      expect(part.status).toBe('bad reading');
      expect(part.form?.size).toBe(um(42_000));
      expect(part.why[0]).toContain('is named more than once in Journals');
    }
  });

  test('other names are other parts', () => {
    expect(journals('A1', 'A2').map(({ status }) => status)).toEqual(['within limits', 'within limits']);
  });

  test('one name in two sheets is two parts', () => {
    const { parts } = assess({
      Journals: table({ ...JOURNAL, Part: '1', 'A 0': 42 }),
      Cases: table({ ...CASE, Part: 1, 'A 0': 45 }),
    });
    expect([parts.of('Journals')[0]!.status, parts.of('Cases')[0]!.status]).toEqual([
      'no limits',
      'no limits',
    ]);
  });
});

describe('form', () => {
  test('a spot is the mean of its repeats, half away from zero', () => {
    const part = journalOf({
      'A 0': 42.003,
      'A 0 #2': 42.003001,
      'A 90': 42.005,
      'B 0': 42.001,
      'B 90': 42.002,
    });
    // A 0: 42 003 000.5 → 42 003 001 grains.
    expect(part.spots.map(({ value }) => value)).toEqual([
      um(42_003.001),
      um(42_005),
      um(42_001),
      um(42_002),
    ]);
    // Mean 168 011 001/4 = 42 002 750.25; round: A 1999, B 1000; taper: at 0° 2001, at 90° 3000.
    expect(part.form).toEqual({
      size: um(42_002.75),
      largest: um(42_005),
      smallest: um(42_001),
      outOfRound: um(1.999),
      taper: um(3),
    });
  });

  test.each<[string, Cells, number | undefined, number | undefined]>([
    ['one spot', { 'A 0': 42 }, undefined, undefined],
    ['one station', { 'A 0': 42, 'A 90': 42.001 }, um(1), undefined],
    ['one angle', { 'A 0': 42, 'B 0': 42.001 }, undefined, um(1)],
    ['spots that share nothing', { 'A 0': 42, 'B 90': 42.001 }, undefined, undefined],
    ['Mid and Middle are one station', { 'Mid 0': 42, 'Middle 90': 42.001 }, um(1), undefined],
    ['repeats are no form', { 'A 0': 42, 'A 0 #2': 42.001 }, undefined, undefined],
  ])('%s', (_words, cells, outOfRound, taper) => {
    expect(journalOf(cells).form).toMatchObject({ outOfRound, taper });
  });

  test('walls have neither', () => {
    const { parts } = assess({ Shells: table({ Part: 'S1', Half: 'upper', 'Wall 1': 1.5, 'Wall 2': 1.51 }) });
    expect(parts.of('Shells')[0]!.form).toEqual({
      size: um(1505),
      largest: um(1510),
      smallest: um(1500),
      outOfRound: undefined,
      taper: undefined,
    });
  });
});

describe('to 20 °C', () => {
  const Gauges = table(
    { Gauge: 'M1', 'Max error': 0, Material: undefined },
    { Gauge: 'INVAR', 'Max error': 0, Material: 'Invar' },
  );
  const Materials = table({ Material: 'Invar', Expansion: 1.2 });
  const at = (x: number, celsius: number, gauge: number, part: number) =>
    Math.round(((x * (1 + gauge * 1e-6 * (celsius - 20))) / (1 + part * 1e-6 * (celsius - 20))) * 1e6);

  test.each<[string, Cells, Cells, number]>([
    ['blank is 20', {}, {}, um(42_003)],
    ['steel on steel', { Temperature: 35 }, {}, um(42_003)],
    [
      'no gauge is a steel gauge',
      { Temperature: 35 },
      { 'Journal material': 'Cast iron' },
      at(42.003, 35, 11.5, 10.5),
    ],
    ['a gauge of Invar', { Temperature: 35, Gauge: 'invar' }, {}, at(42.003, 35, 1.2, 11.5)],
    [
      'an unknown gauge is a steel gauge',
      { Temperature: 35, Gauge: 'M9' },
      { 'Journal material': 'aluminium' },
      at(42.003, 35, 11.5, 23),
    ],
    [
      'Fahrenheit in the cell',
      { Temperature: '95 °F' },
      { 'Journal material': 'aluminium' },
      at(42.003, 35, 11.5, 23),
    ],
    [
      'Fahrenheit in the header',
      { 'Temperature (F)': 95 },
      { 'Journal material': 'aluminium' },
      at(42.003, 35, 11.5, 23),
    ],
    [
      'the cell wins over its header',
      { 'Temperature (F)': '35 °C' },
      { 'Journal material': 'aluminium' },
      at(42.003, 35, 11.5, 23),
    ],
    ['below 20', { Temperature: -5 }, { 'Journal material': 'aluminium' }, at(42.003, -5, 11.5, 23)],
  ])('%s', (_words, cells, limits, size) => {
    const part = journalOf(
      { ...cells, 'A 0': 42.003 },
      { Gauges, Materials, Limits: table({ ...LIMITS, ...limits }) },
    );
    expect(part.form?.size).toBe(size);
  });

  test('Fahrenheit by Setup', () => {
    const part = journalOf(
      { Temperature: 95, 'A 0': 42.003 },
      {
        Setup: table({ Item: 'Temperature unit', Value: 'F' }),
        Limits: table({ ...LIMITS, 'Journal material': 'aluminium' }),
      },
    );
    expect(part.form?.size).toBe(at(42.003, 35, 11.5, 23));
  });

  test('Materials override the built-in ones', () => {
    const part = journalOf(
      { Temperature: 35, 'A 0': 42.003 },
      {
        Materials: table({ Material: 'STEEL', Expansion: 12 }, { Material: 'steel', Expansion: 99 }),
        Limits: table({ ...LIMITS, 'Journal material': 'aluminium' }),
      },
    );
    expect(part.form?.size).toBe(at(42.003, 35, 12, 23));
  });

  test('each reading is rounded once, after unit and correction', () => {
    // 1.6536801 in = 42.00347454 mm; only then the factor 1.0001725/1.000345 = 0.99982756. Rounded before it: a grain more.
    const part = journalOf(
      { Temperature: 35, 'A 0 (in)': 1.6536801 },
      { Limits: table({ ...LIMITS, 'Journal material': 'aluminium' }) },
    );
    expect(part.form?.size).toBe(at(42.00347454, 35, 11.5, 23));
    expect(at(42.003475, 35, 11.5, 23)).toBe(part.form!.size + 1);
  });

  describe('a case', () => {
    const caseOf = (cells: Cells, limits: Cells) =>
      assess({
        Limits: table({ ...LIMITS, ...limits }),
        Gauges: table({ Gauge: 'M1', 'Max error': 0, Resolution: 0.001 }),
        Cases: table({ ...CASE, 'A 0': 60, ...cells }),
      }).parts.of('Cases')[0]!;
    const remark = 'not corrected to 20 °C: type Bore material in Limits';

    test('with a material', () => {
      const part = caseOf({ Temperature: 35 }, { 'Bore material': 'aluminium' });
      expect(part.form?.size).toBe(at(60, 35, 11.5, 23));
      expect(part.why).not.toContain(remark);
    });

    test('without one is left as read, its temperature term is 0, and Why says so', () => {
      const part = caseOf({ Temperature: 35, Gauge: 'M1' }, {});
      expect(part.form?.size).toBe(um(60_000));
      // Resolution 1 µm alone: 2 · 1000/√12 = 577.4 grains.
      expect(part.sizeU).toBe(577);
      expect(part.why).toContain(remark);
    });

    test.each<[string, Cells]>([
      ['blank', {}],
      ['20', { Temperature: 20 }],
      ['68 °F', { Temperature: '68 °F' }],
    ])('at %s there is nothing to say', (_words, cells) => {
      expect(caseOf(cells, {}).why).not.toContain(remark);
    });
  });

  test('rods are steel where no material is named, shells always', () => {
    const { parts } = assess({
      Limits: table({ ...LIMITS, Fit: 'big end', 'Bore material': 'aluminium' }),
      Gauges,
      Materials,
      Rods: table(
        { Part: 'R1', Temperature: 35, Gauge: 'INVAR', 'A 0': 45 },
        { Part: 'R2', 'Engine type': 'Y', Temperature: 35, Gauge: 'INVAR', 'A 0': 45 },
      ),
      Shells: table({ Part: 'S1', Half: 'upper', Temperature: 35, Gauge: 'INVAR', 'Wall 1': 1.5 }),
    });
    expect(parts.of('Rods').map(({ form }) => form?.size)).toEqual([
      at(45, 35, 1.2, 23),
      at(45, 35, 1.2, 11.5),
    ]);
    expect(parts.of('Shells')[0]!.form?.size).toBe(at(1.5, 35, 1.2, 11.5));
  });
});
