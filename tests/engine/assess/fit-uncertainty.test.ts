/** Uncertainty, guards and verdicts of fits, by the formulas of JCGM 100 and ISO 14253-1. */
import { describe, expect, test } from 'vitest';
import { assess, table, um, whyOf } from '../book-of.js';
import { AT_1, type Cells, fitOf, type Given, LIMITS } from './one-fit.js';

/** z of 95 %, from printed tables of the normal distribution. */
const Z = 1.644854;
const by = (Gauge: string) => ({ Gauge });
/** The variance of a rectangular error of so many µm to each side. */
const error = (micrometres: number) => um(micrometres) ** 2 / 3;
/** Sizes are as read, and no term of temperature counts: steel does not grow here. */
const Materials = table({ Material: 'steel', Expansion: 0 });

describe('gauges', () => {
  const Gauges = table(
    { Gauge: 'MIC', 'Max error': 0.002 },
    { Gauge: 'CONSTANT', 'Max error': 0.002, 'Same at all sizes': 'yes' },
    { Gauge: 'NOT CONSTANT', 'Max error': 0.002, 'Same at all sizes': 'No' },
    { Gauge: 'BALL', 'Max error': 0.001 },
    { Gauge: 'DIAL', 'Max error': 0.003, 'Set from': 'MIC' },
    { Gauge: 'DIAL C', 'Max error': 0.003, 'Set from': 'constant' },
    { Gauge: 'STEP', 'Max error': 0, Resolution: 0.001, Repeatability: 0.0006 },
  );
  const sheets = { Materials, Gauges };
  const step = (repeats: number) => um(1) ** 2 / 12 + um(0.6) ** 2 / repeats;

  // Bore 45 mm, walls 1.5 mm, journal 41.96 mm: three sizes.
  test.each<[string, Given, number]>([
    ['one micrometer on the journal', { journal: by('MIC') }, error(2)],
    ['two gauges', { journal: by('MIC'), bore: by('BALL') }, error(2) + error(1)],
    [
      'one micrometer on journal and bore: two sizes, two errors',
      { journal: by('MIC'), bore: by('mic') },
      2 * error(2),
    ],
    ['the same said by `no`', { journal: by('NOT CONSTANT'), bore: by('NOT CONSTANT') }, 2 * error(2)],
    ['its error is one constant: it cancels', { journal: by('CONSTANT'), bore: by('constant') }, 0],
    [
      'the micrometer that set the bore gauge, at another size than the journal',
      { journal: by('MIC'), bore: by('DIAL') },
      error(3) + 2 * error(2),
    ],
    [
      'the same with a constant error: it cancels, what the bore gauge adds stays',
      { journal: by('CONSTANT'), bore: by('DIAL C') },
      error(3),
    ],
    ['one on both walls: one size, (−1 − 1)²', { upper: by('BALL'), lower: by('BALL') }, 4 * error(1)],
    [
      'walls of two sizes: the greater of (−1 − 1)² and 1 + 1',
      { upper: by('BALL'), lower: { Gauge: 'BALL', 'Wall 1': 1.75 } },
      4 * error(1),
    ],
    [
      'one on walls and journal: the greater of (−3)² and (−2)² + 1',
      { upper: by('MIC'), lower: by('MIC'), journal: by('MIC') },
      9 * error(2),
    ],
    [
      'one on all four: the greater of (1 − 3)² and 1 + (−2)² + 1',
      { bore: by('MIC'), upper: by('MIC'), lower: by('MIC'), journal: by('MIC') },
      6 * error(2),
    ],
    [
      'one constant on all four: (1 − 3)²',
      { bore: by('CONSTANT'), upper: by('CONSTANT'), lower: by('CONSTANT'), journal: by('CONSTANT') },
      4 * error(2),
    ],
    [
      'walls by their own, journal and bore by one chain',
      { bore: by('DIAL'), journal: by('MIC'), upper: by('BALL'), lower: by('BALL') },
      error(3) + 2 * error(2) + 4 * error(1),
    ],
    ['random parts never cancel', { bore: by('STEP'), journal: by('STEP') }, 2 * step(1)],
    ['one spot read twice', { journal: { Gauge: 'STEP', 'A 0 #2': 41.96 } }, step(2)],
    [
      'of two spots the fewest repeats count, and one spot: extremes are of one',
      { journal: { Gauge: 'STEP', 'A 0 #2': 41.96, 'A 90': 41.96 } },
      step(1),
    ],
  ])('%s', (_words, given, variance) => {
    const fit = fitOf(0.04, { ...given, sheets });
    expect(fit.variance).toBeCloseTo(variance, 6);
    expect(fit.clearanceU).toBe(Math.round(2 * Math.sqrt(variance)));
    expect(fit.guards.inside).toBe(Math.round(Z * Math.sqrt(variance)));
  });

  test.each<[string, Given, string | undefined]>([
    ['none', {}, 'uncertainty not given: no part has a gauge'],
    ['some', { journal: by('MIC'), lower: by('MIC') }, 'uncertainty not given for R1, U'],
    [
      'one that Gauges does not name',
      { journal: by('MIC'), bore: by('NEW') },
      'uncertainty not given for R1, U, L',
    ],
    ['all', { journal: by('MIC'), bore: by('MIC'), upper: by('MIC'), lower: by('MIC') }, undefined],
  ])('gauges of %s are said', (_words, given, why) => {
    expect(
      fitOf(0.04, { ...given, sheets }).why.filter((reason) => reason.startsWith('uncertainty')),
    ).toEqual(why === undefined ? [] : [why]);
  });

  test.each<[string, readonly (readonly [string, string])[], string]>([
    ['itself', [['A', 'A']], 'gauge A is set from itself: check Set from in Gauges'],
    [
      'each other, from below',
      [
        ['A', 'B'],
        ['B', 'C'],
        ['C', 'B'],
      ],
      'gauges B, C are set from each other in a circle: check Set from in Gauges',
    ],
    [
      'a long circle',
      ['A', 'B', 'C', 'D', 'E', 'F'].map((name, at) => [name, 'BCDEFA'[at]!] as const),
      'gauges A, B, C, D and 2 more are set from each other in a circle: check Set from in Gauges',
    ],
  ])('gauges set from %s are named in the fits that hang on them', (_words, chain, why) => {
    const circle = table(...chain.map(([Gauge, from]) => ({ Gauge, 'Max error': 0.002, 'Set from': from })));
    const fit = fitOf(0.04, { journal: by('A'), bore: by('A'), sheets: { Materials, Gauges: circle } });
    expect(fit.status).toBe('in range');
    // Said of the fit once, though two of its parts hang on the circle.
    expect(fit.why.filter((reason) => reason.includes('set from'))).toEqual([why]);
  });

  test('nothing but yes and no is the same at all sizes', () => {
    const odd = table({ Gauge: 'MIC', 'Max error': 0.002, 'Same at all sizes': 'mostly' });
    const fit = fitOf(0.04, { journal: by('MIC'), sheets: { Materials, Gauges: odd } });
    expect(fit.status).toBe('bad reading');
    expect(whyOf(fit)).toContain('Gauges!C2 (Same at all sizes): found the text "mostly"');
  });
});

