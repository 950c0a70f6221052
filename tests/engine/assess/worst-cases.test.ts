/**
 * Sizes, shells and clearances that a maker prints without a selection, held against each other by the arithmetic of
 * worst cases (ASME Y14.5); and lengths printed in two units (1 in = 25.4 mm exactly, ISO 31-1).
 */
import { describe, expect, test } from 'vitest';
import { assess, type Plain, type Sheets, table } from '../book-of.js';

function findings(Limits: Readonly<Record<string, Plain>>, sheets: Sheets = {}): string[] {
  const { tables } = assess({ Limits: table({ 'Engine type': 'X', Fit: 'main', ...Limits }), ...sheets });
  return [...tables.Limits[0]!.why];
}

const SIZES = { 'Journal min': 41.98, 'Journal max': 42, 'Bore min': 45.02, 'Bore max': 45.04 };
const shell = (Mark: string, from: number, to: number, more: Readonly<Record<string, Plain>> = {}) => ({
  'Engine type': 'X',
  Fit: 'main',
  Half: '',
  Mark,
  'Wall from': from,
  'Wall to': to,
  ...more,
});

describe('one shell alone', () => {
  // 45.02 − 42 − 2·1.5 = 0.02; 45.04 − 41.98 − 2·1.495 = 0.07.
  const one = { 'New shells': table(shell('S', 1.495, 1.5)) };

  test('on both limits', () => {
    expect(findings({ ...SIZES, 'Clearance min': 0.02, 'Clearance max': 0.07 }, one)).toEqual([]);
  });

  test('beyond either', () => {
    expect(findings({ ...SIZES, 'Clearance min': 0.021, 'Clearance max': 0.07 }, one)).toEqual([
      'worst case of the only shell 0.02 mm to 0.07 mm leaves the clearance range 0.021 mm to 0.07 mm',
    ]);
    expect(findings({ ...SIZES, 'Clearance min': 0.02, 'Clearance max': 0.069 }, one)).toHaveLength(1);
  });

  test('as an upper and a lower half', () => {
    const halves = table(
      shell('S', 1.495, 1.5, { Half: 'upper' }),
      shell('T', 1.495, 1.5, { Half: 'lower' }),
    );
    expect(
      findings({ ...SIZES, 'Clearance min': 0.02, 'Clearance max': 0.07 }, { 'New shells': halves }),
    ).toEqual([]);
  });

  test('shells of a step are for other journals', () => {
    const offered = table(shell('S', 1.495, 1.5, { Step: '' }), shell('U', 1.62, 1.625, { Step: '0.25' }));
    expect(
      findings({ ...SIZES, 'Clearance min': 0.02, 'Clearance max': 0.07 }, { 'New shells': offered }),
    ).toEqual([]);
  });
});

describe('several shells', () => {
  const range = { 'Clearance min': 0.02, 'Clearance max': 0.045 };
  const two = (thin: number, thick: number) => ({
    'New shells': table(shell('A', thin - 0.005, thin), shell('B', thick - 0.005, thick)),
  });

  test('one for the least space, one for the largest', () => {
    expect(findings({ ...SIZES, ...range }, two(1.5, 1.518))).toEqual([]);
  });

  test('none for the largest', () => {
    expect(findings({ ...SIZES, ...range }, two(1.5, 1.503))).toEqual([
      'no shell brings the largest space between bore and journal, 3.06 mm, into the clearance range 0.02 mm to 0.045 mm',
    ]);
  });

  test('none for the least', () => {
    expect(findings({ ...SIZES, ...range }, two(1.515, 1.518))).toEqual([
      'no shell brings the least space between bore and journal, 3.02 mm, into the clearance range 0.02 mm to 0.045 mm',
    ]);
  });

  test('classes of shells go before new shells', () => {
    const of = (Mark: string, From: number, To: number) => ({
      'Engine type': 'X',
      Fit: 'main',
      Of: 'shell',
      Mark,
      From,
      To,
    });
    const Classes = table(of('A', 1.495, 1.5), of('B', 1.513, 1.518));
    expect(findings({ ...SIZES, ...range }, { ...two(1.4, 1.41), Classes })).toEqual([]);
  });
});

test('bores less journals that are the clearances themselves', () => {
  const printed = {
    'Clearance min (in)': 0.00134,
    'Clearance max (in)': 0.00417,
    'Journal min (in)': 1.57221,
    'Journal max (in)': 1.57284,
    'Bore min (in)': 1.57418,
    'Bore max (in)': 1.57638,
  };
  expect(findings(printed)).toEqual(['Bore min and Bore max look like sizes with the shells in']);
});

describe('a limit printed twice', () => {
  const limits = (mm: Plain, inch: Plain) =>
    findings({ 'Clearance min': mm, 'Clearance min (in)': inch, 'Clearance max': 0.09 });

  test.each<[string, Plain, Plain]>([
    // 0.034 mm is 0.001339 in; half a step of the coarser, 0.0001 in, is 0.00127 mm.
    ['rounded', 0.034, 0.0013],
    ['rounded to five decimals', 0.034, 0.00134],
    ['the same', 0.0254, 0.001],
    ['as texts', '0,034', '0.00134 in'],
    ['one blank', '', 0.0013],
    ['the other blank', 0.034, ''],
    // 0.0013 in is 0.03302 mm, 0.00127 mm less: exactly half a step.
    ['half a step apart', 0.03429, 0.0013],
  ])('%s', (_words, mm, inch) => {
    expect(limits(mm, inch)).toEqual([]);
  });

  test('that differs says both', () => {
    expect(limits(0.034, 0.0019)).toEqual([
      'Clearance min is 0.034 mm and 0.0019 in, which differ by more than rounding',
    ]);
  });

  test('counts as first typed', () => {
    const book = (cells: Readonly<Record<string, Plain>>) =>
      assess({ Limits: table({ 'Engine type': 'X', Fit: 'main', ...cells }) }).book.limits[0]!.clearanceMin;
    expect(book({ 'Clearance min (in)': 0.0013, 'Clearance min': 0.034, 'Clearance max': 1 })).toBe(33_020);
    expect(book({ 'Clearance min (in)': '', 'Clearance min': 0.034, 'Clearance max': 1 })).toBe(34_000);
  });
});
