import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { UserError } from '../../src/engine/user-error.js';
import { checkedPath, isCheckedName } from '../../src/io/output-path.js';

test.each([
  ['book.xlsx', undefined, 'book.checked.xlsx'],
  ['in/book.xlsx', undefined, 'in/book.checked.xlsx'],
  ['in/book.xlsx', 'out', 'out/book.checked.xlsx'],
  ['in/BOOK.XLSX', undefined, 'in/BOOK.checked.xlsx'],
  ['in/macros.xlsm', undefined, 'in/macros.checked.xlsm'],
  ['in/v1.2.xlsx', undefined, 'in/v1.2.checked.xlsx'],
  ['in/folder', undefined, 'in/folder.checked.xlsx'],
  ['in/folder/', undefined, 'in/folder.checked.xlsx'],
  ['in/folder v1.2', 'out', 'out/folder v1.2.checked.xlsx'],
  ['in/book.checked.xlsx', 'out', 'out/book.checked.xlsx'],
  ['in/book.checked.xlsm', 'out', 'out/book.checked.xlsm'],
])('the result of %s with --out %s is %s', (input, outDir, output) => {
  expect(checkedPath(input, outDir)).toBe(join(output));
});

test('the result of the working folder lies beside it', () => {
  expect(checkedPath('.')).toBe(`${resolve('.')}.checked.xlsx`);
});

test.each([undefined, 'in', './in/'])('a result is not written over itself (--out %s)', (outDir) => {
  expect(() => checkedPath('in/book.checked.xlsx', outDir)).toThrow(UserError);
  expect(() => checkedPath('in/book.checked.xlsx', outDir)).toThrow(/^in\/book\.checked\.xlsx: .*--in-place/);
});

test.each([
  ['in/book.checked.xlsx', true],
  ['book.CHECKED.XLSM', true],
  ['book.xlsx', false],
  ['checked.xlsx', false],
  ['.checked.xlsx', false],
  ['book.checked.xlsx/inner.xlsx', false],
  ['book.checked', false],
])('isCheckedName of %s is %s', (path, expected) => {
  expect(isCheckedName(path)).toBe(expected);
});
