/** Sizes of parts: names, form, correction to 20 °C, uncertainty, by the arithmetic of the norms. */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, type Sheets, table, whyOf } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const JOURNAL = { Part: 'J1', Engine: 'E1', Fit: 'main', Position: 1 };
const CASE = { Part: 'C1', Engine: 'E1', Position: 1 };
const LIMITS = { 'Engine type': 'X', Fit: 'main', 'Clearance min': 0.02, 'Clearance max': 0.06 };

/** z of 95 %, from printed tables of the normal distribution. */
const Z = 1.644854;

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
      expect(part.form?.size).toBe(4_200_000);
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
      'A 0 #2': 42.00301,
      'A 90': 42.005,
      'B 0': 42.001,
      'B 90': 42.002,
    });
    // A 0: 4200300.5 → 4200301.
    expect(part.spots.map(({ value }) => value)).toEqual([4_200_301, 4_200_500, 4_200_100, 4_200_200]);
    // Mean 16801101/4 = 4200275.25; round: A 199, B 100; taper: at 0° 201, at 90° 300.
    expect(part.form).toEqual({
      size: 4_200_275,
      largest: 4_200_500,
      smallest: 4_200_100,
      outOfRound: 199,
      taper: 300,
    });
  });

  test.each<[string, Cells, number | undefined, number | undefined]>([
    ['one spot', { 'A 0': 42 }, undefined, undefined],
    ['one station', { 'A 0': 42, 'A 90': 42.001 }, 100, undefined],
    ['one angle', { 'A 0': 42, 'B 0': 42.001 }, undefined, 100],
    ['spots that share nothing', { 'A 0': 42, 'B 90': 42.001 }, undefined, undefined],
    ['Mid and Middle are one station', { 'Mid 0': 42, 'Middle 90': 42.001 }, 100, undefined],
    ['repeats are no form', { 'A 0': 42, 'A 0 #2': 42.001 }, undefined, undefined],
  ])('%s', (_words, cells, outOfRound, taper) => {
    expect(journalOf(cells).form).toMatchObject({ outOfRound, taper });
  });

  test('walls have neither', () => {
    const { parts } = assess({ Shells: table({ Part: 'S1', Half: 'upper', 'Wall 1': 1.5, 'Wall 2': 1.51 }) });
    expect(parts.of('Shells')[0]!.form).toEqual({
      size: 150_500,
      largest: 151_000,
      smallest: 150_000,
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
    Math.round(((x * (1 + gauge * 1e-6 * (celsius - 20))) / (1 + part * 1e-6 * (celsius - 20))) * 1e5);

  test.each<[string, Cells, Cells, number]>([
    ['blank is 20', {}, {}, 4_200_300],
    ['steel on steel', { Temperature: 35 }, {}, 4_200_300],
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
    // 1.65368 in = 42.003472 mm; only then the factor 1.0001725/1.000345 = 0.99982756.
    const part = journalOf(
      { Temperature: 35, 'A 0 (in)': 1.65368 },
      { Limits: table({ ...LIMITS, 'Journal material': 'aluminium' }) },
    );
    expect(part.form?.size).toBe(at(42.003472, 35, 11.5, 23));
  });

  describe('a case', () => {
    const caseOf = (cells: Cells, limits: Cells) =>
      assess({
        Limits: table({ ...LIMITS, ...limits }),
        Gauges: table({ Gauge: 'M1', 'Max error': 0, Resolution: 0.001 }),
        Cases: table({ ...CASE, 'A 0': 60, ...cells }),
      }).parts.of('Cases')[0]!;
    const remark = 'not corrected to 20 °C: Limits names no Bore material';

    test('with a material', () => {
      const part = caseOf({ Temperature: 35 }, { 'Bore material': 'aluminium' });
      expect(part.form?.size).toBe(at(60, 35, 11.5, 23));
      expect(part.why).not.toContain(remark);
    });

    test('without one is left as read, its temperature term is 0, and Why says so', () => {
      const part = caseOf({ Temperature: 35, Gauge: 'M1' }, {});
      expect(part.form?.size).toBe(6_000_000);
      // Resolution 1 µm alone: 2 · 100/√12 = 57.7 grains.
      expect(part.sizeU).toBe(58);
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

describe('uncertainty', () => {
  const Gauges = table(
    { Gauge: 'M1', 'Max error': 0.002, Resolution: 0.001, Repeatability: 0.0005 },
    { Gauge: 'B1', 'Max error': 0.003, Resolution: 0.001, 'Set from': 'm1' },
    { Gauge: 'C1', 'Max error': 0.001, 'Set from': 'C2' },
    { Gauge: 'C2', 'Max error': 0.002, 'Set from': 'C1' },
    { Gauge: 'C3', 'Max error': 0.001, 'Set from': 'B1' },
    { Gauge: 'NONE', 'Max error': undefined },
    { Gauge: 'BAD', 'Max error': 'n/a' },
    { Gauge: 'ON BAD', 'Max error': 0.001, 'Set from': 'BAD' },
    { Gauge: 'ON NOTHING', 'Max error': 0.001, 'Set from': 'M9' },
  );
  const temperatureTerm = 0.5 * 11.5e-6 * 4_200_000;
  const spot = (resolution: number, repeatability: number, n: number) =>
    resolution ** 2 / 12 + repeatability ** 2 / n + temperatureTerm ** 2;
  const readings = { 'A 0': 42, 'A 0 #2': 42, 'A 90': 42 };

  test.each<[string, Plain, number[], [number, number, number][]]>([
    [
      'one gauge, two repeats of one of two spots',
      'M1',
      [200],
      [
        [100, 50, 2],
        [100, 50, 1],
      ],
    ],
    [
      'the gauge that set its zero adds',
      'B1',
      [300, 200],
      [
        [100, 0, 1],
        [100, 0, 1],
      ],
    ],
    [
      'the whole chain adds',
      'C3',
      [100, 300, 200],
      [
        [0, 0, 1],
        [0, 0, 1],
      ],
    ],
    [
      'a circle counts each once',
      'C1',
      [100, 200],
      [
        [0, 0, 1],
        [0, 0, 1],
      ],
    ],
    [
      'set from a gauge that is not listed',
      'ON NOTHING',
      [100],
      [
        [0, 0, 1],
        [0, 0, 1],
      ],
    ],
  ])('%s', (_words, gauge, errors, spots) => {
    const part = journalOf({ Gauge: gauge, ...readings }, { Gauges });
    let variance = 0;
    for (const error of errors) variance += error ** 2 / 3;
    for (const [resolution, repeatability, n] of spots) variance += spot(resolution, repeatability, n) / 4;
    expect(part.sizeU).toBe(Math.round(2 * Math.sqrt(variance)));
    expect(whyOf(part)).not.toContain('uncertainty');
  });

  test.each<[string, Plain, string]>([
    ['no gauge', undefined, 'uncertainty not given: no gauge'],
    ['a gauge that Gauges does not name', 'M9', 'gauge M9 is not in Gauges: counted as none'],
  ])('%s: Size U is blank, and the guard is 0', (_words, gauge, why) => {
    const part = journalOf(
      { Gauge: gauge, ...readings },
      { Gauges, Limits: table({ ...LIMITS, 'Journal min': 42 }) },
    );
    expect(part).toMatchObject({
      status: 'within limits',
      sizeU: undefined,
      guards: { extremes: 0, form: 0 },
    });
    expect(part.why).toContain(why);
  });

  test.each<[string, Plain, string]>([
    ['a blank Max error', 'NONE', 'Gauges!B7 (Max error): blank, expected the greatest error of gauge NONE'],
    ['a bad Max error', 'BAD', 'Gauges!B8 (Max error): found the text "n/a"'],
    ['a bad Max error up the chain', 'ON BAD', 'Gauges!B8 (Max error): found the text "n/a"'],
  ])('%s counts against every row of the gauge', (_words, gauge, why) => {
    const { parts } = assess({
      Gauges,
      Journals: table(
        { ...JOURNAL, Gauge: gauge, ...readings },
        { ...JOURNAL, Part: 'J2', Position: 2, Gauge: gauge, ...readings },
        { ...JOURNAL, Part: 'J3', Position: 3, Gauge: 'M1', ...readings },
      ),
    });
    expect(parts.of('Journals').map(({ status }) => status)).toEqual([
      'bad reading',
      'bad reading',
      'no limits',
    ]);
    for (const part of parts.of('Journals').slice(0, 2)) {
      expect(part.why[0]).toContain(why);
      expect(part).toMatchObject({ form: undefined, classification: undefined, sizeU: undefined });
    }
  });

  test('guards: of the extremes z·√(Σ systematic² + the largest u_r²), of form z·√2·u_r', () => {
    const part = journalOf({ Gauge: 'M1', ...readings }, { Gauges });
    const largest = spot(100, 50, 1);
    expect(part.guards.largest.inside).toBe(Math.round(Z * Math.sqrt(200 ** 2 / 3 + largest)));
    expect(part.guards.taper.inside).toBe(Math.round(Z * Math.sqrt(2 * largest)));
  });

  test('at 50 % there is no guard', () => {
    const part = journalOf(
      { Gauge: 'M1', ...readings },
      { Gauges, Setup: table({ Item: 'Confidence', Value: '50 %' }) },
    );
    expect(part.guards).toEqual({ extremes: 0, form: 0 });
  });
});
