import { expect, test } from 'vitest';
import { shiftFormula } from '../../../src/io/xlsx/shift-formula.js';

const MOVED = [
  ['relative', 'A1+B2', 2, 1, 'B3+C4'],
  ['absolute', '$A$1+$A1+A$1', 2, 1, '$A$1+$A3+B$1'],
  ['up and left', 'C3', -2, -2, 'A1'],
  ['a range', 'SUM(A1:$B$2)', 1, 1, 'SUM(B2:$B$2)'],
  ['whole columns', 'SUM(A:B)+SUM($A:B)', 5, 1, 'SUM(B:C)+SUM($A:C)'],
  ['whole rows', 'SUM(1:2)+SUM($1:2)', 1, 5, 'SUM(2:3)+SUM($1:3)'],
  ['behind Z', 'Z1+AZ1+ZZ1', 0, 1, 'AA1+BA1+AAA1'],
  ['a string', '"A1"&A1&"say ""B2"" to"', 1, 0, '"A1"&A2&"say ""B2"" to"'],
  ['a quoted sheet', "'A1 it''s B2'!A1", 1, 0, "'A1 it''s B2'!A2"],
  ['a plain sheet', 'Sheet1!A1+AB12!A1', 1, 0, 'Sheet1!A2+AB12!A2'],
  ['several sheets', 'SUM(Sheet1:Sheet3!A1:B2)', 1, 1, 'SUM(Sheet1:Sheet3!B2:C3)'],
  ['another book', "[1]Sheet1!A1+'[2]My A1'!B$1", 1, 1, "[1]Sheet1!B2+'[2]My A1'!C$1"],
  [
    'a table column',
    'Table1[A1]+Table1[[#This Row],[B2]]+A1',
    1,
    0,
    'Table1[A1]+Table1[[#This Row],[B2]]+A2',
  ],
  [
    'functions',
    'LOG10(A1)+ATAN2(B1,1)+_xlfn.NORM.S.DIST(A1,TRUE)',
    1,
    0,
    'LOG10(A2)+ATAN2(B2,1)+_xlfn.NORM.S.DIST(A2,TRUE)',
  ],
  ['names', 'my_A1+rate.A1+Größe1+_xlpm.x1+A1', 1, 0, 'my_A1+rate.A1+Größe1+_xlpm.x1+A2'],
  ['a name beyond the last column', 'XFE1+XFD1', 1, 0, 'XFE1+XFD2'],
  ['numbers', '1E5+1.5e-3*2', 3, 3, '1E5+1.5e-3*2'],
  ['an array', '{1,2;3,4}+A1', 1, 0, '{1,2;3,4}+A2'],
  ['errors', 'IF(A1,#N/A,#DIV/0!)+#REF!', 1, 0, 'IF(A2,#N/A,#DIV/0!)+#REF!'],
  ['a spill', 'SUM(A1#)', 1, 0, 'SUM(A2#)'],
  ['beyond the first row', 'A1+B2', -1, 0, '#REF!+B1'],
  ['beyond the last column', 'XFD1', 0, 1, '#REF!'],
  ['beyond the last row', 'A1048576:B2', 1, 0, '#REF!:B3'],
  ['columns beyond', 'SUM(A:B)', 0, -1, 'SUM(#REF!)'],
  ['no offset', "A1&'x'!B2", 0, 0, "A1&'x'!B2"],
] as const;

test.each(MOVED)('%s: %s', (_, formula, rows, columns, expected) => {
  expect(shiftFormula(formula, rows, columns)).toBe(expected);
});
