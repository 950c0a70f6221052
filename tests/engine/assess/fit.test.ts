/** Fits: clearance, verdict without uncertainty, strip readings, engine type. */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, table, um, whyOf } from '../book-of.js';
import { AT_1, type Cells, fitOf, type Given, LIMITS } from './one-fit.js';

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
    ['a grain under', 0.019999, {}, 'tight', 'tightest is 0.000001 mm under Clearance min 0.02 mm'],
    ['on Clearance max', 0.06, {}, 'in range', ''],
    ['a grain over', 0.060001, {}, 'loose', 'loosest is 0.000001 mm over Clearance max 0.06 mm'],
    [
      'between max and Service limit',
      0.07,
      { 'Service limit': 0.09 },
      'within service limit',
      'loosest is 0.01 mm over Clearance max 0.06 mm, under Service limit 0.09 mm',
    ],
    ['on the Service limit', 0.09, { 'Service limit': 0.09 }, 'within service limit', ''],
    ['over the Service limit', 0.090001, { 'Service limit': 0.09 }, 'loose', 'over Service limit 0.09 mm'],
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
    expect(fit).toMatchObject({ clearanceU: undefined, guards: { inside: 0, outside: 0 } });
    expect(fit.chance).toBe(status === 'no limits' ? undefined : status === 'in range' ? 1 : 0);
    expect(whyOf(fit)).toContain('uncertainty not given: no part has a gauge');
  });

  test('tight comes before loose', () => {
    const fit = fitOf(0.04, { journal: { 'A 0': 41.9, 'B 0': 42.1 } });
    expect(fit.status).toBe('tight');
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

  // u = 25 000/√12 = 7216.9 grains; U = 14 433.8, the guard 1.644854 · u = 11 870.7.
  test.each<[string, Plain, Given, string]>([
    ['stands in for a part not measured', 0.04, { bore: unmeasured }, 'in range'],
    ['stands in for a part that is missing', 0.04, { upper: { Position: 2 } }, 'in range'],
    [
      'stands in for all three, without their gauges',
      0.04,
      { bore: unmeasured, journal: { Gauge: 'MIC', Temperature: 30 }, sheets: { Gauges } },
      'in range',
    ],
    ['inside max by the guard', 0.048129, { bore: unmeasured }, 'in range'],
    ['inside max by a grain less', 0.04813, { bore: unmeasured }, 'undecided'],
    ['on the limit', '0,060 mm', { bore: unmeasured }, 'undecided'],
    ['over max by the guard', 0.071871, { bore: unmeasured }, 'undecided'],
    ['over max by a grain more', 0.071872, { bore: unmeasured }, 'loose'],
    ['under min by the guard', 0.008129, { bore: unmeasured }, 'undecided'],
    ['under min by a grain more', 0.008128, { bore: unmeasured }, 'tight'],
    ['of zero', 0, { bore: unmeasured }, 'tight'],
    ['without limits', 0.05, { bore: unmeasured, limits: { 'Clearance max': undefined } }, 'no limits'],
  ])('%s', (_words, reading, given, status) => {
    const fit = strip(reading, given);
    const grains = typeof reading === 'number' ? Math.round(reading * 1e6) : um(60);
    expect(fit).toMatchObject({ status, isStrip: true, clearanceU: 14_434 });
    expect(fit.variance).toBeCloseTo(um(25) ** 2 / 12, 6);
    expect(fit.guards).toEqual({ inside: 11_871, outside: 11_871 });
    expect(fit.clearance).toEqual({ clearance: grains, tightest: grains, loosest: grains });
    expect(fit.why).toContain('by the strip reading');
  });

  test('has a chance, and says how near it is', () => {
    const fit = strip(0.055, { bore: unmeasured });
    // Φ(5/7.2169) = Φ(0.6928) = 0.7558 by printed tables; the other limit is nearly 5 u away.
    expect(fit.chance).toBeCloseTo(0.7558, 4);
    expect(fit.why.slice(0, 2)).toEqual([
      'probably in range: 76 %',
      'loosest 0.055 mm is 0.005 mm from Clearance max 0.06 mm, nearer than we can measure (±0.011871 mm)',
    ]);
  });

  test.each<[string, string, Plain, number]>([
    ['a finer strip', 'Strip step', 0.01, um(10)],
    ['in a unit of its own', 'Strip step (µm)', 50, um(50)],
    ['in its cell', 'Strip step', '0.001 in', um(25.4)],
    ['that was refused', 'Strip step', 0, um(25)],
    ['left blank', 'Strip step', undefined, um(25)],
  ])('by the Strip step of Setup: %s', (_words, Item, Value, step) => {
    const fit = strip(0.04, { bore: unmeasured, sheets: { Setup: table({ Item, Value }) } });
    expect(fit.variance).toBeCloseTo(step ** 2 / 12, 6);
    expect(fit.clearanceU).toBe(Math.round((2 * step) / Math.sqrt(12)));
  });

  test('leaves the computed verdict where both exist', () => {
    const fit = strip(0.5);
    expect(fit).toMatchObject({ status: 'in range', isStrip: false, clearance: { clearance: um(40) } });
    expect(fit).toMatchObject({ variance: 0, clearanceU: undefined });
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
      // Under 50 µm by more than the guard of a strip, 11.9 µm.
      Fits: table({ ...AT_1, Fit: 'big end', 'Strip reading': 0.035 }),
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
