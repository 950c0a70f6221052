/** `oilgap report BOOK...`: a page of each book, to look at or to print. */
import { basename, resolve } from 'node:path';
import { isAllGood } from '../engine/assess/assess.js';
import { sentenceOf } from '../engine/book/problems.js';
import { runBook } from '../engine/run-book.js';
import { UserError } from '../engine/user-error.js';
import { inputFiles } from '../io/input-digest.js';
import { openFile } from '../io/open-file.js';
import { programName } from '../io/program-name.js';
import { findChromium, type Paper, printPdf } from '../io/report/print-pdf.js';
import { reportPage } from '../io/report/report-page.js';
import { reportPath } from '../io/report/report-path.js';
import { makeFolder, writeFileWhole } from '../io/write-file.js';
import { eachBook } from './each-book.js';
import { endProgress, printable, progress, say } from './messages.js';

export interface ReportOptions {
  readonly out?: string;
  readonly pdf?: boolean;
  readonly paper: Paper;
  readonly seconds: number;
}

/** @returns the exit code: the worst of the books. */
export async function report(books: readonly string[], options: ReportOptions): Promise<number> {
  const { out, pdf, paper, seconds } = options;
  // Looked for before anything is written.
  const chromium = pdf ? await findChromium() : undefined;
  if (out !== undefined) await makeFolder(out);
  const targets = new Set<string>();
  return eachBook(books, async (path) => {
    const target = reportPath(path, 'html', out);
    if (targets.has(resolve(target))) {
      throw new UserError(
        `${path}: found another book of this run whose page is ${target}; expected books of different names; rename one.`,
      );
    }
    targets.add(resolve(target));
    const name = basename(path);
    progress(`${name}: reading`);
    const opened = await openFile(path);
    const files = await inputFiles(path, opened);
    const assessment = await runBook(opened.model, {
      seconds,
      onProgress: (message) => progress(`${name}: ${message}`),
    });
    progress(`${name}: writing`);
    const html = reportPage(assessment, { program: programName(), files });
    await writeFileWhole(target, new TextEncoder().encode(html));
    const written = [target];
    if (chromium) {
      const printed = reportPath(path, 'pdf', out);
      await writeFileWhole(printed, await printPdf(html, chromium, paper));
      written.push(printed);
    }
    endProgress();
    for (const bad of assessment.book.bad) say(sentenceOf(path, bad));
    for (const notice of assessment.book.notices) say(notice);
    process.stdout.write(printable(`${path}\n${written.map((file) => `  written: ${file}\n`).join('')}`));
    return isAllGood(assessment);
  });
}
