import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { afterAll, describe, expect, test } from 'vitest';
import { compareLive, describeDifference, isSameValue, reportLive } from '../../scripts/live-check.js';

const folder = mkdtempSync(join(tmpdir(), 'oilgap-compare-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Formula = { readonly formula: string; readonly result?: number | string | boolean };

/** A workbook of one sheet: `A1` and `A2` are numbers, the formulas stand in column B from row 1. */
async function workbook(name: string, formulas: readonly Formula[]): Promise<string> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet('Fits');
  sheet.getCell('A1').value = 42.003;
  sheet.getCell('A2').value = 0.001;
  for (const [i, formula] of formulas.entries()) {
    sheet.getCell(`B${i + 1}`).value = formula as ExcelJS.CellFormulaValue;
  }
  const file = join(folder, `${name}.xlsx`);
  writeFileSync(file, new Uint8Array(await book.xlsx.writeBuffer()));
  return file;
}

describe('compareLive', () => {
  test('finds the wrong one of two stored values', async () => {
    const file = await workbook('one-wrong', [
      { formula: 'ROUND(A1-A2,5)', result: 42.002 },
      { formula: 'ROUND(A1+A2,5)', result: 42.005 },
    ]);
    const differences = await compareLive([file]);
    expect(differences).toEqual([
      { file, sheet: 'Fits', cell: 'B2', formula: 'ROUND(A1+A2,5)', ours: '42.005', theirs: '42.004' },
    ]);
    expect(describeDifference(differences[0]!)).toBe(
      `${file}: Fits!B2: =ROUND(A1+A2,5): the file holds 42.005, LibreOffice calculates 42.004`,
    );
  });

  test('tells texts, blanks, booleans and errors apart, in several files', async () => {
    const right = await workbook('right', [
      { formula: 'IF(A1>42,"in range","loose")', result: 'in range' },
      { formula: 'IF(A1>42,"","x")', result: '' },
      { formula: 'A1>42', result: true },
      { formula: 'A1*A2', result: 0.042003 },
    ]);
    const wrong = await workbook('wrong', [
      { formula: 'IF(A1>42,"in range","loose")', result: 'loose' },
      { formula: 'IF(A1>42,"","x")', result: 'x' },
      { formula: 'A1>42', result: false },
      { formula: 'A1*A2' },
      { formula: 'A1/0', result: 1 },
      { formula: 'NO_SUCH_FUNCTION(A1)', result: 1 },
    ]);
    const report = await reportLive([right, wrong]);
    expect(report.compared).toBe(10);
    expect(report.differences.map(({ file, cell, ours, theirs }) => [file, cell, ours, theirs])).toEqual([
      [wrong, 'B1', '"loose"', '"in range"'],
      [wrong, 'B2', '"x"', 'a blank'],
      [wrong, 'B3', 'false', 'true'],
      [wrong, 'B4', 'a blank', '0.042003'],
      [wrong, 'B5', '1', '#DIV/0!'],
      [wrong, 'B6', '1', '#NAME?'],
    ]);
  });

  test('counts cells of our own functions apart, since LibreOffice does not know them', async () => {
    const file = await workbook('custom', [
      { formula: 'shell_clearance(48,1.5,1.5,44.95)', result: 0.05 },
      { formula: '"SHELL_CLEARANCE(1)"&A3', result: 'SHELL_CLEARANCE(1)' },
    ]);
    expect(await reportLive([file])).toEqual({ compared: 1, custom: 1, differences: [] });
  });

  test('compares nothing where there is no formula', async () => {
    expect(await reportLive([await workbook('plain', [])])).toEqual({
      compared: 0,
      custom: 0,
      differences: [],
    });
  });

  test('says that a file is no workbook', async () => {
    const file = join(folder, 'damaged.xlsx');
    writeFileSync(file, new Uint8Array([0x50, 0x4b, 3, 4, 0, 0]));
    await expect(compareLive([file])).rejects.toThrow(file);
  });
});

describe('isSameValue', () => {
  const number = (value: number) => ({ kind: 'number', value }) as const;

  test.each([
    ['numbers 1e-9 apart', 0, 1e-9, true],
    ['numbers further apart', 0, 1.01e-9, false],
    ['large numbers 1e-12 of the larger apart', 1e6, 1e6 + 0.9e-6, true],
    ['large numbers further apart', 1e6, 1e6 + 1.1e-6, false],
  ])('%s', (_, a, b, same) => {
    expect(isSameValue(number(a), number(b))).toBe(same);
    expect(isSameValue(number(b), number(a))).toBe(same);
  });

  test('a number shown as a date is that number; a text of digits is not', () => {
    expect(isSameValue(number(1), { kind: 'date', value: 1 })).toBe(true);
    expect(isSameValue(number(1), { kind: 'text', value: '1' })).toBe(false);
  });

  test('no value and a text of no characters are both blank; 0 is not', () => {
    expect(isSameValue(undefined, { kind: 'text', value: '' })).toBe(true);
    expect(isSameValue(undefined, number(0))).toBe(false);
  });
});