describe('temperature', () => {
  const Gauges = table(...['G1', 'G2', 'G3', 'G4'].map((Gauge) => ({ Gauge, 'Max error': 0 })), {
    Gauge: 'TYPED',
    'Max error': 0,
    Material: 'stone',
  });
  const all: Given = { bore: by('G1'), upper: by('G2'), lower: by('G3'), journal: by('G4') };

  test('0.5 K between part and gauge: one term for each part with a gauge, none cancels', () => {
    const term = (alpha: number, mm: number) => (0.5 * alpha * mm) ** 2;
    expect(fitOf(0, { journal: by('G1'), sheets: { Gauges } }).variance).toBeCloseTo(term(11.5, 42), 6);
    const four = fitOf(0, {
      ...all,
      ...{ journal: by('G1'), limits: { 'Bore material': 'aluminium' }, sheets: { Gauges } },
    });
    expect(four.variance).toBeCloseTo(term(23, 45) + 2 * term(11.5, 1.5) + term(11.5, 42), 6);
  });

  // Nothing grows, so that sizes are as read; how much it might is not known: ± 1e-6 per K of steel, ± 3e-6 of the bore.
  const sheets = {
    Gauges,
    Materials: table(
      { Material: 'steel', Expansion: 0, 'Expansion error': 1 },
      { Material: 'alloy', Expansion: 0, 'Expansion error': 3 },
      { Material: 'stone', Expansion: 0, 'Expansion error': 0.5 },
    ),
  };
  const [B, W, J] = [45, 1.5, 41.96];
  /** Grains of Δα·x·(T − 20), x in mm: 1e-6 · 1e6. */
  const squared = (...sums: number[]) => sums.reduce((total, sum) => total + sum ** 2 / 3, 0);
  const at = (celsius: number, given: Given = all): Given => ({
    bore: { Temperature: celsius, ...given.bore },
    upper: { Temperature: celsius, ...given.upper },
    lower: { Temperature: celsius, ...given.lower },
    journal: { Temperature: celsius, ...given.journal },
  });

  test.each<[string, Given, number]>([
    ['at 20 °C nothing', all, 0],
    [
      'the bore by itself, walls and journal as one, each gauge by itself',
      at(30),
      squared(30 * B, 10 * (W + W + J)) + squared(10 * B, 10 * W, 10 * W, 10 * J),
    ],
    [
      'below 20 °C the same',
      at(10),
      squared(30 * B, 10 * (W + W + J)) + squared(10 * B, 10 * W, 10 * W, 10 * J),
    ],
    [
      'one gauge on all: its terms add with their signs',
      at(30, { bore: by('G1'), upper: by('G1'), lower: by('G1'), journal: by('G1') }),
      squared(30 * B, 10 * (W + W + J)) + squared(10 * (B - W - W - J)),
    ],
    [
      'walls read below 20 °C, the journal above it',
      {
        ...all,
        upper: { Gauge: 'G2', Temperature: 15 },
        lower: { Gauge: 'G3', Temperature: 15 },
        journal: { Gauge: 'G4', Temperature: 30 },
      },
      squared(10 * J - 5 * (W + W)) + squared(5 * W, 5 * W, 10 * J),
    ],
    [
      'one gauge that read the bore warm and the journal cold',
      { bore: { Gauge: 'G1', Temperature: 30 }, journal: { Gauge: 'G1', Temperature: 10 } },
      squared(30 * B, 10 * J) + squared(10 * B + 10 * J),
    ],
    [
      'a gauge of another material has its own error',
      { journal: { Gauge: 'TYPED', Temperature: 30 } },
      squared(10 * J) + squared(5 * J),
    ],
    ['a part without a gauge adds nothing', at(30, { journal: by('G4') }), squared(10 * J) + squared(10 * J)],
  ])('expansion: %s', (_words, given, variance) => {
    const fit = fitOf(0.04, { ...given, limits: { 'Bore material': 'alloy' }, sheets });
    expect(fit.clearance?.clearance).toBe(um(40));
    expect(fit.variance).toBeCloseTo(variance, 6);
    expect(fit.guards.inside).toBe(Math.round(Z * Math.sqrt(variance)));
  });
});

