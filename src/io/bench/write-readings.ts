/** The workbook's file with what was read at the bench. */
import type { BenchBook } from '../../engine/bench/bench-book.js';
import { UserError } from '../../engine/user-error.js';
import { readBytes } from '../csv/read-bytes.js';
import { type FilledWorkbook, fillCells } from '../xlsx/fill-cells.js';
import { readWorkbookPackage } from '../xlsx/read-package.js';

/**
 * The file as it is now, edits of others included, with the book's readings in it; nothing is written.
 *
 * Throws a UserError where the file cannot be read, or its parts and columns have moved.
 */
export async function filledBook(path: string, book: BenchBook): Promise<FilledWorkbook> {
  const bytes = await readBytes(path, path);
  const moved = book.pending.movedIn(
    await readWorkbookPackage(bytes, path),
    book.measured.book.tables.values(),
  );
  if (moved !== undefined) {
    throw new UserError(
      `${path}: found that ${moved} is no longer the cell that it was; expected parts and columns to stay in their places while the bench runs; ` +
        'save and close the book elsewhere, and start the bench again: the log has every reading.',
    );
  }
  return fillCells(bytes, book.pending.list(), path);
}
