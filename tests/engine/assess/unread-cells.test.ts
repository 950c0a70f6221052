/** A limit, setting or half that cannot be read is never passed over: it costs what needs it and is named. */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, type Sheets, table, um } from '../book-of.js';

const AT_1 = { Engine: 'E1', Position: 1 };
const RANGE = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 };

function bookWith(limits: Readonly<Record<string, Plain>>, journal: Readonly<Record<string, Plain>>) {
  return assess({
    Limits: table({ ...RANGE, ...limits }),
    Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', ...journal }),
    Rods: table({ Part: 'R1', ...AT_1, 'A 0': 45 }),
    Shells: table(
      { Part: 'U', ...AT_1, Half: 'upper', 'Wall 1': 1.5 },
      { Part: 'L', ...AT_1, Half: 'lower', 'Wall 1': 1.5 },
    ),
  });
}

describe('a part', () => {
  test.each([
    ['Taper limit', { 'Journal max': 43 }, 'undecided'],
    ['Taper limit', {}, 'undecided'],
    ['Wear limit', { 'Journal min': 41 }, 'undecided'],
    ['Wear limit', { 'Journal max': 41.9 }, 'beyond limits'],
    ['Bore max', { 'Journal max': 43 }, 'within limits'],
  ] as const)('whose %s is no number, beside %o, is %s', (header, others, status) => {
    const [journal] = bookWith({ [header]: 'x', ...others }, { 'A 0': 42, 'B 0': 41.96 }).parts.of(
      'Journals',
    );
    expect(journal!.status).toBe(status);
    const isNamed = journal!.why.some((reason) => reason.includes(`(${header}): found the text "x"`));
    expect(isNamed).toBe(header !== 'Bore max');
  });
});

describe('a fit over its clearance range with a Service limit that is no number', () => {
  test('is undecided, and names the cell', () => {
    const [fit] = bookWith({ 'Service limit': 'x' }, { 'A 0': 41.9 }).fits;
    expect(fit!.status).toBe('undecided');
    expect(fit!.why[0]).toContain('(Service limit): found the text "x"');
  });

  test('is tight or in range as it would be', () => {
    expect(bookWith({ 'Service limit': 'x' }, { 'A 0': 42 }).fits[0]!.status).toBe('tight');
    expect(bookWith({ 'Service limit': 'x' }, { 'A 0': 41.96 }).fits[0]!.status).toBe('in range');
  });
});

describe('a unit that a column cannot have', () => {
  test('leaves the column to the user: Mass (kg) is no mass in g', () => {
    const { book } = assess({ Rods: table({ Part: 'R1', 'Mass (kg)': 0.5, 'A 0': 45 }) });
    expect(book.parts.of('Rods')[0]!.mass).toBeUndefined();
  });

  test('is refused by name: Mass (mm)', () => {
    const { book } = assess({ Rods: table({ Part: 'R1', 'Mass (mm)': 500, 'A 0': 45 }) });
    expect(book.bad[0]).toMatchObject({ header: 'Mass', expected: 'a mass in g above 0, not in mm' });
  });
});

describe('steel that Materials overrides with no number', () => {
  const materials = { Materials: table({ Material: 'Steel', Expansion: 'x' }) };
  const gauges = { Gauges: table({ Gauge: 'M1', 'Max error': 0.001 }) };
  const journal = (cells: Readonly<Record<string, Plain>>, more: Sheets = {}) =>
    assess({
      ...materials,
      ...gauges,
      ...more,
      Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': 42, ...cells }),
    }).parts.of('Journals')[0]!;

  test.each<[string, Readonly<Record<string, Plain>>, string]>([
    ['counts at another temperature', { Temperature: 30 }, 'bad reading'],
    ['counts in the temperature term of a gauge', { Gauge: 'M1' }, 'bad reading'],
    ['counts for nothing at 20 °C without a gauge', {}, 'no limits'],
  ])('%s', (_words, cells, status) => {
    const { status: found, why } = journal(cells);
    expect(found).toBe(status);
    expect(why.join().includes('Materials!B2 (Expansion): found the text "x"')).toBe(
      status === 'bad reading',
    );
  });

  test('counts for nothing in a part of another material by a gauge of another', () => {
    const limits = { Limits: table({ ...RANGE, 'Journal material': 'cast iron' }) };
    const gauge = { Gauges: table({ Gauge: 'M1', 'Max error': 0.001, Material: 'cast iron' }) };
    const { status, form } = journal({ Gauge: 'M1', Temperature: 30 }, { ...limits, ...gauge });
    // Part and gauge grow alike: 42 mm stays 42 mm.
    expect([status, form?.size]).toEqual(['no limits', um(42_000)]);
  });
});

describe('an Aim that cannot be read', () => {
  const shells = {
    'New shells': table({
      'Engine type': 'X',
      Fit: 'big end',
      Half: 'either',
      Mark: 'A',
      'Wall from': 1.49,
      'Wall to': 1.5,
    }),
  };
  const fitWith = (limits: Readonly<Record<string, Plain>>, setup: Plain) =>
    assess({
      Setup: [
        ['Item', 'Value'],
        ['Aim', setup],
      ],
      Limits: table({ ...RANGE, ...limits }),
      Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': 42 }),
      Rods: table({ Part: 'R1', ...AT_1, 'A 0': 45 }),
      ...shells,
    }).fits[0]!;

  test('leaves Shell by size blank and is named, in Limits or in Setup', () => {
    expect(fitWith({}, 'middle').shellBySize).toBe('A');
    const ofLimits = fitWith({ Aim: 'x' }, 'middle');
    expect(ofLimits.shellBySize).toBeUndefined();
    expect(ofLimits.why.join()).toContain('no Shell by size: Limits!E2 (Aim): found the text "x"');
    const ofSetup = fitWith({}, 'x');
    expect(ofSetup.shellBySize).toBeUndefined();
    expect(ofSetup.why.join()).toContain('no Shell by size: Setup!B2 (Aim): found the text "x"');
  });

  test('of Setup counts for nothing where Limits gives one', () => {
    expect(fitWith({ Aim: 0.04 }, 'x').shellBySize).toBe('A');
  });
});

describe('a Half that cannot be read', () => {
  const fitWith = (Half: Plain, fits: Sheets = {}) =>
    assess({
      Limits: table(RANGE),
      Journals: table({ Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': 42 }),
      Rods: table({ Part: 'R1', ...AT_1, 'A 0': 45.04 }),
      Shells: table(
        { Part: 'U', ...AT_1, Half: 'upper', 'Wall 1': 1.5 },
        { Part: 'L', ...AT_1, Half, 'Wall 1': 1.5 },
      ),
      ...fits,
    }).fits[0]!;

  test('makes the fit at its place a bad reading that names the cell', () => {
    expect(fitWith('lower').status).toBe('in range');
    const { status, why } = fitWith('top');
    expect(status).toBe('bad reading');
    expect(why).toContain('L: Shells!D3 (Half): found the text "top", expected upper, lower or either');
  });

  test('does so too beside a half that Fits names', () => {
    const fits = { Fits: table({ ...AT_1, Fit: 'big end', 'Upper shell': 'U' }) };
    expect(fitWith('top', fits).status).toBe('bad reading');
    expect(fitWith('', fits).status).toBe('not measured');
  });
});
