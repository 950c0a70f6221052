import { describe, expect, test } from 'vitest';
import { cellXml } from '../../../src/io/xlsx/cell-xml.js';

const AT = { row: 0, column: 0, prefix: '' };
const long = (length: number) => 'x'.repeat(length);

/** Excel specifications and limits: 8,192 characters of a formula; a text value in a formula, 255. */
describe('a formula that is longer than spreadsheet programs take gives way to its value', () => {
  test.each<[string, string, boolean]>([
    ['a text of 255 characters', `EXACT(A1,"${long(255)}")`, true],
    ['a text of 256 characters', `EXACT(A1,"${long(256)}")`, false],
    ['a text of 255 characters, its quotes doubled', `EXACT(A1,"${'""'.repeat(255)}")`, true],
    ['a text of 256 quotes', `EXACT(A1,"${'""'.repeat(256)}")`, false],
    [
      'many short texts',
      `AND(${Array(40)
        .fill(`A1="${long(20)}"`)
        .join(',')})`,
      true,
    ],
    ['a sheet that has quotes in its name', `'a"${long(300)}"b'!A1+SUM(B1:B9)`, true],
    ['8,192 characters', `SUM(${'A1,'.repeat(2728)}AB1)`, true],
    ['8,193 characters', `SUM(${'A1,'.repeat(2728)}ABC1)`, false],
  ])('%s', (_name, formula, isWritten) => {
    const xml = cellXml(AT, { value: 'in range', format: 'plain', formula }, 0);
    expect(xml.includes('<f>')).toBe(isWritten);
    expect(xml).toContain('in range');
  });

  test('the lengths are those that are named', () => {
    expect([`SUM(${'A1,'.repeat(2728)}AB1)`.length, `SUM(${'A1,'.repeat(2728)}ABC1)`.length]).toEqual([
      8192, 8193,
    ]);
  });
});
