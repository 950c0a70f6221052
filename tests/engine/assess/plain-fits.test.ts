/** Plain fits: a piston in its cylinder, a shaft in its bore, a guide pressed into its head. */
import { describe, expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { evaluateColumns } from '../../../src/engine/columns/evaluate.js';
import { partColumns } from '../../../src/engine/columns/part-columns.js';
import { PISTONS as PISTONS_SHEET } from '../../../src/engine/input-sheets/pistons.js';
import { assess, bookOf, type Plain, type Sheets, table, um, whyOf } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const at = (n: number): Cells => ({ Engine: 'E', Position: n });
const limits = (fit: string, cells: Cells) => table({ 'Engine type': 'X', Fit: fit, ...cells });
const PISTONS: Sheets = {
  Limits: limits('piston', { 'Clearance min': 0.025, 'Clearance max': 0.045, 'Service limit': 0.08 }),
  Cylinders: table(
    { Part: 'C1', ...at(1), 'A 0': 87.24, 'A 90': 87.242, 'B 0': 87.24 },
    { Part: 'C2', ...at(2), 'A 0': 87.29 },
    { Part: 'C3', ...at(3), 'A 0': 87.24 },
  ),
  Pistons: table(
    { Part: 'P1', ...at(1), Mass: 310, 'A 0': 87.2, 'A 90': 87.15, 'B 0': 87.21 },
    { Part: 'P2', ...at(2), 'A 0': 87.2 },
  ),
};

test('a piston fits its cylinder by place: outer less inner, with the extremes of both', () => {
  const { fits } = assess({
    ...PISTONS,
    Pistons: table(
      { Part: 'P1', ...at(1), 'A 0': 87.205, 'A 90': 87.203 },
      { Part: 'P2', ...at(2), 'A 0': 87.2 },
    ),
  });
  expect(fits.map(({ fit, position, status }) => [fit, position, status])).toEqual([
    ['piston', '1', 'in range'],
    ['piston', '2', 'loose'],
    ['piston', '3', 'not measured'],
  ]);
  // The means 87.240667 and 87.204, the extremes 87.24 − 87.205 and 87.242 − 87.203.
  expect(fits[0]!.clearance).toEqual({ clearance: um(36.667), tightest: um(35), loosest: um(39) });
  expect(fits[2]!.why).toContain('no piston at this place');
});

test('a piston is oval and tapered by design: no form is computed, none is judged', async () => {
  const form = { 'Out-of-round limit': 0.01, 'Taper limit': 0.01, 'Journal min': 87.1, 'Journal max': 87.3 };
  const sheets = {
    ...PISTONS,
    Limits: limits('piston', { 'Clearance min': 0, 'Clearance max': 1, ...form }),
  };
  const assessment = await assessBook(bookOf(sheets), { seconds: 1 });
  const [piston] = assessment.parts.of('Pistons');
  expect(piston).toMatchObject({
    status: 'within limits',
    form: { size: um(87_186.667), largest: um(87_210), smallest: um(87_150), taper: undefined },
  });
  const [cylinder] = assessment.parts.of('Cylinders');
  expect(cylinder!.form).toMatchObject({ taper: 0, outOfRound: um(2) });
  // Every value is the sheet engine's and the core's alike, or this throws.
  evaluateColumns(assessment);
  const headers = partColumns(PISTONS_SHEET).map(({ header }) => header);
  expect(headers).toEqual(['Size', 'Largest', 'Smallest', 'Class', 'Size U', 'Status', 'Why']);
});

test('a cylinder whose material is not typed is left uncorrected away from 20 °C, and proves nothing', () => {
  const { fits, parts } = assess({
    ...PISTONS,
    Cylinders: table({ Part: 'C1', ...at(1), Temperature: 30, 'A 0': 87.24 }),
  });
  expect(parts.of('Cylinders')[0]!.form!.size).toBe(um(87_240));
  expect(fits[0]!.status).toBe('undecided');
  expect(whyOf(fits[0]!)).toContain('type Bore material in Limits');
});

describe('limits of the outer part', () => {
  test.each<[string, Cells, string]>([
    ['a worn bore within its wear limit', { 'Bore max': 87.25, 'Bore wear limit': 87.3 }, 'within limits'],
    ['beyond its wear limit', { 'Bore max': 87.4, 'Bore wear limit': 87.28 }, 'beyond limits'],
    ['without one, Bore max counts', { 'Bore max': 87.25 }, 'beyond limits'],
  ])('%s', (_words, cells, status) => {
    const wide = { 'Clearance min': 0, 'Clearance max': 1, 'Bore min': 87 };
    const { parts } = assess({ ...PISTONS, Limits: limits('piston', { ...wide, ...cells }) });
    expect(parts.of('Cylinders')[1]!.status).toBe(status);
  });
});

describe('bores and shafts', () => {
  const pressed: Sheets = {
    Limits: limits('guide', { 'Clearance min': -0.045, 'Clearance max': -0.015 }),
    Bores: table(
      { Part: 'H1', ...at(1), Fit: 'guide', 'A 0': 12 },
      { Part: 'Spare', Fit: 'guide', 'A 0': 12 },
    ),
    Shafts: table({ Part: 'G1', ...at(1), Fit: 'guide', 'A 0': 12.03 }),
  };

  test('a guide pressed into its head: a negative clearance within negative limits', () => {
    const { fits } = assess(pressed);
    // A bore without a place makes no fit.
    expect(fits.map(({ position, status, clearance }) => [position, status, clearance!.clearance])).toEqual([
      ['1', 'in range', um(-30)],
    ]);
  });

  test('without a shaft, the sentence names it', () => {
    const { fits } = assess({ ...pressed, Shafts: table({ Part: 'G9', Fit: 'guide', 'A 0': 12 }) });
    expect(fits[0]!.why).toContain('no shaft at this place');
  });

  test('a word that Shells name too is unclear, and both sheets are named', () => {
    const { fits } = assess({
      ...pressed,
      Shells: table({ Part: 'U', ...at(1), Fit: 'guide', Half: 'upper', 'Wall 1': 1.5 }),
    });
    expect(fits[0]).toMatchObject({ status: 'unclear' });
    expect(fits[0]!.why[0]).toMatch(/Fit guide is claimed by .*Shells.* and by .*Bores, Shafts/);
  });
});

describe('Classes', () => {
  test.each([
    ['piston', 'Pistons'],
    ['journal', 'Pistons'],
    ['cylinder', 'Cylinders'],
    ['bore', 'Cylinders'],
  ])('Of %s are classes of %s', (of, sheet) => {
    const size = sheet === 'Pistons' ? 87.2 : 87.29;
    const { parts } = assess({
      ...PISTONS,
      Classes: table({
        'Engine type': 'X',
        Fit: 'piston',
        Of: of,
        Mark: 'B',
        From: size - 0.01,
        To: size + 0.01,
      }),
    });
    expect(parts.of(sheet)[1]!.classification!.text).toBe('B');
  });
});

// TM 55-1905-219-14-4: skirt 4.2428 to 4.2450 in, liner 4.2495 to 4.2511 in, clearance .0045 to .0083 in: it closes
// exactly. TM 10-3930-653-14&P: piston 87.165 to 87.215, bore 87.20 to 87.25, clearance 0.025 to 0.045 mm: parts alone
// give −0.015 to +0.085, so that pistons are to be chosen. Digits as the project's references quote them.
describe('the worst case of printed tables', () => {
  const findings = (cells: Cells, more: Sheets = {}) =>
    assess({ ...PISTONS, ...more, Limits: limits('piston', cells) }).tables.Limits.flatMap(({ why }) => why);

  test('sizes that close are consistent', () => {
    const inches = {
      ...{ 'Journal min (in)': 4.2428, 'Journal max (in)': 4.245 },
      ...{ 'Bore min (in)': 4.2495, 'Bore max (in)': 4.2511 },
      ...{ 'Clearance min (in)': 0.0045, 'Clearance max (in)': 0.0083 },
    };
    expect(findings(inches)).toEqual([]);
  });

  const chosen = {
    ...{ 'Journal min': 87.165, 'Journal max': 87.215, 'Bore min': 87.2, 'Bore max': 87.25 },
    ...{ 'Clearance min': 0.025, 'Clearance max': 0.045 },
  };
  test('sizes of which pistons must be chosen are named', () => {
    expect(findings(chosen)).toEqual([
      'worst case -0.015 mm to 0.085 mm leaves the clearance range 0.025 mm to 0.045 mm',
    ]);
  });

  test('with classes of them, the sizes alone do not tell', () => {
    const Classes = table({
      ...{ 'Engine type': 'X', Fit: 'piston', Of: 'piston', Mark: 'A', From: 87.165, To: 87.215 },
    });
    expect(findings(chosen, { Classes })).toEqual([]);
  });
});