describe('the guards of several spots', () => {
  // Spots that scatter by 2 µm, on the walls by 1 µm, and an error of 3 µm of the journal's gauge.
  const Gauges = table(
    { Gauge: 'MIC', 'Max error': 0.003, Repeatability: 0.002 },
    { Gauge: 'BALL', 'Max error': 0, Repeatability: 0.001 },
  );
  const spots = (value: number, ...places: string[]) =>
    Object.fromEntries(places.map((place) => [place, value]));
  const parts: Given = {
    journal: { Gauge: 'MIC', ...spots(41.96, 'A 0', 'A 90', 'B 0', 'B 90') },
    upper: { Gauge: 'BALL', 'Wall 2': 1.5 },
    lower: { Gauge: 'BALL', 'Wall 2': 1.5 },
    sheets: { Materials, Gauges },
  };
  const common = error(3);
  const inside = Z * Math.sqrt(common + um(2) ** 2 + 2 * um(1) ** 2);
  // c and s of 4 and 2 by the tables of order statistics.
  const outside =
    Z * Math.sqrt(common + 0.7012 ** 2 * um(2) ** 2 + 2 * 0.8256 ** 2 * um(1) ** 2) +
    (1.0294 * um(2) + 2 * 0.5642 * um(1));
  // z·√(3e6 + 4e6 + 2e6) = 4934.6 and z·√(3e6 + 1.9667e6 + 1.3632e6) + 2058.8 + 1128.4 = 7325.6.
  const [INSIDE, OUTSIDE] = [4935, 7326];

  /** The fit with all spots of the journal alike, so that clearance, tightest and loosest are one. */
  const fitAt = (grains: number, limits: Cells = {}) => {
    const size = Number((42 - grains / 1e6).toFixed(6));
    const journal = { ...parts.journal, ...spots(size, 'A 0', 'A 90', 'B 0', 'B 90') };
    return fitOf(0, { ...parts, journal, limits });
  };

  test('outside a limit allow for the excess of extremes, inside they do not', () => {
    expect([Math.round(inside), Math.round(outside)]).toEqual([INSIDE, OUTSIDE]);
    expect(fitAt(um(40)).guards).toEqual({ inside: INSIDE, outside: OUTSIDE });
  });

  test.each<[string, number, Cells, string]>([
    ['inside min by the guard', um(20) + INSIDE, {}, 'in range'],
    ['inside min by a grain less', um(20) + INSIDE - 1, {}, 'undecided'],
    ['under min by more than the guard inside', um(20) - INSIDE - 1, {}, 'undecided'],
    ['under min by the guard outside', um(20) - OUTSIDE, {}, 'undecided'],
    ['under min by a grain more', um(20) - OUTSIDE - 1, {}, 'tight'],
    ['inside max by the guard', um(60) - INSIDE, {}, 'in range'],
    ['over max by the guard outside', um(60) + OUTSIDE, {}, 'undecided'],
    ['over max by a grain more', um(60) + OUTSIDE + 1, {}, 'loose'],
    [
      'over max by the guard outside, under a Service limit',
      um(60) + OUTSIDE,
      { 'Service limit': 0.09 },
      'undecided',
    ],
    [
      'by a grain more, under a Service limit',
      um(60) + OUTSIDE + 1,
      { 'Service limit': 0.09 },
      'within service limit',
    ],
    [
      'inside the Service limit by the guard',
      um(90) - INSIDE,
      { 'Service limit': 0.09 },
      'within service limit',
    ],
    ['inside it by a grain less', um(90) - INSIDE + 1, { 'Service limit': 0.09 }, 'undecided'],
    ['over it by the guard outside', um(90) + OUTSIDE, { 'Service limit': 0.09 }, 'undecided'],
    ['over it by a grain more', um(90) + OUTSIDE + 1, { 'Service limit': 0.09 }, 'loose'],
  ])('%s', (_words, grains, limits, status) => {
    expect(fitAt(grains, limits).status).toBe(status);
  });

  test('Why names the guard on the side on which the fit lies', () => {
    expect(fitAt(um(20) + INSIDE - 1).why[1]).toContain('nearer than we can measure (±0.004935 mm)');
    expect(fitAt(um(20) - OUTSIDE).why[1]).toContain('nearer than we can measure (±0.007326 mm)');
  });
});

