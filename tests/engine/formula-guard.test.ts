/** What one formula takes is held within limits, whatever it is; all else of the workbook is computed. */
import { describe, expect, test } from 'vitest';
import { withFormulaValues } from '../../src/engine/formula-values.js';
import { evaluateFormula } from '../../src/engine/functions/one-formula.js';
import type { EngineUnits } from '../../src/engine/spreadsheet.js';
import { cellAt } from '../../src/engine/workbook-model.js';
import { FILE } from './book-of.js';

const UNITS: EngineUnits = { lengthUnit: 'mm', temperatureUnit: 'C' };

/** Each would take gigabytes, minutes, or the whole engine. */
const EXCESSIVE: readonly [string, RegExp][] = [
  ['REPT("x",10^7)', /a text of more than 32767 characters/],
  ['LEN(REPT("x",10^9))', /a text of more than 32767 characters/],
  ['REPT("x",2*10^4)&REPT("x",2*10^4)', /a text of more than 32767 characters/],
  ['SUBSTITUTE(REPT("x",3*10^4),"x",REPT("y",3*10^4))', /a text of more than 32767 characters/],
  ['SUM(SEQUENCE(10^4,10^4))', /an array of more than 1000000 cells/],
  ['SUM(ARRAYFORMULA(SEQUENCE(10^4)*SEQUENCE(1,10^4)))', /an array of more than 1000000 cells/],
  ['SUM(ARRAYFORMULA(MOD(SEQUENCE(10^4),SEQUENCE(1,10^4))))', /an array of more than 1000000 cells/],
  ['SUM(ARRAYFORMULA(A1:A20000*B1:CW1))', /an array of more than 1000000 cells/],
  [
    'SUM(ARRAYFORMULA(SEQUENCE(10^3,10^3)+SEQUENCE(10^3,10^3)))',
    /arrays of more than 2000000 cells together/,
  ],
  ['SUM(MMULT(SEQUENCE(10^3,10^3),SEQUENCE(10^3,10^3)))', /products of matrix cells/],
  ['MEDIAN(SEQUENCE(10^3,10^3))', /more memory than there is/],
  ['SUM(1:1048576)', /more than 1000000 cells/],
  ['AT_20C(SUM(1:1048576),30,23)', /more than 1000000 cells/],
  ['SUM(A1:A1000000)', /more than 120000 blank cells/],
  ['SUM(VSTACK(SEQUENCE(10^4),SEQUENCE(1,10^4)))', /an array of more than 1000000 cells/],
  ['SUM(HSTACK(SEQUENCE(10^4),SEQUENCE(1,10^4)))', /an array of more than 1000000 cells/],
  ['COUNT(B1048576,A:XFD)', /more than 120000 blank cells/],
  ['COUNT(XFD9,1:900000)', /more than 120000 blank cells/],
  ['OFFSET()', /the engine cannot read it/],
  ['CUMIPMT(0.1,10^9,1,1,10^9,0)', /takes longer than 0.8 s/],
  ['SEARCH("*a*a*a*a*a*a*a*b",REPT("a",3000))', /takes longer than 0.8 s/],
  [`${'('.repeat(5000)}1${')'.repeat(5000)}`, /nests more than 64 brackets/],
  [`1${'+1'.repeat(5000)}`, /more than 1000 operators/],
];

