/** What to measure again: in which order, how often, and with which gauge. */
import { describe, expect, test } from 'vitest';
import { assessMeasured } from '../../../src/engine/assess/assess.js';
import { bookOf, type Plain, table } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

interface Given {
  readonly gauges?: readonly Cells[];
  readonly journal?: Cells;
  readonly bore?: Cells;
  readonly upper?: Cells;
  readonly lower?: Cells;
  readonly limits?: Cells;
}

/** One fit: 53.04 − 1.5 − 1.5 − 50.0 = 0.040 mm; limits 0.020 to 0.060 mm. */
function listOf({ gauges, journal, bore, upper, lower, limits }: Given) {
  const at = { Engine: 'E', Position: 1 };
  return assessMeasured(
    bookOf({
      Limits: table({
        ...{ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 },
        ...limits,
      }),
      Gauges: table(...(gauges ?? [{ Gauge: 'M', 'Max error': 0.001, Repeatability: 0.001 }])),
      Journals: table({
        Part: 'J',
        ...at,
        Fit: 'big end',
        Gauge: 'M',
        'A 0': 50,
        'A 90': undefined,
        ...journal,
      }),
      Rods: table({ Part: 'R', ...at, Gauge: 'M', 'A 0': 53.04, ...bore }),
      Shells: table(
        { Part: 'U', ...at, Half: 'upper', Gauge: 'M', 'Wall 1': 1.5, ...upper },
        { Part: 'L', ...at, Half: 'lower', Gauge: 'M', 'Wall 1': 1.5, ...lower },
      ),
    }),
  );
}

test('a fit that is decided asks for nothing', () => {
  expect(listOf({}).remeasure).toEqual([]);
});

describe('what was not read comes first', () => {
  test('a bad cell, then a part without readings, then what lies near a limit', () => {
    const { remeasure } = listOf({
      journal: { 'A 0': '50.O', Temperature: 21 },
      upper: { 'Wall 1': undefined },
      bore: { 'A 0': 53.04 },
      limits: { 'Bore max': 53.0405 },
    });
    expect(remeasure.map(({ sheet, parts, spot }) => [sheet, ...parts, spot])).toEqual([
      ['Journals', 'J', 'A 0'],
      ['Shells', 'U', 'all'],
      ['Rods', 'R', 'A 0'],
    ]);
    expect(remeasure[0]!.why).toContain('found the text "50.O"');
    expect(remeasure[1]!.why).toBe('not measured');
    expect(remeasure[2]!.why).toContain('largest near Bore max');
  });

  test('a check without its value asks for more spots', () => {
    expect(listOf({ limits: { 'Taper limit': 0.01 } }).remeasure).toContainEqual({
      ...{ sheet: 'Journals', parts: ['J'], spot: 'all', why: 'taper needs more spots' },
    });
  });
});

describe('readings near a limit', () => {
  /** Four gauges of which the bore's scatters most. */
  const scattering = [
    { Gauge: 'M', 'Max error': 0.0005, Repeatability: 0.0002 },
    { Gauge: 'B', 'Max error': 0.0005, Repeatability: 0.004 },
  ];

  test('the part that scatters is read again, each of its spots, so many times', () => {
    const { fits, remeasure } = listOf({
      gauges: scattering,
      bore: { Gauge: 'B', 'A 0': 53.026, 'A 90': 53.0255 },
      limits: { 'Clearance min': 0.02 },
    });
    expect(fits[0]!.status).toBe('undecided');
    expect(remeasure).toHaveLength(1);
    const [{ sheet, parts, spot, why }] = remeasure as [(typeof remeasure)[number]];
    expect([sheet, ...parts, spot]).toEqual(['Rods', 'R', 'A 0, A 90']);
    const [, times, more, cases] =
      /read each spot (\d+) times in all \((\d+) readings more\), which decides it in (\d+) of 100 cases/.exec(
        why,
      )!;
    expect(Number(times)).toBeGreaterThan(1);
    expect(Number(more)).toBe(2 * (Number(times) - 1));
    expect(Number(cases)).toBeGreaterThan(20);
    // u_c² = (0.5² of B + 9 · 0.5² of M)/3 + 4² of the bore + 3 · 0.2², and 0.5 K: 4.14 µm; Φ(5.5/4.14) = 0.908.
    expect(why).toMatch(/^E big end 1: probably in range: 91 %; read each spot/);
  });

  test('a spot that has been read as often already is not named', () => {
    const { remeasure } = listOf({
      gauges: scattering,
      bore: {
        ...{ Gauge: 'B', 'A 0': 53.026, 'A 90': 53.0255 },
        ...Object.fromEntries([2, 3, 4, 5, 6, 7, 8, 9, 10].map((repeat) => [`A 90 #${repeat}`, 53.0255])),
      },
    });
    expect(remeasure.map(({ spot }) => spot)).toEqual(['A 0']);
  });

  test('the nearer a fit is to being decided, the earlier it stands', () => {
    const at = (Position: number) => ({ Engine: 'E', Position });
    const rows = (make: (position: number) => Cells[]) => table(...[1, 2].flatMap(make));
    const { remeasure } = assessMeasured(
      bookOf({
        Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 }),
        Gauges: table(...scattering),
        Journals: rows((n) => [{ Part: `J${n}`, ...at(n), Fit: 'big end', Gauge: 'M', 'A 0': 50 }]),
        Rods: rows((n) => [{ Part: `R${n}`, ...at(n), Gauge: 'B', 'A 0': n === 1 ? 53.021 : 53.026 }]),
        Shells: rows((n) => [
          { Part: `U${n}`, ...at(n), Half: 'upper', Gauge: 'M', 'Wall 1': 1.5 },
          { Part: `L${n}`, ...at(n), Half: 'lower', Gauge: 'M', 'Wall 1': 1.5 },
        ]),
      }),
    );
    expect(remeasure.flatMap(({ parts }) => parts)).toEqual(['R2', 'R1']);
  });
});

