/** Uncertainty and guards of parts, by the formulas of JCGM 100 and ISO 14253-1. */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, type Sheets, table, um, whyOf } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const JOURNAL = { Part: 'J1', Engine: 'E1', Fit: 'main', Position: 1 };
const LIMITS = { 'Engine type': 'X', Fit: 'main', 'Clearance min': 0.02, 'Clearance max': 0.06 };

/** z of 95 %, from printed tables of the normal distribution. */
const Z = 1.644854;
/** Mean and deviation of the largest of m standard normal values, m from 1: printed tables of order statistics. */
const C = [0, 0.5642, 0.8463, 1.0294, 1.163, 1.2672];
const S = [1, 0.8256, 0.748, 0.7012, 0.669, 0.6449];
const NO_GUARD = { inside: 0, outside: 0 };
const NO_GUARDS = { smallest: NO_GUARD, largest: NO_GUARD, 'out of round': NO_GUARD, taper: NO_GUARD };

function journalOf(cells: Cells, sheets: Sheets = {}) {
  return assess({ Journals: table({ ...JOURNAL, ...cells }), ...sheets }).parts.of('Journals')[0]!;
}

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
/** u_T of a steel part of 42 mm, in grains. */
const U_T = 0.5 * 11.5e-6 * um(42_000);
/** u_i² of a gauge of so many µm, n repeats. */
const spot = (resolution: number, repeatability: number, n: number) =>
  um(resolution) ** 2 / 12 + um(repeatability) ** 2 / n;
const systematic = (...errors: number[]) => errors.reduce((sum, error) => sum + um(error) ** 2 / 3, 0);
/** Two spots, one of them read twice. */
const READINGS = { 'A 0': 42, 'A 0 #2': 42, 'A 90': 42 };

