/** Fits: clearance, uncertainty, verdict, strip readings, engine type. */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, type Sheets, table, um, whyOf } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const AT_1 = { Engine: 'E1', Position: 1 };
const LIMITS = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 };

interface Given {
  readonly journal?: Cells;
  readonly bore?: Cells;
  readonly upper?: Cells;
  readonly lower?: Cells;
  readonly limits?: Cells;
  readonly sheets?: Sheets;
}

/** One fit: bore 45, walls 1.5, journal 42 less the clearance asked for. */
function fitOf(clearance: number, { journal, bore, upper, lower, limits, sheets }: Given = {}) {
  const size = Math.round((42 - clearance) * 1e5) / 1e5;
  return assess({
    Limits: table({ ...LIMITS, ...limits }),
    Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': size, ...journal }),
    Rods: table({ Part: 'R1', ...AT_1, 'A 0': 45, ...bore }),
    Shells: table(
      { Part: 'U', ...AT_1, Half: 'upper', 'Wall 1': 1.5, ...upper },
      { Part: 'L', ...AT_1, Half: 'lower', 'Wall 1': 1.5, ...lower },
    ),
    ...sheets,
  }).fits[0]!;
}

test('clearance, tightest and loosest, each half its own', () => {
  const fit = fitOf(0, {
    bore: { 'A 0': 45.04, 'A 90': 45.06 },
    upper: { 'Wall 1': 1.5, 'Wall 2': 1.502 },
    lower: { 'Wall 1': 1.49, 'Wall 2': 1.494 },
    journal: { 'A 0': 42, 'B 0': 42.01 },
  });
  expect(fit.clearance).toEqual({
    clearance: um(45_050 - 1501 - 1492 - 42_005),
    tightest: um(45_040 - 1502 - 1494 - 42_010),
    loosest: um(45_060 - 1500 - 1490 - 42_000),
  });
});

describe('the verdict without uncertainty', () => {
  test.each<[string, number, Cells, string, string]>([
    ['on Clearance min', 0.02, {}, 'in range', ''],
    ['a grain under', 0.01999, {}, 'tight', 'tightest is 0.00001 mm under Clearance min 0.02 mm'],
    ['on Clearance max', 0.06, {}, 'in range', ''],
    ['a grain over', 0.06001, {}, 'loose', 'loosest is 0.00001 mm over Clearance max 0.06 mm'],
    [
      'between max and Service limit',
      0.07,
      { 'Service limit': 0.09 },
      'within service limit',
      'loosest is 0.01 mm over Clearance max 0.06 mm, under Service limit 0.09 mm',
    ],
    ['on the Service limit', 0.09, { 'Service limit': 0.09 }, 'within service limit', ''],
    ['over the Service limit', 0.09001, { 'Service limit': 0.09 }, 'loose', 'over Service limit 0.09 mm'],
    ['Clearance min below zero', -0.01, { 'Clearance min': -0.01 }, 'in range', ''],
    [
      'Clearance min blank',
      0.04,
      { 'Clearance min': undefined },
      'no limits',
      'Limits gives no Clearance min for this fit',
    ],
    [
      'Clearance max bad',
      0.04,
      { 'Clearance max': 'x', 'Journal max': 'y' },
      'no limits',
      'Limits!D2 (Clearance max): found the text "x"',
    ],
  ])('%s', (_words, clearance, limits, status, why) => {
    const fit = fitOf(clearance, { limits });
    expect(fit.status).toBe(status);
    expect(whyOf(fit)).toContain(why);
    expect(fit).toMatchObject({ clearanceU: undefined, guard: 0 });
    expect(fit.chance).toBe(status === 'no limits' ? undefined : status === 'in range' ? 1 : 0);
    expect(whyOf(fit)).toContain('uncertainty not given: no part has a gauge');
  });

  test('tight comes before loose', () => {
    const fit = fitOf(0.04, { journal: { 'A 0': 41.9, 'B 0': 42.1 } });
    expect(fit.status).toBe('tight');
  });
});

