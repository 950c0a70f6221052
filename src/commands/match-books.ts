/** The work of `oilgap match`. */
import { type Assessment, type AssessOptions, assessBook, isAllGood } from '../engine/assess/assess.js';
import type { Book } from '../engine/book/book.js';
import { mergeBooks } from '../engine/merge/merge-books.js';
import { readBook } from '../engine/run-book.js';
import { UserError } from '../engine/user-error.js';
import { refuseLongSheets, refuseWideLayout } from '../io/gate/sheet-layout.js';
import { openFile } from '../io/open-file.js';
import { bookJson } from './book-json.js';
import { bookSummary } from './book-summary.js';
import { type WrittenBook, writeNewBook } from './check-book.js';
import { explanationJson, explanationsOf, explanationText, refuseUnknownPart } from './explain-part.js';
import type { JobResult, MatchBooksOptions, RunOptions } from './jobs.js';
import { EXIT, endProgress, print, progress, say } from './messages.js';
import { sayFindings } from './say-findings.js';

export async function matchBooks(paths: readonly string[], options: MatchBooksOptions): Promise<JobResult> {
  const { book, refused } = await readStock(paths, options.out ?? paths.join(', '));
  const documents = refused.map(({ path, message }) => ({ file: path, error: message }));
  if (!book) return { code: EXIT.notRun, documents };
  const missingBooks = refused.map(({ path }) => path);
  const result = await matchStock(book, missingBooks, options);
  return {
    code: missingBooks.length > 0 ? EXIT.notRun : result.code,
    documents: [...documents, ...result.documents],
  };
}

interface ReadStock {
  /** Undefined where none of the books could be read. */
  readonly book: Book | undefined;
  readonly refused: readonly { readonly path: string; readonly message: string }[];
}

/** The books as one stock; the single books are not kept. */
async function readStock(paths: readonly string[], file: string): Promise<ReadStock> {
  const books: Book[] = [];
  const refused: { path: string; message: string }[] = [];
  for (const path of paths) {
    try {
      progress(`${path}: reading`);
      books.push(readBook((await openFile(path)).model));
    } catch (error) {
      if (!(error instanceof UserError)) throw error;
      say(error.message);
      refused.push({ path, message: error.message });
    }
  }
  return { book: books.length > 0 ? mergeBooks(books, file) : undefined, refused };
}

/** Sets of the merged stock: written, or asked about, or both. */
async function matchStock(
  book: Book,
  missingBooks: readonly string[],
  options: MatchBooksOptions,
): Promise<JobResult> {
  const { out, explain, output, seconds } = options;
  // A question about a part that is not there is refused before the sets are sought.
  if (explain !== undefined) refuseUnknownPart(explain, book);
  const { assessment, isWhole } =
    out === undefined
      ? { assessment: await assessOnly(book, { seconds, missingBooks }), isWhole: true }
      : await writeStock(book, out, { ...options, missingBooks });
  const explanations = explain === undefined ? [] : explanationsOf(explain, assessment);
  if (output.isPrinted && out !== undefined) print(bookSummary(assessment, out, output.width));
  if (output.isPrinted && explain !== undefined) print(explanationText(explanations));
  const explained = explain === undefined ? {} : { explain: explanationJson(explain, explanations) };
  return {
    code: isWhole && isAllGood(assessment) ? EXIT.good : EXIT.findings,
    documents: output.isJson ? [{ ...bookJson(assessment, out), ...explained }] : [],
  };
}

function writeStock(book: Book, out: string, options: RunOptions): Promise<WrittenBook> {
  const { file, sheets } = book.model;
  refuseLongSheets(sheets, file);
  refuseWideLayout(sheets, file);
  return writeNewBook(book, out, options);
}

async function assessOnly(book: Book, options: AssessOptions): Promise<Assessment> {
  const assessment = await assessBook(book, { ...options, onProgress: progress });
  endProgress();
  sayFindings(assessment);
  return assessment;
}
