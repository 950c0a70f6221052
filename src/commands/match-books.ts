/** The work of `oilgap match`. */
import { mergeBooks } from '../engine/merge-books.js';
import { readBook } from '../engine/run-book.js';
import { UserError } from '../engine/user-error.js';
import { openFile } from '../io/open-file.js';
import { type AccountOptions, account, type RunOptions, writeNewBook } from './check-book.js';
import type { JobResult } from './jobs.js';
import { EXIT, progress, say } from './messages.js';

export interface MatchOptions extends RunOptions {
  readonly out: string;
  readonly output: AccountOptions;
}

export async function matchBooks(paths: readonly string[], options: MatchOptions): Promise<JobResult> {
  const books = [];
  const documents: unknown[] = [];
  const missingBooks: string[] = [];
  for (const path of paths) {
    try {
      progress(`${path}: reading`);
      books.push(readBook((await openFile(path)).model));
    } catch (error) {
      if (!(error instanceof UserError)) throw error;
      say(error.message);
      documents.push({ file: path, error: error.message });
      missingBooks.push(path);
    }
  }
  if (books.length === 0) return { code: EXIT.notRun, documents };
  const { out, output } = options;
  const written = await writeNewBook(mergeBooks(books, out), out, { ...options, missingBooks });
  const result = account(written, out, output);
  return {
    code: missingBooks.length > 0 ? EXIT.notRun : result.code,
    documents: [...documents, ...result.documents],
  };
}