describe('uncertainty', () => {
  // Without resolution or repeatability the random part is the 0.5 K term alone, here cancelled by Expansion 0.
  const Materials = table({ Material: 'steel', Expansion: 0 });
  const Gauges = table(
    { Gauge: 'MIC', 'Max error': 0.002 },
    { Gauge: 'BALL', 'Max error': 0.001 },
    { Gauge: 'DIAL', 'Max error': 0.003, 'Set from': 'MIC' },
    { Gauge: 'STEP', 'Max error': 0, Resolution: 0.001, Repeatability: 0.0006 },
  );
  const sheets = { Materials, Gauges };
  const by = (Gauge: string) => ({ Gauge });

  test.each<[string, Given, number]>([
    ['one micrometer on the journal', { journal: by('MIC') }, 200 ** 2 / 3],
    ['two gauges', { journal: by('MIC'), bore: by('BALL') }, (200 ** 2 + 100 ** 2) / 3],
    ['one micrometer on journal and bore cancels', { journal: by('MIC'), bore: by('mic') }, 0],
    [
      'the micrometer that set the bore gauge cancels',
      { journal: by('MIC'), bore: by('DIAL') },
      300 ** 2 / 3,
    ],
    ['one on both walls adds', { upper: by('BALL'), lower: by('BALL') }, 200 ** 2 / 3],
    [
      'one on walls and journal adds thrice',
      { upper: by('MIC'), lower: by('MIC'), journal: by('MIC') },
      600 ** 2 / 3,
    ],
    [
      'one on all four leaves two',
      { bore: by('MIC'), upper: by('MIC'), lower: by('MIC'), journal: by('MIC') },
      400 ** 2 / 3,
    ],
    [
      'walls by their own, journal and bore by one chain',
      { bore: by('DIAL'), journal: by('MIC'), upper: by('BALL'), lower: by('BALL') },
      (300 ** 2 + 200 ** 2) / 3,
    ],
    ['random parts never cancel', { bore: by('STEP'), journal: by('STEP') }, 2 * (100 ** 2 / 12 + 60 ** 2)],
    [
      'the largest of the spots, with its repeats',
      { journal: { Gauge: 'STEP', 'A 0 #2': 41.96 } },
      100 ** 2 / 12 + 60 ** 2 / 2,
    ],
    [
      'one spot without repeats is the largest',
      { journal: { Gauge: 'STEP', 'A 0 #2': 41.96, 'A 90': 41.96 } },
      100 ** 2 / 12 + 60 ** 2,
    ],
  ])('%s', (_words, given, variance) => {
    const fit = fitOf(0.04, { ...given, sheets });
    expect(fit.variance).toBeCloseTo(variance, 6);
    expect(fit.clearanceU).toBe(Math.round(2 * Math.sqrt(variance)));
    expect(fit.guards.inside).toBe(Math.round(1.644854 * Math.sqrt(variance)));
  });

  test('the 0.5 K term of a journal with a gauge', () => {
    const fit = fitOf(0, { journal: by('MIC'), sheets: { Gauges } });
    expect(fit.variance).toBeCloseTo(200 ** 2 / 3 + (0.5 * 11.5e-6 * 4_200_000) ** 2, 6);
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

  describe('and the verdict, by a guard of 190 grains', () => {
    // 2 µm / √3 = 115.47 grains; · 1.644854 = 189.93.
    test.each<[string, number, Cells, string, string]>([
      ['inside min by the guard', 2190, {}, 'in range', ''],
      [
        'inside min by a grain less',
        2189,
        {},
        'undecided',
        'tightest 0.02189 mm within the guard 0.0019 mm of Clearance min 0.02 mm',
      ],
      ['outside min by the guard', 1810, {}, 'undecided', 'tightest'],
      ['outside min by a grain more', 1809, {}, 'tight', ''],
      ['inside max by the guard', 5810, {}, 'in range', ''],
      [
        'inside max by a grain less',
        5811,
        {},
        'undecided',
        'loosest 0.05811 mm within the guard 0.0019 mm of Clearance max 0.06 mm',
      ],
      ['outside max by the guard', 6190, {}, 'undecided', 'loosest'],
      ['outside max by a grain more', 6191, {}, 'loose', ''],
      [
        'outside max by the guard, under a Service limit',
        6190,
        { 'Service limit': 0.09 },
        'undecided',
        'Clearance max',
      ],
      ['by a grain more, under a Service limit', 6191, { 'Service limit': 0.09 }, 'within service limit', ''],
      ['inside the Service limit by the guard', 8810, { 'Service limit': 0.09 }, 'within service limit', ''],
      [
        'inside the Service limit by a grain less',
        8811,
        { 'Service limit': 0.09 },
        'undecided',
        'Service limit 0.09 mm',
      ],
      [
        'outside the Service limit by the guard',
        9190,
        { 'Service limit': 0.09 },
        'undecided',
        'Service limit',
      ],
      ['outside the Service limit by a grain more', 9191, { 'Service limit': 0.09 }, 'loose', ''],
    ])('%s', (_words, grains, limits, status, why) => {
      const fit = fitOf(grains / 1e5, { journal: by('MIC'), limits, sheets });
      expect([fit.guards.inside, fit.status]).toEqual([190, status]);
      expect(fit.why[0]).toContain(why);
    });

    test('the chance on a limit is a half', () => {
      const fit = fitOf(0.02, { journal: by('MIC'), sheets });
      // Φ(4000/115.47) is 1 and Φ(0) is ½.
      expect(fit.chance).toBeCloseTo(0.5, 9);
    });

    test('at 50 % there is no guard', () => {
      const Setup = table({ Item: 'Confidence', Value: 0.5 });
      expect(fitOf(0.02, { journal: by('MIC'), sheets: { ...sheets, Setup } }).status).toBe('in range');
    });
  });
});

describe('a strip reading', () => {
  const strip = (reading: Plain, given: Given = {}, cells: Cells = {}) =>
    fitOf(0.04, {
      ...given,
      sheets: {
        Fits: table({ ...AT_1, Fit: 'big end', 'Strip reading': reading, ...cells }),
        ...given.sheets,
      },
    });
  const unmeasured = { 'A 0': undefined };
  const Gauges = table({ Gauge: 'MIC', 'Max error': 0.002 });

  test.each<[string, Plain, Given, string]>([
    ['stands in for a part not measured', 0.05, { bore: unmeasured }, 'in range'],
    ['stands in for a part that is missing', 0.05, { upper: { Position: 2 } }, 'in range'],
    [
      'stands in for all three, with u = 0',
      0.05,
      { bore: unmeasured, journal: { Gauge: 'MIC' }, sheets: { Gauges } },
      'in range',
    ],
    ['on the limit', '0,060 mm', { bore: unmeasured }, 'in range'],
    ['over the limit', 0.07, { bore: unmeasured }, 'loose'],
    ['of zero', 0, { bore: unmeasured }, 'tight'],
    ['without limits', 0.05, { bore: unmeasured, limits: { 'Clearance max': undefined } }, 'no limits'],
  ])('%s', (_words, reading, given, status) => {
    const fit = strip(reading, given);
    const grains = typeof reading === 'number' ? Math.round(reading * 1e5) : 6000;
    expect(fit).toMatchObject({ status, isStrip: true, variance: 0, clearanceU: undefined });
    expect(fit.clearance).toEqual({ clearance: grains, tightest: grains, loosest: grains });
    expect(fit.why).toContain('by the strip reading');
  });

  test('leaves the computed verdict where both exist', () => {
    const fit = strip(0.5);
    expect(fit).toMatchObject({ status: 'in range', isStrip: false, clearance: { clearance: 4000 } });
  });

  test.each<[string, Plain, Given, Cells, string]>([
    ['does not stand in for a bad reading', 0.05, { bore: { 'A 0': 'x' } }, {}, 'bad reading'],
    ['does not settle an unclear fit', 0.05, {}, { Bore: 'R9' }, 'unclear'],
    ['blank is none', undefined, { bore: unmeasured }, {}, 'not measured'],
    ['that is bad costs the fit that needs it', 'x', { bore: unmeasured }, {}, 'bad reading'],
    ['below zero is bad', -0.01, { bore: unmeasured }, {}, 'bad reading'],
  ])('%s', (_words, reading, given, cells, status) => {
    expect(strip(reading, given, cells)).toMatchObject({ status, isStrip: false, clearance: undefined });
  });

  test('that is bad costs nothing where the fit is computed, and is named', () => {
    const fit = strip('x');
    expect(fit.status).toBe('in range');
    expect(whyOf(fit)).toContain('(Strip reading): found the text "x"');
  });
});

describe('a fit that is not measured says what is missing', () => {
  test.each<[string, Given, string]>([
    ['parts', { bore: { Position: 2 }, lower: { Position: 2 } }, 'no bore, no lower shell at this place'],
    ['readings', { journal: { 'A 0': undefined }, upper: { 'Wall 1': ' ' } }, 'not measured: J1, U'],
  ])('%s', (_words, given, why) => {
    const fit = fitOf(0.04, given);
    expect(fit.status).toBe('not measured');
    expect(whyOf(fit)).toContain(why);
  });
});

describe('the engine type of a fit', () => {
  const limits = table(LIMITS, { ...LIMITS, 'Engine type': 'Y', 'Clearance min': 0.05 });
  const typed = (journal: Plain, bore: Plain) =>
    fitOf(0.04, {
      journal: { 'Engine type': journal },
      bore: { 'Engine type': bore },
      sheets: { Limits: limits },
    });

  test.each<[string, Plain, Plain, string]>([
    ["is its journal's", 'X', 'Y', 'in range'],
    ["is its journal's, not its bore's", 'Y', 'X', 'tight'],
    ['is asked for where the journal has none', undefined, 'X', 'no limits'],
  ])('%s', (_words, journal, bore, status) => {
    expect(typed(journal, bore).status).toBe(status);
  });

  test("is its bore's where there is no journal", () => {
    const { fits } = assess({
      Limits: limits,
      Rods: table({ Part: 'R1', 'Engine type': 'y', ...AT_1, 'A 0': 45 }),
      Fits: table({ ...AT_1, Fit: 'big end', 'Strip reading': 0.04 }),
    });
    expect(fits[0]).toMatchObject({ engineType: 'y', status: 'tight' });
  });

  test('Why asks for it', () => {
    expect(whyOf(typed(undefined, undefined))).toContain('name the Engine type');
    expect(whyOf(typed('Z', 'Z'))).toContain('Limits has no row for Z, big end');
    expect(
      whyOf(fitOf(0.04, { sheets: { Limits: [['Engine type', 'Fit', 'Clearance min', 'Clearance max']] } })),
    ).toContain('no sheet Limits');
  });
});
