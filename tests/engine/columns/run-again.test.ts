/** Rows that were sorted after a run: a verdict whose row holds another part says so. */
import { describe, expect, test } from 'vitest';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import type { WorkbookModel } from '../../../src/engine/workbook-model.js';
import { bookOf, type Sheets, table } from '../book-of.js';
import { liveValues } from './live-values.js';

const AT = (position: number) => ({ 'Engine type': 'X', Engine: 'E1', Position: position });
const journal = (name: string, position: number, size: number) => ({
  Part: name,
  ...AT(position),
  Fit: 'big end',
  'A 0': size,
});
const SHEETS: Sheets = {
  Limits: table({
    ...{ 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.02, 'Clearance max': 0.06 },
    ...{ 'Journal min': 41.9, 'Journal max': 42.1 },
  }),
  Journals: table(journal('J1', 1, 42), journal('J2', 2, 42.001), journal('J3', 3, 42.002)),
  Rods: table(...[1, 2, 3].map((position) => ({ Part: `R${position}`, ...AT(position), 'A 0': 45.04 }))),
  Shells: table(
    ...[1, 2, 3].flatMap((position) =>
      ['upper', 'lower'].map((half) => ({
        Part: `${half}${position}`,
        ...AT(position),
        Half: half,
        'Wall 1': 1.5,
      })),
    ),
  ),
};

const assessed = (sheets: Sheets = SHEETS) => assessBook(bookOf(sheets), { seconds: 5 });

/** The user's cells of rows 2 and 4 of a sheet change places; results stay where they are. */
function sorted(sheetName: string): (model: WorkbookModel) => WorkbookModel {
  return (model) => ({
    ...model,
    sheets: model.sheets.map((sheet) =>
      sheet.name === sheetName
        ? { ...sheet, rows: sheet.rows.with(1, sheet.rows[3]!).with(3, sheet.rows[1]!) }
        : sheet,
    ),
  });
}

/** The live verdicts of a sheet, row by row. */
function verdicts(assessment: Assessment, sheet: string, change?: (model: WorkbookModel) => WorkbookModel) {
  return liveValues(assessment, change)
    .filter((value) => value.sheet === sheet && /range|limits|measured|undecided/.test(String(value.stored)))
    .map(({ found }) => found);
}

describe('without a sort, every verdict is that of the run', () => {
  test.each([
    ['Journals', 'within limits'],
    ['Fits', 'in range'],
    ['Matched sets', 'in range'],
    ['Rods', 'no limits'],
    ['Shells', 'measured'],
  ])('%s', async (sheet, verdict) => {
    const found = verdicts(await assessed(), sheet);
    expect(found.length).toBeGreaterThanOrEqual(3);
    expect(new Set(found)).toEqual(new Set([verdict]));
  });
});

test.each(['Journals', 'Fits', 'Matched sets'])(
  '%s says run again where journals were sorted',
  async (sheet) => {
    const [first, middle, last] = verdicts(await assessed(), sheet, sorted('Journals'));
    expect([first, last]).toEqual(['run again', 'run again']);
    expect(middle).not.toBe('run again');
  },
);

test.each(['Fits', 'Matched sets'])('%s says run again where rods were sorted', async (sheet) => {
  expect(verdicts(await assessed(), sheet, sorted('Rods'))).toEqual(['run again', 'in range', 'run again']);
});

test('a Fits sheet of the user says so where its own rows were sorted', async () => {
  const Fits = table(...[1, 2, 3].map((Position) => ({ Engine: 'E1', Fit: 'big end', Position })));
  const assessment = await assessed({ ...SHEETS, Fits });
  expect(verdicts(assessment, 'Fits')).toEqual(['in range', 'in range', 'in range']);
  expect(verdicts(assessment, 'Fits', sorted('Fits'))).toEqual(['run again', 'in range', 'run again']);
});

test('names that are numbers are compared as numbers, and quotes are kept', async () => {
  const Journals = table(journal('J"1', 1, 42), { ...journal('', 2, 42), Part: 7 }, journal('J3', 3, 42));
  const assessment = await assessed({ ...SHEETS, Journals });
  // The engine of the test knows no quote within a text.
  expect(verdicts(assessment, 'Journals').slice(1)).toEqual(['within limits', 'within limits']);
  const formulas = liveValues(assessment)
    .filter(({ sheet }) => sheet === 'Journals')
    .map(({ formula }) => formula);
  expect(formulas.some((formula) => formula.startsWith('IF(A2="J""1",'))).toBe(true);
  expect(formulas.some((formula) => formula.startsWith('IF(A3=7,'))).toBe(true);
});

test('formulas name cells of other rows so that a sort of their own rows leaves them alone', async () => {
  const elsewhere = liveValues(await assessed())
    .filter(({ sheet }) => ['Journals', 'Rods', 'Shells', 'Fits', 'Matched sets'].includes(sheet))
    .flatMap(({ formula }) => formula.match(/'[^']+'![$A-Z0-9]+/g) ?? []);
  expect(elsewhere.length).toBeGreaterThan(10);
  expect(elsewhere.filter((cell) => !/!\$[A-Z]+\$\d+$/.test(cell))).toEqual([]);
});
