/** `oilgap match BOOK... --out FILE`: all workbooks as one stock. */
import { extname } from 'node:path';
import { isAllGood } from '../engine/assess/assess.js';
import { mergeBooks } from '../engine/merge-books.js';
import { readBook } from '../engine/run-book.js';
import { UserError } from '../engine/user-error.js';
import { openFile } from '../io/open-file.js';
import { isAmong } from '../io/output-path.js';
import { bookJson, JSON_VERSION } from './book-json.js';
import { bookSummary } from './book-summary.js';
import { type RunOptions, writeNewBook } from './check.js';
import { EXIT, endProgress, printable, progress, say } from './messages.js';

export async function match(
  paths: readonly string[],
  options: RunOptions & { out: string },
): Promise<number> {
  const { out } = options;
  if (extname(out).toLowerCase() !== '.xlsx') {
    throw new UserError(
      `${out}: found no name of an .xlsx file; expected one such as sets.xlsx; change --out.`,
    );
  }
  if (await isAmong(out, paths)) {
    throw new UserError(
      `${out}: found one of the books that are to be read; expected a file of another name; change --out.`,
    );
  }
  let code: number = EXIT.good;
  const books = [];
  const documents: unknown[] = [];
  const missingBooks: string[] = [];
  for (const path of paths) {
    try {
      progress(`${path}: reading`);
      books.push(readBook((await openFile(path)).model));
    } catch (error) {
      if (!(error instanceof UserError)) throw error;
      endProgress();
      say(error.message);
      documents.push({ file: path, error: error.message });
      missingBooks.push(path);
      code = EXIT.notRun;
    }
  }
  if (books.length > 0) {
    const { assessment, isWhole } = await writeNewBook(mergeBooks(books, out), out, {
      ...options,
      missingBooks,
    });
    documents.push(bookJson(assessment, out));
    if (!options.json) process.stdout.write(`${printable(bookSummary(assessment, out))}\n`);
    if (!isWhole || !isAllGood(assessment)) code = Math.max(code, EXIT.findings);
  }
  if (options.json)
    process.stdout.write(`${JSON.stringify({ version: JSON_VERSION, books: documents }, null, 2)}\n`);
  return code;
}
