/** Gaps and run-outs: what is measured of the assembly as a whole, judged as a fit each. */
import { describe, expect, test } from 'vitest';
import { bookJson } from '../../../src/commands/book-json.js';
import { bookSummary } from '../../../src/commands/book-summary.js';
import { assessBook, isAllGood } from '../../../src/engine/assess/assess.js';
import { evaluateColumns } from '../../../src/engine/columns/evaluate.js';
import { writtenWorkbook } from '../../../src/engine/sheets/written-workbook.js';
import { reportPage } from '../../../src/io/report/report-page.js';
import { assess, bookOf, type Plain, type Sheets, table, um, whyOf } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const LIMITS = table({ 'Engine type': 'X', Fit: 'end float', 'Clearance min': 0.1, 'Clearance max': 0.2 });
const at = { Engine: 'E1', Fit: 'end float', Position: 1 };
const gaps = (rows: readonly Cells[], limits = LIMITS, more: Sheets = {}): Sheets => ({
  Limits: limits,
  Gaps: table(...rows),
  ...more,
});
const limit = (values: Cells, fit = 'end float') => table({ 'Engine type': 'X', Fit: fit, ...values });
const gauge = (values: Cells = {}) => ({
  Gauges: table({ Gauge: 'D1', 'Max error': 0.003, Resolution: 0.001, Repeatability: 0.002, ...values }),
});
const oneGap = (row: Cells, limits = LIMITS, more: Sheets = {}) =>
  assess(gaps([{ ...at, ...row }], limits, more)).fits[0]!;

describe('readings of a gap', () => {
  test('give mean, smallest and largest', () => {
    const fit = oneGap({ 'Gap 1': 0.12, 'Gap 2': 0.15, 'Gap 3': 0.12 });
    expect(fit.clearance).toEqual({ clearance: um(130), tightest: um(120), loosest: um(150) });
    expect(fit.status).toBe('in range');
    expect(fit.chance).toBe(1);
    expect(whyOf(fit)).toBe('uncertainty not given: no gauge');
  });

  test('are signed, and zero is one', () => {
    const fit = oneGap({ 'Gap 1': -0.02, 'Gap 2': 0 }, limit({ 'Clearance max': 0.05 }));
    expect(fit.clearance).toEqual({ clearance: um(-10), tightest: um(-20), loosest: 0 });
    expect(fit.status).toBe('in range');
  });

  test.each<[Cells, Plain, string]>([
    [{ 'Clearance min': 0.1 }, 0.9, 'in range'],
    [{ 'Clearance min': 0.1 }, 0.05, 'tight'],
    [{ 'Clearance max': 0.2 }, 0, 'in range'],
    [{ 'Clearance max': 0.2 }, 0.25, 'loose'],
    [{ 'Clearance max': 0.2, 'Service limit': 0.3 }, 0.25, 'within service limit'],
    [{ 'Clearance max': 0.2, 'Service limit': 0.3 }, 0.35, 'loose'],
    [{ 'Clearance min': undefined }, 0.15, 'no limits'],
    [{ 'Clearance min': 'none', 'Clearance max': 0.2 }, 0.15, 'no limits'],
  ])('with %j %s mm is %s', (limits, gap, status) => {
    expect(oneGap({ 'Gap 1': gap }, limit(limits)).status).toBe(status);
  });

  test('have no term of temperature; the guards count readings', () => {
    // u_i² = 1²/12 + 2² µm², E²/3 = 3 µm²: u_c² = 7.0833 µm², U = 2·2.6615; z = 1.6449.
    const fit = oneGap({ 'Gap 1': 0.12, 'Gap 2': 0.15, Gauge: 'D1' }, LIMITS, gauge());
    expect(fit.clearanceU).toBe(5323);
    expect(fit.guards.inside).toBe(4378);
    // z·√(3 + 0.8256²·4.0833) + 0.5642·√4.0833 µm.
    expect(fit.guards.outside).toBe(
      Math.round(1e3 * (1.644854 * Math.sqrt(3 + 0.8256 ** 2 * (49 / 12)) + 0.5642 * Math.sqrt(49 / 12))),
    );
  });

  test('a row without readings is not measured; two rows of one place are unclear', () => {
    expect(oneGap({ 'Gap 1': undefined }).status).toBe('not measured');
    const { fits } = assess(
      gaps([
        { ...at, 'Gap 1': 0.15 },
        { ...at, 'Gap 1': 0.14 },
      ]),
    );
    expect(fits.map(({ status }) => status)).toEqual(['unclear', 'unclear']);
    expect(whyOf(fits[0]!)).toBe('rows 2 and 3 of Gaps are for one place: give each a Position of its own');
  });
});

