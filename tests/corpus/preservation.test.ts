/** Whatever a workbook holds, checking it loses nothing of it. */

import { readFileSync } from 'node:fs';
import ExcelJS from 'exceljs';
import { expect, test } from 'vitest';
import { CORPUS } from './corpus.js';
import { examine } from './examine.js';
import { preservationPage } from './preservation-page.js';

const examined = await Promise.all(
  CORPUS.map(async (book) => ({ book, ...(await examine(await book.make())) })),
);

test.each(examined)(
  'a book that holds $book.holds',
  async ({ book, losses, refused, apart, notices, made, cells, written, before, after }) => {
    expect(losses).toEqual([]);
    expect(refused).toEqual([]);
    expect(apart).toEqual(book.apart ?? []);
    const rows = notices.filter((notice) => notice.includes('no part')).join();
    expect(/rows? (.*) holds? no part/.exec(rows)?.[0] ?? '').toContain(book.leftOut ?? '');
    expect(rows === '').toBe(book.leftOut === undefined);
    expect(cells).toBeGreaterThan(15);
    expect(written.some((part) => part.endsWith('workbook.xml'))).toBe(true);
    if (book.unreadByExcelJs !== undefined) return;
    // Another library finds the same cells in the written book as in the user's.
    const [old, now] = [await valuesOf(before), await valuesOf(after)];
    for (const [cell, value] of old)
      if (!made.has(cell)) expect([cell, now.get(cell)]).toEqual([cell, value]);
    expect(now.has('Summary!A1')).toBe(true);
  },
);

test('docs/preservation.md says what is tested here', () => {
  expect(readFileSync('docs/preservation.md', 'utf8')).toBe(preservationPage(examined));
});

async function valuesOf(bytes: Uint8Array): Promise<Map<string, string>> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(Buffer.from(bytes) as never);
  const values = new Map<string, string>();
  workbook.eachSheet((sheet) => {
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        const { value, numFmt, formula, result } = cell;
        values.set(`${sheet.name}!${cell.address}`, JSON.stringify([value, numFmt, formula, result]));
      });
    });
  });
  return values;
}
