/** A few dozen formulas; `npm run fuzz:formulas` tries thousands, and measures them. */
import { expect, test } from 'vitest';
import { evaluateAlone, evaluateInBook, formulaOf } from './formulas.js';

test('random formulas are values or errors, and the rest of their book is computed', () => {
  const numbers = Array.from({ length: 25 }, (_, number) => number);
  const alone = new Set(numbers.map((number) => evaluateAlone(formulaOf(3, number))));
  const inBook = new Set(numbers.map((number) => evaluateInBook(formulaOf(3, number))));
  expect([...alone].sort()).toEqual(['a value', 'refused']);
  expect([...inBook]).toContain('a value');
  expect([...inBook]).toContain('#NUM!');
}, 240_000);

test('the same seed and number draw the same formula', () => {
  expect(formulaOf(5, 17)).toBe(formulaOf(5, 17));
  expect(formulaOf(5, 17)).not.toBe(formulaOf(6, 17));
});
