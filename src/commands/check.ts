/** `oilgap check BOOK...`: each workbook by itself. */
import { basename, resolve } from 'node:path';
import { type Assessment, isAllGood } from '../engine/assess/assess.js';
import { sentenceOf } from '../engine/book/problems.js';
import { readBook, runBook, withPlainNumbers } from '../engine/run-book.js';
import { missingSentence, stopSentence } from '../engine/sheets/proof-words.js';
import { writtenWorkbook } from '../engine/sheets/written-workbook.js';
import { UserError } from '../engine/user-error.js';
import type { WorkbookModel } from '../engine/workbook-model.js';
import { openFile } from '../io/open-file.js';
import { checkedPath, isAmong, isCheckedName } from '../io/output-path.js';
import { makeFolder, writeFileWhole } from '../io/write-file.js';
import { newWorkbookPackage } from '../io/xlsx/new-package.js';
import { readWorkbookPackage } from '../io/xlsx/read-package.js';
import { editWorkbookPackage } from '../io/xlsx/write-package.js';
import { bookJson, JSON_VERSION } from './book-json.js';
import { bookSummary } from './book-summary.js';
import { eachBook } from './each-book.js';
import { endProgress, lineWidth, printable, progress, say } from './messages.js';

export interface RunOptions {
  readonly values?: boolean;
  readonly json?: boolean;
  readonly seconds: number;
  /** Books of the stock that could not be read. */
  readonly missingBooks?: readonly string[];
}

export interface CheckOptions extends RunOptions {
  readonly out?: string;
  readonly inPlace?: boolean;
  readonly quiet?: boolean;
}

/** @returns the exit code: the worst of the books. */
export async function check(books: readonly string[], options: CheckOptions): Promise<number> {
  const documents: unknown[] = [];
  const targets = new Set<string>();
  if (options.out !== undefined) await makeFolder(options.out);
  const code = await eachBook(
    books,
    async (path) => {
      const target = targetOf(path, options);
      if (targets.has(resolve(target))) {
        throw new UserError(
          `${path}: found another book of this run at ${target}; expected books of different names; rename one.`,
        );
      }
      if (!options.inPlace && (await isAmong(target, books))) {
        throw new UserError(
          `${path}: its result would go over ${target}, another book of this run; ` +
            'expected a place of its own; leave that book out, or give --out DIR.',
        );
      }
      targets.add(resolve(target));
      const { assessment, isWhole } = await checkBook(path, target, options);
      documents.push(bookJson(assessment, target));
      if (!options.json && !options.quiet) {
        process.stdout.write(`${printable(bookSummary(assessment, target, lineWidth()))}\n`);
      }
      return isWhole && isAllGood(assessment);
    },
    (file, error) => documents.push({ file, error }),
  );
  if (options.json)
    process.stdout.write(`${JSON.stringify({ version: JSON_VERSION, books: documents }, null, 2)}\n`);
  return code;
}

function targetOf(path: string, { out, inPlace }: CheckOptions): string {
  if (inPlace) {
    if (path.toLowerCase().endsWith('.xlsx') || path.toLowerCase().endsWith('.xlsm')) return path;
    throw new UserError(`${path}: --in-place needs an .xlsx file; found a folder; leave out --in-place.`);
  }
  if (isCheckedName(path) && out === undefined) {
    throw new UserError(
      `${path}: found a book that is already checked; expected --in-place to write into it, or --out DIR; add one of them.`,
    );
  }
  return checkedPath(path, out);
}

export interface WrittenBook {
  readonly assessment: Assessment;
  /** False where something of the user's lay in the way of a sheet, which was then left as it was. */
  readonly isWhole: boolean;
}

async function checkBook(path: string, target: string, options: RunOptions): Promise<WrittenBook> {
  progress(`${basename(path)}: reading`);
  const opened = await openFile(path);
  if (opened.bytes) return assessAndWrite(opened.model, opened.bytes, target, options);
  const model = withPlainNumbers(opened.model, readBook(opened.model).bareNumbers);
  return writeNewBook(model, target, options);
}

/** Writes a book that has no package yet: a folder of .csv files, or a merged stock. */
export async function writeNewBook(
  model: WorkbookModel,
  target: string,
  options: RunOptions,
): Promise<WrittenBook> {
  const bytes = await newWorkbookPackage(model);
  return assessAndWrite(
    { ...(await readWorkbookPackage(bytes, model.file)), file: model.file },
    bytes,
    target,
    options,
  );
}

/** Computes a book and writes its results into a copy of its package. */
export async function assessAndWrite(
  model: WorkbookModel,
  bytes: Uint8Array,
  target: string,
  { values, seconds, missingBooks = [] }: RunOptions,
): Promise<WrittenBook> {
  const name = basename(model.file);
  progress(`${name}: computing`);
  const assessment = await runBook(model, {
    seconds,
    missingBooks,
    onProgress: (message) => progress(`${name}: ${message}`),
  });
  const edit = writtenWorkbook(assessment, { valuesOnly: values === true });
  progress(`${name}: writing`);
  const written = await editWorkbookPackage(bytes, edit, model.file);
  await writeFileWhole(target, written.bytes);
  endProgress();
  const { book } = assessment;
  for (const bad of book.bad) say(sentenceOf(model.file, bad));
  for (const notice of book.notices) say(notice);
  for (const sentence of [stopSentence(assessment), missingSentence(assessment)]) {
    if (sentence !== undefined) say(`${model.file}: ${sentence}`);
  }
  for (const { sheet, reason } of written.refused) say(`${model.file}: sheet ${sheet}: ${reason}`);
  return { assessment, isWhole: written.refused.length === 0 };
}
