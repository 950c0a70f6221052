import { expect, test } from 'vitest';
import { isBuiltInDateFormat, isDateFormat } from '../../../src/io/xlsx/date-format.js';

const NUMBERS = [
  'General',
  '0',
  '0.00E+00',
  '##0.0e-0',
  '# ?/?',
  '@',
  '0.000\\ \\m\\m',
  '0.000"mm"',
  '0.000_d',
  '0.000*d',
  '0.000 mm',
  '0.0000 in "h"',
  '#,##0.00 d',
  '0.000;-0.000 mm',
  '[Red]0.000',
  '[$-409]0.000',
  '[$€-407] #,##0.00',
  '[<1]0.0000;[>=1]0.000',
  '"yyyy"0',
  '\\d0',
  '0.000;-0.000;"day"',
  '0;0;0;@" d"',
  '0 "a;b" m',
  '"never closed mm',
  '',
];

const DATES = [
  'yyyy-mm-dd',
  'dd/mm/yy',
  'd\\.m\\.yyyy',
  'h:mm AM/PM',
  'hh:mm:ss',
  'mm:ss.0',
  'ss.000',
  '[h]:mm',
  '[mm]:ss.00',
  '[s]',
  '[ss].00',
  '[$-409]d mmm yyyy',
  '[Red]yyyy',
  'mmmm',
  '"Date: "dd',
  'aaaa',
  'ggge"年"m"月"d"日"',
  '[$-F800]dddd\\,\\ mmmm\\ dd\\,\\ yyyy',
  'General;dd/mm/yy',
  'YYYY-MM-DD',
];

test.each(NUMBERS)('%s shows a number', (code) => {
  expect(isDateFormat(code)).toBe(false);
});

test.each(DATES)('%s shows a date or a time', (code) => {
  expect(isDateFormat(code)).toBe(true);
});

test('the built-in formats that are dates', () => {
  const ids = Array.from({ length: 70 }, (_, id) => id).filter(isBuiltInDateFormat);
  expect(ids).toEqual([
    14, 15, 16, 17, 18, 19, 20, 21, 22, 27, 28, 29, 30, 31, 32, 33, 34, 35, 36, 45, 46, 47, 50, 51, 52, 53,
    54, 55, 56, 57, 58,
  ]);
});
