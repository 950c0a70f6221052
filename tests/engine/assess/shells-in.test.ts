/** Bores that were measured with their shells in: what is held against them, and which shells stay with them. */
import { describe, expect, test } from 'vitest';
import { assessBook, isAllGood } from '../../../src/engine/assess/assess.js';
import { assess, bookOf, type Plain, type Sheets, table, um, whyOf } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const AT_1 = { Engine: 'E1', Position: 1 };
const LIMITS = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 };
const journal = (cells: Cells = {}) => ({ Part: 'J1', ...AT_1, Fit: 'big end', 'A 0': 42, ...cells });
const rod = (cells: Cells = {}) => ({ Part: 'R1', ...AT_1, 'Shells in': 'yes', 'A 0': 42.04, ...cells });
const shell = (Part: string, Half: string, cells: Cells = {}) => ({ Part, ...AT_1, Half, ...cells });

function sheetsOf(rods: readonly Cells[] = [rod()], more: Sheets = {}, limits: Cells = {}): Sheets {
  return {
    Limits: table({ ...LIMITS, ...limits }),
    Journals: table(journal()),
    Rods: table(...rods),
    ...more,
  };
}

describe('the clearance is bore less journal', () => {
  test('without a sheet Shells', () => {
    const [fit] = assess(sheetsOf([rod({ 'A 90': 42.044 })])).fits;
    expect(fit).toMatchObject({
      status: 'in range',
      clearance: { clearance: um(42), tightest: um(40), loosest: um(44) },
    });
    expect(fit!.kind.name).toBe('shell bearing, shells in');
    expect(fit!.why).toContain('R1 was measured with its shells in');
  });

  test.each<[string, Plain, string]>([
    ['no', 'no', 'not measured'],
    ['blank', undefined, 'not measured'],
    ['Yes', 'Yes', 'in range'],
  ])('where Shells in is %s', (_, typed, status) => {
    expect(assess(sheetsOf([rod({ 'Shells in': typed })])).fits[0]!.status).toBe(status);
  });

  test('of a case bore', () => {
    const { fits } = assess({
      Limits: table({ ...LIMITS, Fit: 'main' }),
      Journals: table(journal({ Fit: 'main' })),
      Cases: table(rod({ Part: 'C1' })),
    });
    expect(fits.map(({ status, clearance }) => [status, clearance?.clearance])).toEqual([
      ['in range', um(40)],
    ]);
  });

  test('the uncertainty is of bore and journal alone', () => {
    const Gauges = table({ Gauge: 'G', 'Max error': 0.002, Resolution: 0.001 });
    const gauged = { Gauges, Journals: table(journal({ Gauge: 'G' })) };
    const walls = table(
      shell('U', 'upper', { Gauge: 'G', 'Wall 1': 1.5 }),
      shell('L', 'lower', { Gauge: 'G', 'Wall 1': 1.5 }),
    );
    const alone = assess(sheetsOf([rod({ Gauge: 'G' })], gauged)).fits[0]!;
    const [fit] = assess(sheetsOf([rod({ Gauge: 'G' })], { ...gauged, Shells: walls })).fits;
    // One gauge at one size cancels; two readings of resolution 1 µm and two terms of temperature are left:
    // 2·√(2·(1²/12) + (0.5·11.5e-6·42040)² + (0.5·11.5e-6·42000)²) µm = 1.0654 µm.
    expect(alone.clearanceU).toBe(1065);
    expect(fit!.clearanceU).toBe(1065);
  });

  test('a strip stands in where the bore is not measured', () => {
    const Fits = table({ ...AT_1, Fit: 'big end', 'Strip reading': 0.038 });
    const { fits } = assess(sheetsOf([rod({ 'A 0': undefined })], { Fits }));
    expect(fits[0]).toMatchObject({ isStrip: true, clearance: { clearance: um(38) }, status: 'in range' });
  });
});

