/** `oilgap report BOOK...`: a page of each book, to look at or to print. */
import { resolve } from 'node:path';
import { UserError } from '../engine/user-error.js';
import { findChromium, type Paper } from '../io/report/print-pdf.js';
import { reportPath } from '../io/report/report-path.js';
import { makeFolder } from '../io/write-file.js';
import { eachBook } from './each-book.js';
import { type PoolOptions, withPool } from './job-pool-options.js';

export interface ReportOptions extends PoolOptions {
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
  return withPool(options, books.length, async (pool) => {
    const { code } = await eachBook(books, pool, async (path) => {
      const target = reportPath(path, 'html', out);
      if (targets.has(resolve(target))) {
        throw new UserError(
          `${path}: found another book of this run whose page is ${target}; expected books of different names; rename one.`,
        );
      }
      targets.add(resolve(target));
      return { kind: 'report', path, options: { out, chromium, paper, seconds } };
    });
    return code;
  });
}
