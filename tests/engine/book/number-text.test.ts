/** A number written as text, by every example of the contract and its neighbours. */
import { describe, expect, test } from 'vitest';
import {
  decimalSignShown,
  readScanned,
  scanNumber,
  unitOfWord,
} from '../../../src/engine/book/number-text.js';
import { toNumber } from '../../../src/maths/decimal.js';

const isMmOrIn = (unit: string | undefined) => unit === 'mm' || unit === 'in';

/** What a text says: value and unit, `either` readings, or undefined where it is no number. */
function read(text: string, columnUnit: string | undefined = 'mm', settled?: '.' | ',') {
  const scan = scanNumber(text);
  if (!scan) return undefined;
  const result = readScanned(scan, isMmOrIn(scan.unit ?? columnUnit), settled);
  if (result === 'not a number') return undefined;
  return 'either' in result ? result : { value: toNumber(result.value), unit: scan.unit };
}

describe('a number and its unit', () => {
  test.each([
    ['42.003', 42.003, undefined],
    ['42,003 mm', 42.003, 'mm'],
    ['1.6536 in', 1.6536, 'in'],
    ['1.6536"', 1.6536, 'in'],
    ['36 µm', 36, 'µm'],
    ['1 7/8 in', 1.875, 'in'],
    ['7/8"', 0.875, 'in'],
    ['1⅞ in', 1.875, 'in'],
    ['½ in', 0.5, 'in'],
    ['-1 1/2 in', -1.5, 'in'],
    ['1.6536″', 1.6536, 'in'],
    ['1.6536”', 1.6536, 'in'],
    ["1.6536''", 1.6536, 'in'],
    ['2 inches', 2, 'in'],
    ['36 μm', 36, 'µm'],
    ['36um', 36, 'µm'],
    ['42.003MM', 42.003, 'mm'],
    ['\u00a042.003\u00a0mm\u00a0', 42.003, 'mm'],
    ['42.003\u202fmm', 42.003, 'mm'],
    ['４２．００３', 42.003, undefined],
    ['４２，００３ ｍｍ', 42.003, 'mm'],
    ['\u22120.5', -0.5, undefined],
    ['\u20130.5', -0.5, undefined],
    ['－0.5', -0.5, undefined],
    ['- 0.5', -0.5, undefined],
    ['+0.5', 0.5, undefined],
    ['.5', 0.5, undefined],
    ['42.', 42, undefined],
    ['1.5e-3', 0.0015, undefined],
    ['20 °C', 20, 'C'],
    ['68° F', 68, 'F'],
    ['20℃', 20, 'C'],
    ['523,5 g', 523.5, 'g'],
    ['95 %', 95, '%'],
    ['11.5 1e-6 per K', 11.5, '1e-6/K'],
  ])('%s', (text, value, unit) => {
    expect(read(text)).toEqual({ value, unit });
  });

  test.each([
    ['', 'nothing'],
    ['abc', 'a word'],
    ['42.003 thou', 'a unit not known'],
    ['42.003 cm', 'a unit not known'],
    ['42.003 constructor', 'a word that an object knows'],
    ['42.003 42.004', 'two numbers'],
    ['42.003 / 42.004', 'two numbers'],
    ['12/05/2024', 'a date'],
    ['1/0 in', 'a division by zero'],
    ['1 234,5', 'a space as thousands mark'],
    ['--5', 'two signs'],
    ['~42', 'about'],
    ['42.003.1', 'two points of which the last groups no three digits'],
    ['4.2,00.3', 'signs by turns'],
    ['1,234,567', 'longer than a kilometre'],
  ])('%s is refused: %s', (text) => {
    expect(read(text)).toBeUndefined();
  });
});

describe('the decimal sign', () => {
  test.each([
    // In mm and in a lone sign is decimal, with both the last is.
    ['1,234', 'mm', 1.234],
    ['1.234', 'mm', 1.234],
    ['1,234 in', 'µm', 1.234],
    ['1,234 mm', 'µm', 1.234],
    ['1.234,5', 'mm', 1234.5],
    ['1,234.5', 'mm', 1234.5],
    // Elsewhere, where it leaves no doubt.
    ['1,234.5', 'µm', 1234.5],
    ['1.234,5', 'µm', 1234.5],
    ['1,234,567', 'µm', 1_234_567],
    ['1.234.567,8', 'µm', 1_234_567.8],
    ['12,5', 'µm', 12.5],
    ['12,34', 'g', 12.34],
    ['12,3456', 'g', 12.3456],
  ])('%s in a column of %s', (text, unit, value) => {
    expect(read(text, unit)).toMatchObject({ value });
  });

  test.each([
    ['1,234 µm', 'mm'],
    ['1,234', 'µm'],
    ['1.234', 'g'],
    ['20,125', 'C'],
    ['123.456', 'price'],
  ])('%s in a column of %s has two readings', (text, unit) => {
    const digits = /[\d.,]+/.exec(text)![0];
    expect(read(text, unit)).toEqual({ either: [digits.replace(',', '.'), digits.replace(/[.,]/, '')] });
  });

  test.each([
    ['1,234 µm', ',', 1.234],
    ['1,234 µm', '.', 1234],
    ['1.234 µm', ',', 1234],
    ['1.234 µm', '.', 1.234],
  ] as const)('%s with a decimal %s settled', (text, settled, value) => {
    expect(read(text, 'mm', settled)).toEqual({ value, unit: 'µm' });
  });

  test.each([
    ['12,5', true, ','],
    ['1.234,5', false, ','],
    ['1,234,567', false, '.'],
    ['1,234', true, ','],
    ['1,234', false, undefined],
    ['1234', false, undefined],
  ] as const)('%s shows it', (text, loneSignIsDecimal, sign) => {
    expect(decimalSignShown(scanNumber(text)!, loneSignIsDecimal)).toBe(sign);
  });
});

test.each([
  ['mm', 'mm'],
  [' MM ', 'mm'],
  ['µm', 'µm'],
  ['"', 'in'],
  ['°F', 'F'],
  ['1e-6 per K', '1e-6/K'],
  ['10⁻⁶/K', '1e-6/K'],
  ['thou', undefined],
])('the unit %s', (word, unit) => {
  expect(unitOfWord(word)).toBe(unit);
});