describe('its own limits and classes', () => {
  const bare = { 'Bore min': 45, 'Bore max': 45.01 };
  test.each<[string, Cells, string]>([
    ['Bore min and max are not held against it', bare, 'no limits'],
    ['Bearing min and max are', { ...bare, 'Bearing min': 42.04, 'Bearing max': 42.04 }, 'within limits'],
    ['the smallest below Bearing min', { 'Bearing min': 42.041 }, 'beyond limits'],
    ['the largest above Bearing max', { 'Bearing max': 42.039 }, 'beyond limits'],
    ['form is', { 'Out-of-round limit': 0.001 }, 'beyond limits'],
  ])('%s', (_, limits, status) => {
    const { parts } = assess(sheetsOf([rod({ 'A 90': limits['Out-of-round limit'] && 42.044 })], {}, limits));
    expect(parts.of('Rods')[0]!.status).toBe(status);
  });

  test('a bare bore is not held against Bearing min and max', () => {
    const limits = { 'Bearing min': 42.03, 'Bearing max': 42.05 };
    const { parts } = assess(sheetsOf([rod({ 'Shells in': 'no', 'A 0': 45.04 })], {}, limits));
    expect(parts.of('Rods')[0]!.status).toBe('no limits');
  });

  test('no class, no shell by size; a shell by marks as stamped', () => {
    const ofType = { 'Engine type': 'X', Fit: 'big end' };
    const { fits, parts } = assess(
      sheetsOf([rod({ Mark: 'B' })], {
        Journals: table(journal({ Mark: '1' })),
        Classes: table(
          { ...ofType, Of: 'bore', Mark: 'A', From: 42, To: 42.1 },
          { ...ofType, Of: 'shell', Mark: 'red', From: 0.001, To: 0.01 },
        ),
        Selection: table({ ...ofType, 'Journal mark': '1', 'Bore mark': 'B', 'Shell mark': 'red' }),
      }),
    );
    expect(parts.of('Rods')[0]!.classification?.text).toBe('');
    expect(parts.of('Rods')[0]!.why.join()).not.toContain('marked B');
    expect([fits[0]!.shellByMarks, fits[0]!.shellBySize]).toEqual(['red', undefined]);
  });

  test('Bearing min above Bearing max is named', () => {
    const { tables } = assess(sheetsOf([rod()], {}, { 'Bearing min': 42.05, 'Bearing max': 42.04 }));
    expect(tables.Limits[0]).toMatchObject({ status: 'check the source' });
    expect(tables.Limits[0]!.why).toEqual(['Bearing min and max: 42.05 mm is above 42.04 mm']);
  });

  test.each<[string, Plain]>([
    ['maybe', 'maybe'],
    ['a number', 1],
  ])('%s in Shells in is refused in one sentence', (_, typed) => {
    const { parts } = assess(sheetsOf([rod({ 'Shells in': typed })]));
    const [part] = parts.of('Rods');
    expect(part!.status).toBe('bad reading');
    expect(part!.why[0]).toMatch(/^Rods!D2 \(Shells in\): found .*, expected yes or no/);
  });
});

describe('shells that are in it', () => {
  const halves = [shell('U', 'upper'), shell('L', 'lower')];

  test('need no walls, and do not count as missing', async () => {
    const book = bookOf(
      sheetsOf(
        [rod()],
        { Shells: table(...halves.map((row) => ({ ...row, 'Wall 1': undefined }))) },
        { 'Bearing min': 42 },
      ),
    );
    const assessment = await assessBook(book, { seconds: 5 });
    expect(assessment.fits[0]!.status).toBe('in range');
    expect(Object.keys(assessment.fits[0]!.parts).sort()).toEqual(['bore', 'journal', 'lower', 'upper']);
    expect(assessment.remeasure).toEqual([]);
    expect(assessment.parts.of('Shells').map(whyOf)).toEqual(
      Array(2).fill('in R1, which was measured with its shells in: no wall is needed'),
    );
    expect(isAllGood(assessment)).toBe(true);
  });

  test('a bad wall costs its own row alone', () => {
    const Shells = table(shell('U', 'upper', { 'Wall 1': 'x' }));
    const { fits, parts } = assess(sheetsOf([rod()], { Shells }));
    expect(parts.of('Shells')[0]!.status).toBe('bad reading');
    expect(fits[0]!.status).toBe('in range');
  });

  test('go with it to another place, and are not those of that place', () => {
    const at2 = { ...AT_1, Position: 2 };
    const { fits } = assess(
      sheetsOf([rod(), { Part: 'R2', ...at2, 'A 0': 45.04 }], {
        Journals: table(journal(), journal({ Part: 'J2', ...at2 })),
        Shells: table(
          ...halves.map((row) => ({ ...row, 'Wall 1': 1.5 })),
          shell('U2', 'upper', { ...at2, 'Wall 1': 1.5 }),
          shell('L2', 'lower', { ...at2, 'Wall 1': 1.5 }),
        ),
        Fits: table({ ...at2, Fit: 'big end', Bore: 'R1' }, { ...AT_1, Fit: 'big end', Bore: 'R2' }),
      }),
    );
    const names = fits.map(({ parts }) => [parts.upper?.row.name, parts.lower?.row.name]);
    expect(names).toEqual([
      ['U', 'L'],
      [undefined, undefined],
    ]);
    expect(fits.map(({ status }) => status)).toEqual(['in range', 'not measured']);
    expect(fits[1]!.why[0]).toBe('no upper shell, no lower shell at this place');
  });

  test('that a row of Fits names stay with it', () => {
    const Shells = table(shell('S', 'either', { Position: 7, 'Wall 1': undefined }));
    const Fits = table({ ...AT_1, Fit: 'big end', 'Upper shell': 'S' });
    const { fits, parts } = assess(sheetsOf([rod()], { Shells, Fits }));
    expect([fits[0]!.status, fits[0]!.parts.upper?.row.name]).toEqual(['in range', 'S']);
    expect(whyOf(parts.of('Shells')[0]!)).toContain('in R1');
  });

  test('and that another row names leave that fit unclear', () => {
    const at2 = { ...AT_1, Position: 2 };
    const { fits } = assess(
      sheetsOf([rod(), { Part: 'R2', ...at2, 'A 0': 45.04 }], {
        Journals: table(journal({ Part: 'J2', ...at2 })),
        Shells: table(shell('U', 'upper', { 'Wall 1': 1.5 }), shell('L', 'lower', { ...at2, 'Wall 1': 1.5 })),
        Fits: table({ ...at2, Fit: 'big end', 'Upper shell': 'U' }),
      }),
    );
    expect(fits[0]!.status).toBe('unclear');
    expect(fits[0]!.why).toContain('U is in R1, which was measured with its shells in: name another shell');
  });
});
