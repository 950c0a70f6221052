/** The rows of a stock are what its cells say: who reads the written workbook anew finds the same. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Book } from '../../../src/engine/book/book.js';
import { materialLookup } from '../../../src/engine/book/materials.js';
import { mergeBooks } from '../../../src/engine/merge/merge-books.js';
import { readBook } from '../../../src/engine/run-book.js';
import { UserError } from '../../../src/engine/user-error.js';
import { strangeSheets } from '../../fuzz/strange-sheets.js';
import { modelOf } from '../book-of.js';
import { randomBook } from '../random-book.js';
import { expectSameAnew, stockOf } from './merged.js';

test.each(Array.from({ length: 30 }, (_, place) => place))('random books from seed %i', (place) => {
  expectSameAnew(stockOf(randomBook(3 * place + 1), randomBook(3 * place + 2), randomBook(3 * place + 3)));
});

/** The books that can be read of what fast-check draws. */
function readable(drawn: readonly (readonly [string, string[][]])[], file: string): Book[] {
  try {
    return [readBook({ ...modelOf(Object.fromEntries(drawn)), file })];
  } catch (error) {
    if (error instanceof UserError) return [];
    throw error;
  }
}

test('books with strange cells', () => {
  let pairs = 0;
  fc.assert(
    fc.property(strangeSheets, strangeSheets, (one, other) => {
      const books = [...readable(one, 'a.xlsx'), ...readable(other, 'b.xlsx')];
      // What goes without saying cannot have two names: of two books that differ in steel, the first rules.
      const isOneSteel =
        new Set(books.map(({ materials }) => JSON.stringify(materialLookup(materials)('steel')))).size === 1;
      const isOfStock = books.some(({ tables }) => [...tables.keys()].some((name) => name !== 'Fits'));
      if (!isOneSteel || !isOfStock) return;
      pairs += books.length - 1;
      expectSameAnew(mergeBooks(books, 'stock.xlsx'));
    }),
    { seed: 7, numRuns: 300 },
  );
  expect(pairs).toBeGreaterThan(50);
});
