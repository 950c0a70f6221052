/** `oilgap match BOOK...`: all workbooks as one stock, written to a file, or one part of it explained. */
import { extname } from 'node:path';
import { UserError } from '../engine/user-error.js';
import { isAmong } from '../io/output-path.js';
import { eachBook } from './each-book.js';
import { type PoolOptions, withPool } from './job-pool-options.js';
import { printDocument } from './json-document.js';

export interface MatchCommandOptions extends PoolOptions {
  readonly out?: string;
  readonly explain?: string;
  readonly values?: boolean;
  readonly json?: boolean;
  readonly seconds: number;
}

export async function match(paths: readonly string[], options: MatchCommandOptions): Promise<number> {
  const { out, explain, values = false, json = false, seconds } = options;
  if (out !== undefined) await checkTarget(out, paths);
  else if (explain === undefined) {
    throw new UserError(
      'match: found neither --out nor --explain; expected one of them; add --out FILE.xlsx.',
    );
  }
  const output = { isPrinted: !json, isJson: json, width: undefined };
  return withPool(options, 1, async (pool) => {
    // All books are one stock, and so one job.
    const { code, documents } = await eachBook([out ?? paths.join(', ')], pool, async () => {
      return { kind: 'match', paths, options: { out, explain, values, output, seconds } };
    });
    if (json) printDocument(documents);
    return code;
  });
}

async function checkTarget(out: string, paths: readonly string[]): Promise<void> {
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
}