describe('of the size: u² = Σ E²/3 + u_T² + u_i²/m', () => {
  test.each<[string, Plain, Cells, number[], number]>([
    ['of two spots the fewest repeats count', 'M1', READINGS, [2], spot(1, 0.5, 1) / 2],
    ['both read twice', 'M1', { ...READINGS, 'A 90 #2': 42 }, [2], spot(1, 0.5, 2) / 2],
    ['one spot read three times', 'M1', { 'A 0': 42, 'A 0 #2': 42, 'A 0 #3': 42 }, [2], spot(1, 0.5, 3)],
    [
      'six spots',
      'M1',
      { 'A 0': 42, 'A 45': 42, 'A 90': 42, 'B 0': 42, 'B 45': 42, 'B 90': 42 },
      [2],
      spot(1, 0.5, 1) / 6,
    ],
    ['the gauge that set its zero adds', 'B1', READINGS, [3, 2], spot(1, 0, 1) / 2],
    ['the whole chain adds', 'C3', READINGS, [1, 3, 2], 0],
    ['a circle counts each once', 'C1', READINGS, [1, 2], 0],
    ['set from a gauge that is not listed', 'ON NOTHING', READINGS, [1], 0],
  ])('%s', (_words, gauge, readings, errors, random) => {
    const part = journalOf({ Gauge: gauge, ...readings }, { Gauges });
    const variance = systematic(...errors) + U_T ** 2 + random;
    expect(part.sizeU).toBe(Math.round(2 * Math.sqrt(variance)));
    expect(whyOf(part)).not.toContain('uncertainty');
  });

  test('u_T is of the size and the material of the part', () => {
    const [Material, x] = ['aluminium', um(60_000)];
    const { parts } = assess({
      Gauges: table({ Gauge: 'M1', 'Max error': 0 }),
      Limits: table({ ...LIMITS, 'Bore material': Material }),
      Cases: table({ Part: 'C1', Engine: 'E1', Position: 1, Gauge: 'M1', 'A 0': 59.99, 'A 90': 60.01 }),
    });
    expect(parts.of('Cases')[0]!.sizeU).toBe(Math.round(2 * 0.5 * 23e-6 * x));
  });

  test.each<[string, Plain, string]>([
    ['no gauge', undefined, 'uncertainty not given: no gauge'],
    ['a gauge that Gauges does not name', 'M9', 'gauge M9 is not in Gauges: counted as none'],
  ])('%s: Size U is blank, and the guards are 0, away from 20 °C too', (_words, gauge, why) => {
    for (const Temperature of [20, 30]) {
      const part = journalOf(
        { Gauge: gauge, Temperature, ...READINGS },
        { Gauges, Limits: table({ ...LIMITS, 'Journal min': 42 }) },
      );
      expect(part).toMatchObject({ status: 'within limits', sizeU: undefined, guards: NO_GUARDS });
      expect(part.contributions).toEqual([]);
      expect(part.why).toContain(why);
    }
  });

  test.each<[string, Plain, string]>([
    ['a blank Max error', 'NONE', 'Gauges!B7 (Max error): blank, expected the greatest error of gauge NONE'],
    ['a bad Max error', 'BAD', 'Gauges!B8 (Max error): found the text "n/a"'],
    ['a bad Max error up the chain', 'ON BAD', 'Gauges!B8 (Max error): found the text "n/a"'],
  ])('%s counts against every row of the gauge', (_words, gauge, why) => {
    const { parts } = assess({
      Gauges,
      Journals: table(
        { ...JOURNAL, Gauge: gauge, ...READINGS },
        { ...JOURNAL, Part: 'J2', Position: 2, Gauge: gauge, ...READINGS },
        { ...JOURNAL, Part: 'J3', Position: 3, Gauge: 'M1', ...READINGS },
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
});

describe('away from 20 °C the expansion is not known: Δα·x·(T − 20)/√3, of the part and of its gauge', () => {
  /** u_α of 42 mm, in grains. */
  const expansion = (error: number, kelvin: number) => (error * 1e-6 * um(42_000) * kelvin) / Math.sqrt(3);
  const Materials = table(
    { Material: 'steel', Expansion: 11.5, 'Expansion error': 0.8 },
    { Material: 'invar', Expansion: 1.2, 'Expansion error': 0.3 },
    { Material: 'ceramic', Expansion: 8 },
    { Material: 'known', Expansion: 11.5, 'Expansion error': 0 },
  );
  const of = (material: Plain, gauge: Plain, sheets: Sheets = { Materials }) =>
    journalOf(
      { Gauge: 'G', Temperature: 32, 'A 0': 42 },
      {
        ...sheets,
        Gauges: table({ Gauge: 'G', 'Max error': 0.001, Material: gauge }),
        Limits: table({ ...LIMITS, 'Journal material': material }),
      },
    );

  test.each<[string, Plain, Plain, Sheets | undefined, number, number, number]>([
    ['a tenth where Materials says nothing, steel on steel', undefined, undefined, {}, 11.5, 1.15, 1.15],
    ['of built-in materials a tenth each', 'aluminium', 'cast iron', {}, 23, 2.3, 1.05],
    ['as typed, of part and gauge', 'steel', 'Invar', undefined, 11.5, 0.8, 0.3],
    ['a tenth where its cell is blank', 'ceramic', undefined, undefined, 8, 0.8, 0.8],
    ['none where it is typed as 0', 'known', 'known', undefined, 11.5, 0, 0],
  ])('%s', (_words, material, gauge, sheets, alpha, ofPart, ofGauge) => {
    const part = of(material, gauge, sheets);
    const x = part.form!.size;
    const [own, its] = [ofPart, ofGauge].map((error) => (error * 1e-6 * x * 12) / Math.sqrt(3));
    const variance = systematic(1) + (0.5 * alpha * 1e-6 * x) ** 2 + own! ** 2 + its! ** 2;
    expect(part.sizeU).toBe(Math.round(2 * Math.sqrt(variance)));
    expect(part.measured!.ownExpansion).toBeCloseTo(own!, 6);
    expect(part.measured!.gaugeExpansion?.contribution ?? 0).toBeCloseTo(its!, 6);
    const spread = Z * Math.sqrt(variance);
    expect(part.guards.largest).toEqual({ inside: Math.round(spread), outside: Math.round(spread) });
  });

  test.each([
    [20, 0],
    [30, 1],
    [10, -1],
    [17.5, -0.25],
  ])('at %f °C it has the sign of T − 20', (celsius, tens) => {
    const part = journalOf(
      { Gauge: 'G', Temperature: celsius, 'A 0': 42 },
      { Gauges: table({ Gauge: 'G', 'Max error': 0 }) },
    );
    const contribution = expansion(1.15, 10 * tens);
    expect(part.measured!.ownExpansion).toBeCloseTo(contribution, 6);
    expect(part.measured!.gaugeExpansion?.contribution ?? 0).toBeCloseTo(contribution, 6);
    expect(part.sizeU).toBe(Math.round(2 * Math.sqrt(U_T ** 2 + 2 * contribution ** 2)));
  });
});

describe('guards', () => {
  const common = systematic(2) + U_T ** 2;
  /** By the formulas, of m spots of M1. */
  const extremes = (m: number, variance = spot(1, 0.5, 1)) => {
    const inside = Z * Math.sqrt(common + variance);
    const outside = Z * Math.sqrt(common + S[m - 1]! ** 2 * variance) + C[m - 1]! * Math.sqrt(variance);
    return { inside: Math.round(inside), outside: Math.round(Math.max(inside, outside)) };
  };
  const places = ['A 0', 'A 90', 'B 0', 'B 90', 'C 0', 'C 90'];
  const spots = (m: number) => Object.fromEntries(places.slice(0, m).map((place) => [place, 42]));

  test.each([1, 2, 3, 4, 5, 6])('of the extremes of %i spots', (m) => {
    const { guards } = journalOf({ Gauge: 'M1', ...spots(m) }, { Gauges });
    expect(guards.largest).toEqual(extremes(m));
    expect(guards.smallest).toEqual(extremes(m));
  });

  test('repeats of the spot that was read least make them smaller', () => {
    const { guards } = journalOf({ Gauge: 'M1', ...READINGS, 'A 90 #2': 42, 'A 90 #3': 42 }, { Gauges });
    expect(guards.largest).toEqual(extremes(2, spot(1, 0.5, 2)));
  });

  /** √2·Φ⁻¹(0.95^(1/k)): Φ⁻¹ of 0.95, 0.974679, 0.983048 and 0.987259, by printed tables of the normal distribution. */
  const PAIRS = [1.644854, 1.9545, 2.1212, 2.234].map((z) => Math.SQRT2 * z);

  test.each<[string, Cells, number, number]>([
    // Out of round: a pair of angles a station; taper: a pair of stations an angle.
    ['one station of two angles', { 'A 0': 42, 'A 90': 42 }, 1, 0],
    ['two stations of two angles', { 'A 0': 42, 'A 90': 42, 'B 0': 42, 'B 90': 42 }, 2, 2],
    [
      'three angles at two stations: three pairs of stations',
      { 'A 0': 42, 'A 90': 42, 'B 0': 42, 'B 90': 42, 'A 45': 42, 'B 45': 42 },
      0,
      3,
    ],
    ['a spot that is in no pair', { 'A 0': 42, 'A 90': 42, 'B 0': 42 }, 1, 1],
  ])('of form, %s: no gauge and no temperature', (_words, readings, rounds, tapers) => {
    const { guards } = journalOf({ Gauge: 'M1', ...readings }, { Gauges });
    const u = Math.sqrt(spot(1, 0.5, 1));
    const inside = Math.round(Z * Math.SQRT2 * u);
    const pairs = (k: number) => (k === 0 ? inside : PAIRS[k - 1]! * u);
    expect([guards['out of round'].inside, guards.taper.inside]).toEqual([inside, inside]);
    // To a grain: the quantiles are of five digits.
    if (rounds > 0) expect(Math.abs(guards['out of round'].outside - pairs(rounds))).toBeLessThanOrEqual(1);
    expect(Math.abs(guards.taper.outside - pairs(tapers))).toBeLessThanOrEqual(1);
  });

  test('of form, three angles at one station: the range of three, 3.314 (handbook tables)', () => {
    const { guards } = journalOf({ Gauge: 'M1', 'A 0': 42, 'A 60': 42, 'A 120': 42 }, { Gauges });
    const u = Math.sqrt(spot(1, 0.5, 1));
    expect(guards['out of round'].inside).toBe(Math.round(Z * Math.SQRT2 * u));
    expect(guards['out of round'].outside / u).toBeCloseTo(3.314, 2);
  });

  test('of form, stations of three and of two angles: two ranges of three at most', () => {
    const angles = { 'A 0': 42, 'A 60': 42, 'A 120': 42, 'B 0': 42, 'B 60': 42 };
    const { guards } = journalOf({ Gauge: 'M1', ...angles }, { Gauges });
    // √0.95 = 0.974679; the handbook tables have 3.68 for 0.975.
    const u = Math.sqrt(spot(1, 0.5, 1));
    expect(Math.abs(guards['out of round'].outside / u - 3.68)).toBeLessThan(0.01);
  });

  test('at 50 % nothing is kept inside; outside the excess of extremes stays', () => {
    const Setup = table({ Item: 'Confidence', Value: '50 %' });
    const { guards } = journalOf({ Gauge: 'M1', 'A 0': 42, 'B 0': 42, 'C 0': 42 }, { Gauges, Setup });
    const u = Math.sqrt(spot(1, 0.5, 1));
    expect(guards.largest).toEqual({ inside: 0, outside: Math.round(C[2]! * u) });
    // Three readings at one angle: the median range of three normal values, 1.588 (Harter's tables).
    expect(guards.taper.inside).toBe(0);
    expect(guards.taper.outside / u).toBeCloseTo(1.588, 2);
    expect(guards['out of round']).toEqual(NO_GUARD);
  });
});