describe('feelers', () => {
  test('leave the gap between them, in the middle', () => {
    const fit = oneGap({ Goes: 0.12, Stops: 0.15 });
    expect(fit.clearance).toEqual({ clearance: um(135), tightest: um(120), loosest: um(150) });
    expect(fit.status).toBe('in range');
  });

  test.each<[Cells, string, string]>([
    [{ Goes: 0.05, Stops: 0.09 }, 'tight', 'Stops is 0.01 mm under Clearance min 0.1 mm'],
    [
      { Goes: 0.08, Stops: 0.12 },
      'undecided',
      'Clearance min 0.1 mm lies between Goes 0.08 mm and Stops 0.12 mm',
    ],
    [{ Goes: 0.22, Stops: 0.25 }, 'loose', 'Goes is 0.02 mm over Clearance max 0.2 mm'],
    [{ Goes: 0.18, Stops: 0.22 }, 'undecided', 'Clearance max 0.2 mm lies between'],
    [{ Goes: 0.22 }, 'loose', 'Goes is 0.02 mm over Clearance max 0.2 mm'],
    [{ Goes: 0.15 }, 'undecided', 'Goes 0.15 mm alone does not decide it: try the other blade (Stops)'],
    [{ Stops: 0.05 }, 'tight', 'Stops is 0.05 mm under Clearance min 0.1 mm'],
    [{ Goes: 0.15, Stops: 0.12 }, 'bad reading', 'Gaps!'],
    [{ Goes: 0.02, Stops: 0.05, 'Gap 1': 0.15 }, 'in range', 'readings and feelers: the readings count'],
  ])('%j: %s', (cells, status, why) => {
    const fit = oneGap(cells);
    expect(fit.status).toBe(status);
    expect(whyOf(fit)).toContain(why);
  });

  test('with one blade the gap is blank', () => {
    const fit = oneGap({ Goes: 0.22 });
    expect(fit.clearance).toBeUndefined();
    expect(fit.feelers).toEqual({ goes: um(220), stops: undefined });
  });

  test('worn: beyond max and within the service limit', () => {
    const limits = limit({ 'Clearance min': 0.1, 'Clearance max': 0.2, 'Service limit': 0.3 });
    expect(oneGap({ Goes: 0.22, Stops: 0.28 }, limits).status).toBe('within service limit');
    expect(oneGap({ Goes: 0.22, Stops: 0.32 }, limits)).toMatchObject({
      status: 'undecided',
      why: expect.arrayContaining(['looser than new parts may be (proved); the service limit is not proved']),
    });
  });
});

