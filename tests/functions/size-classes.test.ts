import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

const TABLE = [
  ['B', 42.006, 42.012],
  [null, null, null],
  [1, 42, 42.006],
  ['upside down', 43, 42],
  [' C ', 42.014, 42.02],
];

test.each([
  [42.003, '1'],
  [42.006, 'B'],
  [42.02, 'C'],
  [42.013, 'between B and C'],
  [41.99, 'below 1'],
  [42.5, 'above C'],
])('FIT_GRADE of %f is %s: rows in any order, blank and upside-down ones left out', (size, mark) => {
  expect(evaluate(`=FIT_GRADE(${size}, Cells!A1:C5)`, TABLE)).toBe(mark);
});

test('a size is compared on the grain', () => {
  // Rounds to 42.006, which belongs to the class that begins there.
  expect(evaluate('=FIT_GRADE(42.0059996, Cells!A1:C5)', TABLE)).toBe('B');
  expect(evaluate('=FIT_GRADE(42.005999, Cells!A1:C5)', TABLE)).toBe('1');
});

const SHELLS = [
  ['thin', 1.485, 1.488],
  ['thick', 1.488, 1.491],
  ['upside down', 1.49, 1.48],
];

test.each([
  ['a range of bore spots is averaged', '{45.012,45.014}, 42.001, 0.04', 'thin'],
  ['a range of journal spots is averaged', '45.013, {42,42.002}, 0.03', 'thick'],
  ['an aim below zero', '45.013, 42.001, -1', 'thick'],
  ['an aim far above', '45.013, 42.001, 1', 'thin'],
])('SHELL_GRADE: %s', (_words, given, mark) => {
  expect(evaluate(`=SHELL_GRADE(${given}, Cells!A1:C3)`, SHELLS)).toBe(mark);
});

test('a row without a mark is refused by its place', () => {
  expect(
    evaluate('=FIT_GRADE(42, Cells!A1:C2)', [
      ['A', 41, 42],
      [null, 42, 43],
    ]),
  ).toEqual({
    error: 'VALUE',
    message: 'FIT_GRADE: classes (row 2, Mark) is blank; expected a mark, text or a number',
  });
});
