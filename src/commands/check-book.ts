/** One book of `oilgap check`, and the writing that other commands share with it. */
import { basename } from 'node:path';
import { type Assessment, isAllGood } from '../engine/assess/assess.js';
import { readBook, runBook, withPlainNumbers } from '../engine/run-book.js';
import { withSummaryFirst, writtenWorkbook } from '../engine/sheets/written-workbook.js';
import type { WorkbookModel } from '../engine/workbook-model.js';
import { openFile } from '../io/open-file.js';
import { writeFileWhole } from '../io/write-file.js';
import { readWorkbookPackage } from '../io/xlsx/read-package.js';
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
  const opened = await openFile(path);
  if (opened.bytes) return assessAndWrite(opened.model, opened.bytes, target, options);
  const model = withPlainNumbers(opened.model, readBook(opened.model).bareNumbers);
  return writeNewBook(model, target, options);
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
export async function writeNewBook(
  model: WorkbookModel,
  target: string,
  options: RunOptions,
): Promise<WrittenBook> {
  // A book that is a package already does without it, and it takes long to load.
  const { newWorkbookPackage } = await import('../io/xlsx/new-package.js');
  const bytes = await newWorkbookPackage(withSummaryFirst(model));
  return assessAndWrite(
    { ...(await readWorkbookPackage(bytes, model.file)), file: model.file },
    bytes,
    target,
    options,
  );
}

/** Computes a book and writes its results into a copy of its package. */
export async function assessAndWrite(
  found: WorkbookModel,
  foundBytes: Uint8Array,
  target: string,
  { values, seconds, takeRepeatability = false, missingBooks = [], isPreviousKept = false }: RunOptions,
): Promise<WrittenBook> {
  const name = basename(found.file);
  const given = { model: found, bytes: foundBytes };
  const { model, bytes } = takeRepeatability ? await withRepeatability(given) : given;
  progress(`${name}: computing`);
  const assessment = await runBook(model, {
    seconds,
    missingBooks,
    onProgress: (message) => progress(`${name}: ${message}`),
  });
  const edit = writtenWorkbook(assessment, { valuesOnly: values });
  progress(`${name}: writing`);
  const written = await editWorkbookPackage(bytes, edit, model.file);
  await writeFileWhole(target, written.pieces, { isPreviousKept });
  endProgress();
  sayFindings(assessment);
  for (const { sheet, reason } of written.refused) say(`${model.file}: sheet ${sheet}: ${reason}`);
  return { assessment, isWhole: written.refused.length === 0 };
}
