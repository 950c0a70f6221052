/** The work of `oilgap match`. */
import { type Assessment, type AssessOptions, isAllGood } from '../engine/assess/assess.js';
import { mergeBooks } from '../engine/merge-books.js';
import { readBook, runBook } from '../engine/run-book.js';
import { UserError } from '../engine/user-error.js';
import type { WorkbookModel } from '../engine/workbook-model.js';
import { openFile } from '../io/open-file.js';
import { bookJson } from './book-json.js';
import { bookSummary } from './book-summary.js';
import { writeNewBook } from './check-book.js';
import { explanationJson, explanationsOf, explanationText, refuseUnknownPart } from './explain-part.js';
import type { JobResult, MatchBooksOptions } from './jobs.js';
import { EXIT, endProgress, print, progress, say } from './messages.js';
import { sayFindings } from './say-findings.js';

export async function matchBooks(paths: readonly string[], options: MatchBooksOptions): Promise<JobResult> {
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
  const result = await matchStock(mergeBooks(books, options.out ?? paths.join(', ')), missingBooks, options);
  return {
    code: missingBooks.length > 0 ? EXIT.notRun : result.code,
    documents: [...documents, ...result.documents],
  };
}

/** Sets of the merged stock: written, or asked about, or both. */
async function matchStock(
  model: WorkbookModel,
  missingBooks: readonly string[],
  options: MatchBooksOptions,
): Promise<JobResult> {
  const { out, explain, output, seconds } = options;
  // A question about a part that is not there is refused before the sets are sought.
  if (explain !== undefined) refuseUnknownPart(explain, readBook(model));
  const { assessment, isWhole } =
    out === undefined
      ? { assessment: await assessOnly(model, { seconds, missingBooks }), isWhole: true }
      : await writeNewBook(model, out, { ...options, missingBooks });
  const explanations = explain === undefined ? [] : explanationsOf(explain, assessment);
  if (output.isPrinted && out !== undefined) print(bookSummary(assessment, out, output.width));
  if (output.isPrinted && explain !== undefined) print(explanationText(explanations));
  const explained = explain === undefined ? {} : { explain: explanationJson(explain, explanations) };
  return {
    code: isWhole && isAllGood(assessment) ? EXIT.good : EXIT.findings,
    documents: output.isJson ? [{ ...bookJson(assessment, out), ...explained }] : [],
  };
}

async function assessOnly(model: WorkbookModel, options: AssessOptions): Promise<Assessment> {
  const assessment = await runBook(model, { ...options, onProgress: progress });
  endProgress();
  sayFindings(assessment);
  return assessment;
}