describe('where repeats will not do', () => {
  const coarse = { Gauge: 'B', 'Max error': 0.004, Resolution: 0.0001 };
  const fine = { Gauge: 'M', 'Max error': 0.0002 };

  test('a better gauge of the book, in use for parts of that kind, is named', () => {
    const at = { Engine: 'E', Position: 1 };
    const { fits, remeasure } = assessMeasured(
      bookOf({
        Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 }),
        Gauges: table(coarse, { Gauge: 'B fine', 'Max error': 0.0005 }, fine),
        Journals: table({ Part: 'J', ...at, Fit: 'big end', Gauge: 'M', 'A 0': 50 }),
        Rods: table(
          { Part: 'R', ...at, Gauge: 'B', 'A 0': 53.0225 },
          { Part: 'Other', Engine: '', Position: '', Gauge: 'B fine', 'A 0': 53.03 },
        ),
        Shells: table(
          { Part: 'U', ...at, Half: 'upper', Gauge: 'M', 'Wall 1': 1.5 },
          { Part: 'L', ...at, Half: 'lower', Gauge: 'M', 'Wall 1': 1.5 },
        ),
      }),
    );
    expect(fits[0]!.status).toBe('undecided');
    expect(remeasure).toHaveLength(1);
    expect(remeasure[0]).toMatchObject({ sheet: 'Rods', parts: ['R'], spot: 'A 0' });
    expect(remeasure[0]!.why).toMatch(
      /10 readings of every spot would decide it in \d of 100 cases; measured with gauge B fine it is decided in \d\d of 100 cases/,
    );
  });

  test.each<[string, Cells, readonly Cells[], boolean]>([
    ['it measured a size of the book less than 0.5 mm away', {}, [{ 'A 0': 53.5 }], true],
    ['it measured none so near', {}, [{ 'A 0': 53.6 }], false],
    ['it measured sizes on both sides', {}, [{ 'A 0': 40 }, { 'A 0': 60 }], true],
    ['From and To hold the size', { From: 50, To: 60 }, [{ 'A 0': 53.6 }], true],
    ['From and To are that size', { From: 53.0225, To: 53.0225 }, [{ 'A 0': 53.6 }], true],
    ['To is less', { From: 50, To: 53 }, [{ 'A 0': 53.03 }], false],
    ['From is more', { From: 53.1, To: 60 }, [{ 'A 0': 53.03 }], false],
    ['From is typed alone', { From: 50 }, [{ 'A 0': 53.6 }], true],
    ['To is typed alone', { To: 53 }, [{ 'A 0': 53.03 }], false],
  ])('a gauge is named that reaches the size: %s', (_words, gauge, others, isNamed) => {
    const at = { Engine: 'E', Position: 1 };
    const { remeasure } = assessMeasured(
      bookOf({
        Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 }),
        Gauges: table(coarse, { Gauge: 'B fine', 'Max error': 0.0005, ...gauge }, fine),
        Journals: table({ Part: 'J', ...at, Fit: 'big end', Gauge: 'M', 'A 0': 50 }),
        Rods: table(
          { Part: 'R', ...at, Gauge: 'B', 'A 0': 53.0225 },
          ...others.map((other, order) => ({
            ...{ Part: `Other ${order}`, Engine: '', Position: '', Gauge: 'B fine' },
            ...other,
          })),
        ),
        Shells: table(
          { Part: 'U', ...at, Half: 'upper', Gauge: 'M', 'Wall 1': 1.5 },
          { Part: 'L', ...at, Half: 'lower', Gauge: 'M', 'Wall 1': 1.5 },
        ),
      }),
    );
    expect(remeasure).toHaveLength(1);
    expect(remeasure[0]!.why.includes('measured with gauge B fine')).toBe(isNamed);
    expect(remeasure[0]!.why.includes('with a gauge of max error')).toBe(!isNamed);
  });

  test('else the max error that would do, which then does', () => {
    const given = (maxError: number) =>
      listOf({
        gauges: [{ ...coarse, 'Max error': maxError }, fine],
        bore: { Gauge: 'B', 'A 0': 53.0225 },
      });
    const { fits, remeasure } = given(0.004);
    expect(fits[0]!.status).toBe('undecided');
    expect(remeasure[0]).toMatchObject({ sheet: 'Rods', parts: ['R'] });
    const [, needed] = /max error ([\d.]+) mm or less in place of B/.exec(remeasure[0]!.why)!;
    expect(given(Number(needed)).fits[0]!.status).toBe('in range');
    expect(given(Number(needed) + 0.000001).fits[0]!.status).toBe('undecided');
  });

  test('and where no gauge alone would do, that', () => {
    const { remeasure } = listOf({
      gauges: [coarse, { Gauge: 'M', 'Max error': 0.003 }],
      bore: { Gauge: 'B', 'A 0': 53.0201 },
    });
    expect(remeasure.map(({ why }) => why)).toEqual([
      expect.stringContaining(
        "not decidable with a workshop's gauges: judge by the strip or have it measured",
      ),
    ]);
  });
});

