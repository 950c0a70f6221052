/** The live cell that says whether a reading changed. Its value in a spreadsheet program is held by the live check. */
import { expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { readingsUnchanged } from '../../../src/engine/sheets/readings-checksum.js';
import { bookOf, ERROR, type Plain, table } from '../book-of.js';

async function cellOver(...walls: Plain[]) {
  const rows = walls.map((wall, at) => ({ Part: `S${at}`, Half: 'upper', 'Wall 1': wall }));
  return readingsUnchanged(await assessBook(bookOf({ Shells: table(...rows) }), { seconds: 1 }));
}

test('numbers are summed by place, texts compared, cells counted', async () => {
  const { value, formula } = await cellOver(1.487, '1.489 mm');
  expect(value).toBe('unchanged');
  // Column C is the third: weight 1 + (2 · 101 mod 89) = 25, and row 2 adds 2: 1.487 · 27 = 40.149.
  expect(formula).toContain("SUMPRODUCT('Shells'!C2:C503,MOD(ROW('Shells'!C2:C503),97)+25)-40.149,5)=0");
  expect(formula).toContain("COUNTA('Shells'!C2:C503)=2");
  expect(formula).toContain(`EXACT('Shells'!C3,"1.489 mm")`);
});

test('two readings that change places change the sum', async () => {
  const [one, other] = [await cellOver(1.487, 1.488), await cellOver(1.488, 1.487)];
  expect(one.formula).not.toBe(other.formula);
});

test('an error and a boolean are watched by themselves, and no sum runs over them', async () => {
  const { value, formula } = await cellOver(1.487, ERROR, 1.488, true);
  expect(value).toBe('unchanged');
  const sums = [...formula!.matchAll(/SUMPRODUCT\('Shells'!(\w+:\w+),/g)].map(([, range]) => range);
  expect(sums).toEqual(['C2:C2', 'C4:C4', 'C6:C505']);
  expect(formula).toContain("ISERROR('Shells'!C3)");
  expect(formula).toContain("ISLOGICAL('Shells'!C5)");
  expect(formula).toContain("COUNTA('Shells'!C2:C505)=4");
});

test('a book with more than can be watched says so', async () => {
  const texts = Array.from({ length: 300 }, (_, at) => `1.${4000 + at} mm`);
  expect(await cellOver(...texts)).toEqual({
    value: 'not watched: run again after a change',
    format: 'plain',
    formula: undefined,
  });
});