describe('the verdict, by a guard of 1.899 µm', () => {
  const sheets = { Materials, Gauges: table({ Gauge: 'MIC', 'Max error': 0.002 }) };
  const worn = { 'Service limit': 0.09 };
  const LOOSER = 'looser than new parts may be (proved); the service limit is not proved';

  // 2 µm / √3 = 1154.7 grains; · 1.644854 = 1899.3. The chance at the guard is 95 % or 5 %.
  test.each<[string, number, Cells, string, readonly string[]]>([
    ['inside min by the guard', 21_899, {}, 'in range', []],
    [
      'inside min by a grain less',
      21_898,
      {},
      'undecided',
      [
        'probably in range: 95 %',
        'tightest 0.021898 mm is 0.001898 mm from Clearance min 0.02 mm, nearer than we can measure (±0.001899 mm)',
      ],
    ],
    // Φ(1/1.1547) = Φ(0.8660) = 0.8068 by printed tables.
    [
      'inside min by 1 µm',
      21_000,
      {},
      'undecided',
      ['probably in range: 81 %', 'tightest 0.021 mm is 0.001 mm'],
    ],
    ['on min', 20_000, {}, 'undecided', ['probably in range: 50 %', 'tightest 0.02 mm is 0 mm from']],
    [
      'under min by 1 µm',
      19_000,
      {},
      'undecided',
      ['probably not in range: chance 19 %', 'tightest 0.019 mm is 0.001 mm from Clearance min'],
    ],
    [
      'outside min by the guard',
      18_101,
      {},
      'undecided',
      [
        'probably not in range: chance 5 %',
        'tightest 0.018101 mm is 0.001899 mm from Clearance min 0.02 mm, nearer than we can measure (±0.001899 mm)',
      ],
    ],
    [
      'outside min by a grain more',
      18_100,
      {},
      'tight',
      ['tightest is 0.0019 mm under Clearance min 0.02 mm'],
    ],
    ['inside max by the guard', 58_101, {}, 'in range', []],
    [
      'inside max by a grain less',
      58_102,
      {},
      'undecided',
      [
        'probably in range: 95 %',
        'loosest 0.058102 mm is 0.001898 mm from Clearance max 0.06 mm, nearer than we can measure (±0.001899 mm)',
      ],
    ],
    [
      'outside max by the guard',
      61_899,
      {},
      'undecided',
      ['probably not in range: chance 5 %', 'loosest 0.061899 mm is 0.001899 mm from Clearance max 0.06 mm'],
    ],
    ['outside max by a grain more', 61_900, {}, 'loose', ['loosest is 0.0019 mm over Clearance max 0.06 mm']],
    [
      'outside max by the guard, under a Service limit',
      61_899,
      worn,
      'undecided',
      ['probably not in range: chance 5 %', 'loosest 0.061899 mm is 0.001899 mm from Clearance max 0.06 mm'],
    ],
    [
      'by a grain more, under a Service limit',
      61_900,
      worn,
      'within service limit',
      ['loosest is 0.0019 mm over Clearance max 0.06 mm, under Service limit 0.09 mm'],
    ],
    [
      'inside the Service limit by the guard',
      88_101,
      worn,
      'within service limit',
      ['loosest is 0.028101 mm over'],
    ],
    [
      'inside the Service limit by a grain less',
      88_102,
      worn,
      'undecided',
      [
        LOOSER,
        'loosest 0.088102 mm is 0.001898 mm from Service limit 0.09 mm, nearer than we can measure (±0.001899 mm)',
      ],
    ],
    [
      'outside the Service limit by the guard',
      91_899,
      worn,
      'undecided',
      [LOOSER, 'loosest 0.091899 mm is 0.001899 mm from Service limit 0.09 mm'],
    ],
    [
      'outside the Service limit by a grain more',
      91_900,
      worn,
      'loose',
      ['loosest is 0.0019 mm over Service limit 0.09 mm'],
    ],
  ])('%s', (_words, grains, limits, status, reasons) => {
    const fit = fitOf(grains / 1e6, { journal: by('MIC'), limits, sheets });
    expect([fit.guards, fit.status]).toEqual([{ inside: 1899, outside: 1899 }, status]);
    const own = fit.why.filter((reason) => !reason.startsWith('uncertainty'));
    expect(own).toHaveLength(reasons.length);
    for (const [place, reason] of reasons.entries()) expect(own[place]!.startsWith(reason)).toBe(true);
  });

  test('near both limits both are named, after the chance of the whole fit', () => {
    // A journal of two sizes: tightest 20 µm, loosest 60 µm.
    const fit = fitOf(0.06, { journal: { Gauge: 'MIC', 'B 0': 41.98 }, sheets });
    // Φ(0) − Φ(0).
    expect(fit.chance).toBeCloseTo(0, 9);
    expect(fit.why.slice(0, 3).map((reason) => reason.replace(/ mm is .*/, ''))).toEqual([
      'probably not in range: chance 0 %',
      'tightest 0.02',
      'loosest 0.06',
    ]);
  });

  test('worn at one end, the other not proved: what is proved comes first', () => {
    const fit = fitOf(0.07, { journal: { Gauge: 'MIC', 'B 0': 41.979 }, limits: worn, sheets });
    expect(fit.status).toBe('undecided');
    expect(fit.why.slice(0, 2)).toEqual([
      LOOSER,
      'tightest 0.021 mm is 0.001 mm from Clearance min 0.02 mm, nearer than we can measure (±0.001899 mm)',
    ]);
  });

  test('the chance on a limit is a half', () => {
    const fit = fitOf(0.02, { journal: by('MIC'), sheets });
    // Φ(40/1.1547) is 1 and Φ(0) is ½.
    expect(fit.chance).toBeCloseTo(0.5, 9);
  });

  test('at 50 % there is no guard of one spot', () => {
    const Setup = table({ Item: 'Confidence', Value: 0.5 });
    expect(fitOf(0.02, { journal: by('MIC'), sheets: { ...sheets, Setup } }).status).toBe('in range');
  });
});

