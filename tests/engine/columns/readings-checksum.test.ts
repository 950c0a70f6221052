/** The live cell that says whether a reading changed. Its value in a spreadsheet program is held by the live check. */
import { expect, test } from 'vitest';
import { assessBook } from '../../../src/engine/assess/assess.js';
import { readingsUnchanged } from '../../../src/engine/columns/readings-checksum.js';
import { bookOf, ERROR, type Plain, table } from '../book-of.js';

async function cellOver(...walls: Plain[]) {
  const rows = walls.map((wall, at) => ({ Part: `S${at}`, Half: 'upper', 'Wall 1': wall }));
  return readingsUnchanged(await assessBook(bookOf({ Shells: table(...rows) }), { seconds: 1 }));
}

test('numbers are summed by place to a grain, texts compared, cells counted', async () => {
  const { value, formula } = await cellOver(1.487, '1.489 mm');
  expect(value).toBe('unchanged');
  // Row 2 weighs 2 + 1: 1.487 · 3 = 4.461; the first column of readings weighs 1.
  expect(formula).toContain("SUMPRODUCT('Shells'!C2:C503,MOD(ROW('Shells'!C2:C503),97)+1)-4.461,6)=0");
  expect(formula).toContain("SUMPRODUCT('Shells'!C2:C503,MOD(ROW('Shells'!C2:C503),89)+1)-4.461,6)=0");
  expect(formula).toContain("ROUND(1*SUM('Shells'!C2:C503)-1.487,6)=0");
  expect(formula).toContain("COUNTA('Shells'!C2:C503)=2");
  expect(formula).toContain(`EXACT('Shells'!C3,"1.489 mm")`);
});

test('two readings that change places change the sum', async () => {
  const [one, other] = [await cellOver(1.487, 1.488), await cellOver(1.488, 1.487)];
  expect(one.formula).not.toBe(other.formula);
});

/** The numbers that the sums had at the run. */
async function sumsOf(values: readonly (readonly number[])[]) {
  const rows = values.map((walls, at) => ({
    Part: `S${at}`,
    Half: 'upper',
    ...Object.fromEntries(walls.map((wall, place) => [`Wall ${place + 1}`, wall])),
  }));
  const { formula } = readingsUnchanged(await assessBook(bookOf({ Shells: table(...rows) }), { seconds: 1 }));
  return [...formula!.matchAll(/-([\d.]+),6\)=0/g)].map(([, sum]) => sum);
}

test('any two readings of a sheet that change places change a sum', async () => {
  const [rows, columns] = [120, 3];
  const walls = Array.from({ length: rows }, () => Array.from({ length: columns }, () => 1.5));
  const before = (await sumsOf(walls)).join();
  const swapped = new Set<string>();
  // One cell larger by one grain: the sums name its place.
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      walls[row]![column] = 1.500001;
      swapped.add((await sumsOf(walls)).join());
      walls[row]![column] = 1.5;
    }
  }
  expect(swapped.size).toBe(rows * columns);
  expect(swapped).not.toContain(before);
});

test('an error and a boolean are watched by themselves, and no sum runs over them', async () => {
  const { value, formula } = await cellOver(1.487, ERROR, 1.488, true);
  expect(value).toBe('unchanged');
  const sums = [...formula!.matchAll(/SUMPRODUCT\('Shells'!(\w+:\w+),MOD\(ROW\(\S+?\),97\)/g)].map(
    ([, range]) => range,
  );
  expect(sums).toEqual(['C2:C2', 'C4:C4', 'C6:C505']);
  expect(formula).toContain("ISERROR('Shells'!C3)");
  expect(formula).toContain("ISLOGICAL('Shells'!C5)");
  expect(formula).toContain("COUNTA('Shells'!C2:C505)=4");
});

test.each([
  [10, ['97', '89']],
  // Every error parts a column in two.
  [60, ['97']],
])('with %i errors the sums that there is room for', async (errors, primes) => {
  const walls = Array.from({ length: 2 * errors }, (_, at) => (at % 2 === 0 ? 1.487 : ERROR));
  const { value, formula } = await cellOver(...walls);
  expect(value).toBe('unchanged');
  expect([...new Set([...formula!.matchAll(/,(\d+)\)\+1\)/g)].map(([, prime]) => prime))]).toEqual(primes);
});

test('a book with more than can be watched says so', async () => {
  const texts = Array.from({ length: 300 }, (_, at) => `1.${4000 + at} mm`);
  expect(await cellOver(...texts)).toEqual({
    value: 'not watched: run again after a change',
    format: 'plain',
    formula: undefined,
  });
});