test('what no gauge of a workshop decides is said once for all fits that it holds for', () => {
  const at = (n: number) => ({ Engine: 'E', Position: n });
  const three = (row: (n: number) => Cells) => table(row(1), row(2), row(3));
  const { fits, remeasure } = assessMeasured(
    bookOf({
      Limits: table({ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 }),
      Gauges: table({ Gauge: 'B', 'Max error': 0.004 }, { Gauge: 'M', 'Max error': 0.003 }),
      Journals: three((n) => ({ Part: `J${n}`, ...at(n), Fit: 'big end', Gauge: 'M', 'A 0': 50 })),
      // On the limit, 1 µm and 20 µm inside it.
      Rods: three((n) => ({ Part: `R${n}`, ...at(n), Gauge: 'B', 'A 0': [53.02, 53.021, 53.04][n - 1]! })),
      Shells: table(
        ...[1, 2, 3].flatMap((n) => [
          { Part: `U${n}`, ...at(n), Half: 'upper', Gauge: 'M', 'Wall 1': 1.5 },
          { Part: `L${n}`, ...at(n), Half: 'lower', Gauge: 'M', 'Wall 1': 1.5 },
        ]),
      ),
    }),
  );
  expect(fits.map(({ status }) => status)).toEqual(['undecided', 'undecided', 'in range']);
  expect(remeasure).toHaveLength(1);
  expect(remeasure[0]!.why).toBe(
    'E big end 1, E big end 2: undecided; more readings would not decide them; ' +
      "not decidable with a workshop's gauges: judge by the strip or have it measured",
  );
  expect(remeasure[0]!.parts).toHaveLength(2);
});

test('a fit of a part that is left uncorrected, or of a strip, asks for no reading', () => {
  const main = { Engine: 'E', Position: 1, 'Engine type': 'X', Fit: 'main' };
  const { fits, remeasure } = assessMeasured(
    bookOf({
      Limits: table({
        'Engine type': 'X',
        Fit: 'main',
        'Clearance min': 0.02,
        'Clearance max': 0.06,
        'Bore min': 53.03,
      }),
      Gauges: table({ Gauge: 'M', 'Max error': 0.001, Repeatability: 0.001 }),
      Journals: table(
        { Part: 'J1', ...main, Gauge: 'M', 'A 0': 50 },
        { Part: 'J2', ...main, Position: 2, Gauge: 'M', 'A 0': 50 },
      ),
      Cases: table({ Part: 'C', ...main, Temperature: 30, Gauge: 'M', 'A 0': 53.0301 }),
      Shells: table(
        { Part: 'U', ...main, Half: 'upper', Gauge: 'M', 'Wall 1': 1.5 },
        { Part: 'L', ...main, Half: 'lower', Gauge: 'M', 'Wall 1': 1.5 },
      ),
      Fits: table({ ...main }, { ...main, Position: 2, 'Strip reading': 0.06 }),
    }),
  );
  expect(fits.map(({ status, isStrip }) => [status, isStrip])).toEqual([
    ['undecided', false],
    ['undecided', true],
  ]);
  expect(remeasure).toEqual([]);
});

test('a fit kept open by a refused limit asks for no reading', () => {
  const { fits, remeasure } = listOf({ bore: { 'A 0': 53.07 }, limits: { 'Service limit': 'O.1' } });
  expect(fits[0]!.status).toBe('undecided');
  expect(remeasure).toEqual([]);
});
