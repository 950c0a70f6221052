import { describe, expect, test } from 'vitest';
import { FormulaBudget } from '../../src/engine/formula-budget.js';

test.each([
  ['ROUND(SUM(A1:A5)/3,2)', true],
  ['SUM(A:A)', true],
  ['SUM(A1:A1000000)', true],
  ['SUM(A1:B1000000)', false],
  [`${'IF(TRUE,'.repeat(64)}1${')'.repeat(64)}`, true],
  [`${'IF(TRUE,'.repeat(65)}1${')'.repeat(65)}`, false],
  [`1${'+1'.repeat(1000)}`, true],
  [`1${'+1'.repeat(1001)}`, false],
  [`"${'(+'.repeat(5000)}"`, true],
  [`'${'(+'.repeat(5000)}'!A1`, true],
  ['SEQUENCE(1000,1000)', true],
  ['SEQUENCE(1000000,100)', false],
  ['rept(rept("x",32767),32767)', false],
  ['REPT("x",A99999)', true],
  ['x'.repeat(32_768), false],
])('%.40s', (formula, isAllowed) => {
  expect(new FormulaBudget().allows(formula)).toBe(isAllowed);
});

test('ranges count once, and together', () => {
  const budget = new FormulaBudget();
  const column = (letter: string) => `SUM(${letter}1:$${letter}$900000)`;
  expect([...'AABACD'].map((letter) => budget.allows(column(letter)))).toEqual([
    true,
    true,
    true,
    true,
    false,
    false,
  ]);
  expect(budget.allows(column('B'))).toBe(true);
});

/** HyperFormula makes a cell of its own for each blank one of a range. */
describe('blank cells of ranges', () => {
  const extents = new Map([
    ['small', { rows: 3, columns: 4, cells: 12 }],
    ['tall', { rows: 400_000, columns: 10, cells: 4_000_000 }],
    ["o'clock", { rows: 1_048_576, columns: 8, cells: 9 }],
  ]);
  test.each([
    ['SUM(1:1048576)', false],
    ['SUM($1:$1000)', true],
    ['SUM(A:XFD)', true],
    ['SUM(Small!A1:A120000)', true],
    ['SUM(Small!A1:A120100)', false],
    ["SUM('o''clock'!A:A)", false],
    ["SUM('O''CLOCK'!1:9)", true],
    ['SUM(Tall!A:J)', true],
    ['SUM(Tall!A1:B400000)', true],
    ['SUM(Tall!1:1048576)', false],
    ['SUM(Small!A1:Small!J100000)', false],
    ['SUM(OFFSET(A1,0,0,1000000,2))', false],
    ['SUM(OFFSET(A1,30000,300,20,30))', true],
    ['"1:1048576"', true],
    ['SUM( A1 : A1048576 )', false],
    ['SUM(Missing!A1:J100000)', false],
  ])('%s', (formula, isAllowed) => {
    expect(new FormulaBudget(extents).refusal(formula, 'Small') === undefined).toBe(isAllowed);
  });

  test('count once for equal ranges of one sheet, and for each of two sheets', () => {
    const budget = new FormulaBudget(extents);
    expect(budget.allows('SUM(A1:A100000)', 'Small')).toBe(true);
    expect(budget.allows('MAX(small!$A$1:$A$100000)', 'Tall')).toBe(true);
    expect(budget.allows('SUM(Missing!A1:A100000)', 'Small')).toBe(false);
  });
});
