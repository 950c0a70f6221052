/** A result on which the assessment and the sheet engine disagree is refused by name, and nothing is written. */
import { describe, expect, test } from 'vitest';
import { type Assessment, assessBook } from '../../../src/engine/assess/assess.js';
import type { FitResult } from '../../../src/engine/assess/fit.js';
import type { PartResult } from '../../../src/engine/assess/part-result.js';
import { DisagreementError } from '../../../src/engine/columns/agreement.js';
import { evaluateColumns } from '../../../src/engine/columns/evaluate.js';
import { bookOf, table } from '../book-of.js';

const AT = { Engine: 'E', 'Engine type': 'X', Position: 1 };
const TYPE = { 'Engine type': 'X', Fit: 'big end' };
const BOOK = {
  Limits: table({
    ...TYPE,
    'Clearance min': 0.02,
    'Clearance max': 0.06,
    'Journal min': 41.99,
    'Journal max': 42.01,
    'Out-of-round limit': 0.02,
  }),
  Classes: table({ ...TYPE, Of: 'journal', Mark: 'A', From: 41.99, To: 42.02 }),
  Selection: table({ ...TYPE, 'Journal mark': 'A', 'Bore mark': 'B', 'Shell mark': 'S' }),
  'New shells': table({ ...TYPE, Half: 'either', Mark: 'S', 'Wall from': 1.48, 'Wall to': 1.49 }),
  Gauges: table({ Gauge: 'M1', 'Max error': 0.002 }),
  Journals: table({
    ...AT,
    Part: 'J1',
    Fit: 'big end',
    Gauge: 'M1',
    'A 0': 42.0015,
    'A 90': 42.002,
    'B 0': 42,
  }),
  Rods: table({ ...AT, Part: 'R1', Mark: 'B', Gauge: 'M1', 'A 0': 45.0125 }),
  Shells: table(
    { ...AT, Part: 'U', Half: 'upper', Gauge: 'M1', 'Wall 1': 1.4875 },
    { ...AT, Part: 'L', Half: 'lower', Gauge: 'M1', 'Wall 1': 1.4885 },
  ),
};

const assessed = () => assessBook(bookOf(BOOK), { seconds: 10 });

function evaluateAll(assessment: Assessment): void {
  for (const cells of evaluateColumns(assessment).cells.values()) Array.from(cells);
}

test('where both agree nothing is said', async () => {
  const assessment = await assessed();
  expect(assessment.fits[0]).toMatchObject({ status: 'in range', shellByMarks: 'S', shellBySize: 'S' });
  expect(() => evaluateAll(assessment)).not.toThrow();
});

/** One grain more, or another word. */
const off = (value: unknown) => (typeof value === 'number' ? value + 1 : 'X');

/** A result with one of its values changed, everything else as it was. */
function changed<Result extends object>(
  result: Result,
  changes: Partial<Record<keyof Result, unknown>>,
): Result {
  return new Proxy(result, {
    get: (target, key) => (key in changes ? changes[key as keyof Result] : target[key as keyof Result]),
  });
}

describe('one grain, or another word, in the assessment is named by sheet, row, column and both values:', () => {
  test.each<[string, (part: PartResult) => Partial<Record<keyof PartResult, unknown>>]>([
    ['Size', ({ form }) => ({ form: { ...form, size: off(form?.size) } })],
    ['Largest', ({ form }) => ({ form: { ...form, largest: off(form?.largest) } })],
    ['Smallest', ({ form }) => ({ form: { ...form, smallest: off(form?.smallest) } })],
    ['Taper', ({ form }) => ({ form: { ...form, taper: off(form?.taper) } })],
    ['Out of round', ({ form }) => ({ form: { ...form, outOfRound: off(form?.outOfRound) } })],
    ['Class', () => ({ classification: { marks: ['X'], text: 'X' } })],
    ['Size U', ({ sizeU }) => ({ sizeU: off(sizeU) })],
    ['Status', () => ({ status: 'beyond limits' })],
  ])('%s of a journal', async (header, change) => {
    const assessment = await assessed();
    const parts = assessment.parts.map((rows, sheet) =>
      sheet === 'Journals' ? rows.map((part) => changed(part, change(part))) : rows,
    );
    const run = () => evaluateAll({ ...assessment, parts, fits: [] });
    expect(run).toThrow(DisagreementError);
    expect(run).toThrow(
      new RegExp(`^engine.xlsx: sheet Journals, row 2, ${header}: found .+ by the sheet engine and .+`),
    );
  });

  test.each<[string, (fit: FitResult) => Partial<Record<keyof FitResult, unknown>>]>([
    ['Clearance', ({ clearance }) => ({ clearance: { ...clearance, clearance: off(clearance?.clearance) } })],
    ['Tightest', ({ clearance }) => ({ clearance: { ...clearance, tightest: off(clearance?.tightest) } })],
    ['Loosest', ({ clearance }) => ({ clearance: { ...clearance, loosest: off(clearance?.loosest) } })],
    ['Clearance U', ({ clearanceU }) => ({ clearanceU: off(clearanceU) })],
    ['Chance in range', ({ chance }) => ({ chance: chance! - 1e-6 })],
    ['Shell by marks', () => ({ shellByMarks: 'X' })],
    ['Shell by size', () => ({ shellBySize: 'X' })],
    ['Status', () => ({ status: 'loose' })],
  ])('%s of a fit', async (header, change) => {
    const assessment = await assessed();
    const fits = assessment.fits.map((fit) => ({ ...fit, ...change(fit) }) as FitResult);
    const run = () => evaluateAll({ ...assessment, fits });
    expect(run).toThrow(DisagreementError);
    expect(run).toThrow(
      new RegExp(`^engine.xlsx: sheet Fits, row 2, ${header}: found .+ by the sheet engine and .+`),
    );
  });
});
