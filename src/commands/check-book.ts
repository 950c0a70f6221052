/** One book of `oilgap check`, and the writing that other commands share with it. */
import { basename } from 'node:path';
import { type Assessment, assessBook, isAllGood } from '../engine/assess/assess.js';
import type { Book } from '../engine/book/book.js';
import { readBook, withPlainNumbers } from '../engine/run-book.js';
import { withSummaryFirst, writtenWorkbook } from '../engine/sheets/written-workbook.js';
import type { WorkbookModel } from '../engine/workbook-model.js';
import { openFile } from '../io/open-file.js';
import { writeFileWhole } from '../io/write-file.js';
import { editWorkbookPackage } from '../io/xlsx/write-package.js';
import { bookJson } from './book-json.js';
import { bookSummary } from './book-summary.js';
import type { AccountOptions, CheckBookOptions, JobResult, RunOptions } from './jobs.js';
import { EXIT, endProgress, print, progress, say } from './messages.js';
import { sayFindings } from './say-findings.js';
import { withRepeatability } from './with-repeatability.js';

export interface WrittenBook {
  readonly assessment: Assessment;
  /** False where something of the user's lay in the way of a sheet, which was then left as it was. */
  readonly isWhole: boolean;
}

export async function checkBook(path: string, target: string, options: CheckBookOptions): Promise<JobResult> {
  progress(`${basename(path)}: reading`);
  return account(await readAndWrite(path, target, options), target, options.output);
}

async function readAndWrite(path: string, target: string, options: RunOptions): Promise<WrittenBook> {
  const { model, bytes } = await openFile(path);
  if (bytes) return assessAndWrite(model, bytes, target, options);
  const { bareNumbers } = readBook(model);
  return writeNewBook(readBook(withPlainNumbers(model, bareNumbers)), target, options);
}

/** What is printed and counted of a book that was written. */
export function account(
  { assessment, isWhole }: WrittenBook,
  target: string,
  { isPrinted, isJson, width }: AccountOptions,
): JobResult {
  if (isPrinted) print(bookSummary(assessment, target, width));
  return {
    code: isWhole && isAllGood(assessment) ? EXIT.good : EXIT.findings,
    documents: isJson ? [bookJson(assessment, target)] : [],
  };
}

/** Writes a book that has no package yet: a folder of .csv files, or a merged stock. */
export async function writeNewBook(book: Book, target: string, options: RunOptions): Promise<WrittenBook> {
  // A book that is a package already does without it, and it takes long to load.
  const { newWorkbookPackage } = await import('../io/xlsx/new-package.js');
  const model = withSummaryFirst(book.model);
  const bytes = await newWorkbookPackage(model);
  if (options.takeRepeatability) return assessAndWrite(model, bytes, target, options);
  return assessInto({ ...book, model }, bytes, target, options);
}

/** Computes a book and writes its results into a copy of its package. */
export async function assessAndWrite(
  model: WorkbookModel,
  bytes: Uint8Array,
  target: string,
  options: RunOptions,
): Promise<WrittenBook> {
  const given = { model, bytes };
  const taken = options.takeRepeatability ? await withRepeatability(given) : given;
  return assessInto(readBook(taken.model), taken.bytes, target, options);
}

/** @param bytes the package that has the cells of the book */
async function assessInto(
  book: Book,
  bytes: Uint8Array,
  target: string,
  { values, seconds, missingBooks = [], isPreviousKept = false }: RunOptions,
): Promise<WrittenBook> {
  const { file } = book.model;
  const name = basename(file);
  progress(`${name}: computing`);
  const assessment = await assessBook(book, {
    seconds,
    missingBooks,
    onProgress: (message) => progress(`${name}: ${message}`),
  });
  const edit = writtenWorkbook(assessment, { valuesOnly: values });
  progress(`${name}: writing`);
  const written = await editWorkbookPackage(bytes, edit, file);
  await writeFileWhole(target, written.pieces, { isPreviousKept });
  endProgress();
  sayFindings(assessment);
  for (const { sheet, reason } of written.refused) say(`${file}: sheet ${sheet}: ${reason}`);
  return { assessment, isWhole: written.refused.length === 0 };
}
