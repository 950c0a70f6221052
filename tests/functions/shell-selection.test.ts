import { expect, test } from 'vitest';
import { evaluate } from './sheet.js';

const TABLE = [
  [1, 'A', 'P'],
  [null, null, null],
  [2, ' a', 'Q'],
  [2, 'B', 3],
];

test.each([
  ['1, "A"', 'P'],
  ['2, "A"', 'Q'],
  ['2, "b "', '3'],
  ['3, "A"', ''],
  ['1, "B"', ''],
  ['"", "A"', ''],
  [', "A"', ''],
  ['1, Cells!A2', ''],
])('of %s it is "%s"', (marks, shell) => {
  expect(evaluate(`=SELECTED_SHELL(${marks}, Cells!A1:C4)`, TABLE)).toBe(shell);
});