describe('one formula', () => {
  test.each(EXCESSIVE.map(([formula, reason]) => [formula.slice(0, 60), formula, reason] as const))(
    '%s is an error value with its reason',
    (_name, formula, reason) => {
      const answer = evaluateFormula(formula, UNITS);
      expect(answer).toHaveProperty('message');
      const { message } = answer as { message: string };
      expect(message).toMatch(reason);
      expect(message).toMatch(/: #(?:NUM|VALUE)! /);
      expect(message.length).toBeLessThan(500);
    },
  );

  test.each([
    ['SUM(SEQUENCE(1000,1000))', 500_000_500_000],
    ['LEN(REPT("x",32767))', 32_767],
    ['LEN(SUBSTITUTE(REPT("x",100),"x","yy"))', 200],
    ['SUM(A:XFD)', 0],
    ['COUNT(XFD7,A1:A100000)', 0],
    ['IFERROR(REPT("x",10^7),1)', 1],
  ])('%s is computed', (formula, value) => {
    expect(evaluateFormula(formula, UNITS)).toEqual({ value });
  });
});

/** Formulas without a stored value, one below the other. */
function valued(...formulas: readonly string[]) {
  const rows = formulas.map((formula) => [{ content: undefined, formula }]);
  const { model, notices } = withFormulaValues({ file: FILE, sheets: [{ name: 'Notes', rows }] }, UNITS);
  return { values: rows.map((_, row) => cellAt(model.sheets[0]!, row, 0)!.content?.value), notices };
}

describe('formulas of a workbook', () => {
  test('those beyond the limits are errors, and so is what needs them; the rest is computed', () => {
    const { values, notices } = valued(
      '1+1',
      'SUM(B1:B1000000)',
      'SUM(SEQUENCE(10^4,10^4))',
      'CUMIPMT(0.1,10^9,1,1,10^9,0)',
      'A1*21',
      'A2+1',
      'REPT(REPT("x",A1*10^4),A1)',
    );
    expect(values).toEqual([2, '#NUM!', '#NUM!', '#NUM!', 42, '#NUM!', '#NUM!']);
    expect(notices).toEqual([
      expect.stringMatching(/^engine\.xlsx: Notes!A2: found a formula .* more than 120000 blank cells;/),
      expect.stringMatching(/^engine\.xlsx: Notes!A4: found a formula .* takes longer than 0.8 s;/),
    ]);
  });

  test('a cell far below makes whole columns long, in whatever order they stand', () => {
    const { values } = valued('SUM(B:Z)', 'COUNT(B1048576)', 'SUM(C1:C9)', 'SUM(D1:D1048576)');
    expect(values).toEqual(['#NUM!', 0, 0, '#NUM!']);
    expect(valued('SUM(B:Z)', 'SUM(D1:D1048576)').values).toEqual([0, '#NUM!']);
  });

  test('one that the engine cannot take apart, and one whose array would fill the sheet', () => {
    const { values, notices } = valued('1+1', 'OFFSET()', 'A1*21', 'SEQUENCE(900,900)');
    expect(values).toEqual([2, '#NUM!', 42, '#VALUE!']);
    expect(notices).toEqual([
      expect.stringContaining('Notes!A2: found a formula that is not computed: the engine cannot'),
    ]);
  });

  test('of very many that take too long, those alike go together', () => {
    const { values, notices } = valued('1+1', ...Array(25).fill('POISSON.DIST(10^9,10^9,1)'), 'A1+40');
    expect(values).toEqual([2, ...Array(25).fill('#NUM!'), 42]);
    expect(notices).toEqual([expect.stringContaining(' and 20 more: found')]);
  }, 240_000);

  test('a notice names a few cells of many', () => {
    const { notices } = valued(...Array.from({ length: 50 }, (_, at) => `SUM(B${at + 1}:F1000000)`));
    expect(notices).toHaveLength(1);
    expect(notices[0]).toContain('Notes!A1, Notes!A2, Notes!A3, Notes!A4, Notes!A5 and 45 more: found');
  });

  test('texts that are doubled from cell to cell end where a cell ends', () => {
    const { values } = valued(
      '"0123456789abcdef"',
      ...Array.from({ length: 40 }, (_, at) => `A${at + 1}&A${at + 1}`),
    );
    expect(values.slice(0, 12).map((value) => String(value).length)).toEqual(
      Array.from({ length: 12 }, (_, at) => (at < 11 ? 16 * 2 ** at : '#NUM!'.length)),
    );
    expect(values.at(-1)).toBe('#NUM!');
  });
});