describe('a part left uncorrected, away from 20 °C', () => {
  const MAIN = { ...AT_1, 'Engine type': 'X', Fit: 'main' };
  const mainOf = (clearance: number, limits: Cells, bore: Cells = {}) =>
    assess({
      Gauges: table({ Gauge: 'MIC', 'Max error': 0.002 }),
      Limits: table({ ...LIMITS, Fit: 'main', ...limits }),
      Journals: table({ Part: 'J1', ...MAIN, 'A 0': Number((42 - clearance).toFixed(6)) }),
      Cases: table({ Part: 'C1', ...MAIN, Gauge: 'MIC', Temperature: 30, 'A 0': 45, ...bore }),
      Shells: table(
        { Part: 'U', ...MAIN, Half: 'upper', 'Wall 1': 1.5 },
        { Part: 'L', ...MAIN, Half: 'lower', 'Wall 1': 1.5 },
      ),
    }).fits[0]!;
  const WANTED = 'C1: not corrected to 20 °C: type Bore material in Limits';

  test.each<[string, number, Cells, string]>([
    ['that would be in range', 0.04, {}, 'undecided'],
    ['that would be tight', 0.001, {}, 'undecided'],
    ['that would be loose', 0.2, {}, 'undecided'],
    ['that would be within the Service limit', 0.07, { 'Service limit': 0.09 }, 'undecided'],
    ['without limits', 0.04, { 'Clearance max': undefined }, 'no limits'],
    ['whose material is typed', 0.04, { 'Bore material': 'steel' }, 'in range'],
  ])('leaves a fit undecided %s', (_words, clearance, limits, status) => {
    const fit = mainOf(clearance, { 'Bore min': 44, ...limits });
    expect(fit.status).toBe(status);
    expect(fit.why[0] === WANTED).toBe(status === 'undecided');
  });

  test('at 20 °C it does not', () => {
    expect(mainOf(0.04, {}, { Temperature: undefined }).status).toBe('in range');
  });

  test('sizes, chance and U are shown, of the gauge alone', () => {
    const fit = mainOf(0.04, { 'Bore min': 44 });
    expect(fit.clearance?.clearance).toBe(um(40));
    expect(fit.variance).toBeCloseTo(error(2), 6);
    expect(fit.clearanceU).toBe(Math.round(2 * Math.sqrt(error(2))));
    expect(fit.chance).toBeCloseTo(1, 9);
  });

  test('Why asks for the material, whatever else is said of the part first', () => {
    const fit = mainOf(0.04, {});
    expect(fit.status).toBe('undecided');
    expect(fit.why[0]).toBe(WANTED);
  });
});

test('over Clearance max for certain, with a Service limit that was refused: no word of a reading too near a limit', () => {
  const fit = fitOf(0.07, { limits: { 'Service limit': 'x' } });
  expect(fit.status).toBe('undecided');
  expect(fit.why).toContain('looser than new parts may be (proved); the service limit is not proved');
  expect(whyOf(fit)).toContain('(Service limit): found the text "x"');
  expect(whyOf(fit)).not.toContain('nearer than we can measure');
});