describe('run-outs', () => {
  const turned = { Engine: 'E1', Fit: 'crank run-out', Position: 3 };
  const limits = limit({ 'Clearance max': 0.05 }, 'crank run-out');
  const one = (cells: Cells, more: Sheets = {}) =>
    assess({ Limits: limits, 'Run-outs': table({ ...turned, ...cells }), ...more }).fits[0]!;

  // TM 10-3930-664-24, p. 3-41: 0, +.003, −.002 and +.003 in are .005 in, limit .008 in.
  test('the worked example of a manual', () => {
    const { fits } = assess({
      Setup: table({ Item: 'Length unit', Value: 'in' }),
      Limits: limit({ 'Clearance max': 0.008 }, 'crank run-out'),
      'Run-outs': table({ ...turned, 'A 0': 0, 'A 90': 0.003, 'A 180': -0.002, 'A 270': 0.003 }),
    });
    expect(fits[0]).toMatchObject({ status: 'in range', clearance: { clearance: 5 * 25_400 } });
  });

  test('the greatest station counts; stations read once do not', () => {
    expect(one({ 'A 0': 0, 'A 90': 0.01, 'B 0': -0.02, 'B 90': 0.01, 'C 0': 1 }).clearance!.clearance).toBe(
      um(30),
    );
    const alone = one({ 'A 0': 0, 'B 0': 0.2 });
    expect([alone.status, whyOf(alone)]).toEqual([
      'not measured',
      'no station was read at two angles: a run-out is a difference',
    ]);
  });

  test('a Total stands in for readings, and gives way to them', () => {
    expect(one({ Total: 0.04 })).toMatchObject({ status: 'in range', clearance: { clearance: um(40) } });
    const both = one({ 'A 0': 0, 'A 90': 0.01, Total: 0.09 });
    expect(both.clearance!.clearance).toBe(um(10));
    expect(whyOf(both)).toContain('readings and Total: the readings count');
  });

  test('over the roof by more than the guard it is beyond limits', () => {
    const fit = one({ Total: 0.07 });
    expect([fit.status, fit.why[0]]).toEqual([
      'beyond limits',
      'run-out is 0.02 mm over Clearance max 0.05 mm',
    ]);
  });

  test('U and guards are of a difference: the error of the dial cancels', () => {
    const u = Math.sqrt(49 / 12);
    const fit = one({ 'A 0': 0, 'A 90': 0.01, 'B 0': 0, 'B 90': 0.02, Gauge: 'D1' }, gauge());
    expect(fit.clearanceU).toBe(Math.round(1e3 * 2 * Math.SQRT2 * u));
    expect(fit.guards.inside).toBe(Math.round(1e3 * 1.6448536 * Math.SQRT2 * u));
    // Of two stations: √2·Φ⁻¹(√0.95)·u_i.
    expect(fit.guards.outside).toBe(Math.round(1e3 * Math.SQRT2 * 1.954508 * u));
  });

  test('neighbours are rows of one engine and fit', async () => {
    const limits = limit({ 'Clearance max': 0.05, 'Neighbour spread': 0.015 }, 'crank run-out');
    const rows = [0.01, 0.02, 0.04].map((total, row) => ({ ...turned, Position: row + 1, Total: total }));
    const { spreads } = await assessBook(bookOf({ Limits: limits, 'Run-outs': table(...rows) }), {
      seconds: 1,
    });
    expect(spreads[0]).toMatchObject({ spread: um(20), spreadStatus: 'above its limit' });
  });
});

test('a word that two sheets claim is unclear, and Why names both', () => {
  const row = { ...at, 'Gap 1': 0.15 };
  const { fits } = assess({ Limits: LIMITS, Gaps: table(row), 'Run-outs': table({ ...at, Total: 0.01 }) });
  expect(fits.map(({ status }) => status)).toEqual(['unclear', 'unclear']);
  expect(whyOf(fits[0]!)).toContain('gap (Gaps) and by run-out (Run-outs)');
});

const WHOLE: Sheets = {
  Limits: table(
    {
      'Engine type': 'X',
      Fit: 'end float',
      'Clearance min': 0.1,
      'Clearance max': 0.2,
      'Service limit': 0.3,
    },
    { 'Engine type': 'X', Fit: 'ring gap top', 'Clearance min': 0.25 },
    { 'Engine type': 'X', Fit: 'crank run-out', 'Clearance max': 0.05 },
  ),
  ...gauge(),
  Gaps: table(
    { ...at, 'Gap 1': 0.12, 'Gap 2': 0.15, Gauge: 'D1' },
    { ...at, Fit: 'ring gap top', Position: 1, Goes: 0.3, Stops: 0.35 },
    { ...at, Fit: 'ring gap top', Position: 2, Goes: 0.2, Stops: 0.3 },
    { ...at, Fit: 'ring gap top', Position: 3, Stops: 0.2 },
    { ...at, Fit: 'ring gap top', Position: 4 },
    { ...at, Fit: 'ring gap top', Position: 5, Goes: 0.3 },
    { ...at, Fit: 'unknown', Position: 1, 'Gap 1': -0.01 },
    { ...at, Position: 2, 'Gap 1': 0.1, Gauge: 'D1' },
  ),
  'Run-outs': table(
    { ...at, Fit: 'crank run-out', 'A 0': 0, 'A 90': 0.01, 'A 180': -0.02, 'B 0': 0.01, Gauge: 'D1' },
    { ...at, Fit: 'crank run-out', Position: 2, Total: 0.08 },
  ),
};

