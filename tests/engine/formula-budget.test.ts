import { expect, test } from 'vitest';
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