describe('a book of gaps and run-outs alone', () => {
  const whole = () => assessBook(bookOf(WHOLE), { seconds: 1 });

  test('is written: values of the sheet engine are held against the core', async () => {
    const assessment = await whole();
    const { edits, sheets } = writtenWorkbook(assessment, { valuesOnly: false });
    expect(sheets.map(({ name }) => name)).not.toContain('Fits');
    expect(edits.map(({ sheet }) => sheet)).toEqual(expect.arrayContaining(['Gaps', 'Run-outs']));
    const { cells } = evaluateColumns(assessment);
    expect([...cells.get('Gaps')!.ofRow(0)].map(({ cell }) => cell.value)).toEqual([
      0.135,
      0.12,
      0.15,
      0.005323,
      expect.closeTo(1, 12),
      'in range',
    ]);
    const status = (sheet: string, row: number) =>
      cells
        .get(sheet)!
        .ofRow(row)
        .find(({ cell }) => /^[a-z ]+$/.test(String(cell.value)))!.cell;
    expect([0, 1, 2, 3, 4, 5, 6, 7].map((row) => status('Gaps', row).value)).toEqual([
      'in range',
      'in range',
      'undecided',
      'tight',
      'not measured',
      'in range',
      'no limits',
      'undecided',
    ]);
    for (const row of [0, 1, 2, 3, 4, 5, 6, 7]) expect(status('Gaps', row).formula).toMatch(/^IF\(/);
    expect([0, 1].map((row) => status('Run-outs', row).value)).toEqual(['in range', 'beyond limits']);
    expect(status('Run-outs', 0).formula).toMatch(/^IF\(/);
  });

  test('has its rows in Summary, the terminal, the JSON and the page', async () => {
    const assessment = await whole();
    const counted = assessment.spreads.map(({ fit, fits, counts, waiting }) => [
      fit,
      fits.length,
      counts['in range'],
      counts.loose,
      waiting,
    ]);
    expect(counted).toEqual([
      ['end float', 2, 1, 0, 0],
      ['ring gap top', 5, 2, 0, 1],
      ['unknown', 1, 0, 0, 1],
      ['crank run-out', 2, 1, 1, 0],
    ]);
    expect(isAllGood(assessment)).toBe(false);
    const summary = bookSummary(assessment, 'x.xlsx', 100);
    expect(summary).toContain(
      'engine E1, ring gap top: 5 gaps: 2 in range, 1 tight, 1 undecided, 1 without enough data',
    );
    expect(summary).toContain('from 0.25');
    const json = bookJson(assessment, undefined);
    expect(json.fits).toEqual([]);
    expect(json.parts).toEqual([]);
    expect(json.gaps[0]).toMatchObject({
      row: 2,
      fit: 'end float',
      gap: 0.135,
      tightest: 0.12,
      gapU: 0.005323,
    });
    expect(json.runOuts[1]).toMatchObject({ position: '2', runOut: 0.08, status: 'beyond limits' });
    const page = reportPage(assessment, { program: 'oilgap 0', files: [] });
    for (const words of [
      'Gaps, ring gap top, as they run',
      'gap, mm',
      'Run-outs, crank run-out',
      'run-out, mm',
    ])
      expect(page).toContain(words);
    expect(page).not.toContain('What is fitted, ring gap top');
  });

  test('says what to measure again', async () => {
    const { remeasure } = await whole();
    const named = remeasure.map(({ sheet, parts, spot }) => `${sheet} ${parts.join()}: ${spot}`);
    expect(named).toEqual(
      expect.arrayContaining([
        'Gaps E1 ring gap top 4: all',
        'Gaps E1 ring gap top 2: Goes, Stops',
        'Gaps E1 end float 2: Gap 1',
      ]),
    );
  });

  test('all good is all good', async () => {
    const book = { Limits: LIMITS, Gaps: table({ ...at, 'Gap 1': 0.15 }) };
    expect(isAllGood(await assessBook(bookOf(book), { seconds: 1 }))).toBe(true);
  });
});

test('stand beside bearings; Fits names none of them', async () => {
  const journal = { Engine: 'E1', 'Engine type': 'X', Fit: 'big end', Position: 1, Part: 'J1', 'A 0': 42 };
  const assessment = await assessBook(bookOf({ ...WHOLE, Journals: table(journal) }), { seconds: 1 });
  const fits = evaluateColumns(assessment).cells.get('Fits')!;
  expect(fits.rowCount).toBe(1);
  const typed = { Engine: 'E1', Fit: 'end float', Position: 1 };
  const { fits: own } = assess({ ...WHOLE, Fits: table(typed) });
  expect(own[0]).toMatchObject({ status: 'unclear', fit: 'end float' });
});
