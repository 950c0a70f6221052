/** `oilgap check BOOK...`: each workbook by itself. */
import { resolve } from 'node:path';
import { UserError } from '../engine/user-error.js';
import { isPreviousName } from '../io/keep-previous.js';
import { checkedPath, isAmong, isCheckedName } from '../io/output-path.js';
import { makeFolder } from '../io/write-file.js';
import { eachBook } from './each-book.js';
import { type PoolOptions, withPool } from './job-pool-options.js';
import { printDocument } from './json-document.js';
import { lineWidth } from './messages.js';

export interface CheckOptions extends PoolOptions {
  readonly out?: string;
  readonly inPlace?: boolean;
  readonly quiet?: boolean;
  readonly values?: boolean;
  readonly takeRepeatability?: boolean;
  readonly json?: boolean;
  readonly seconds: number;
}

/** @returns the exit code: the worst of the books. */
export async function check(books: readonly string[], options: CheckOptions): Promise<number> {
  const { out, inPlace = false, quiet = false, values = false, json = false, seconds } = options;
  const { takeRepeatability = false } = options;
  const targets = new Set<string>();
  const output = { isPrinted: !json && !quiet, isJson: json, width: lineWidth() };
  return withPool(options, books.length, async (pool) => {
    if (out !== undefined) await makeFolder(out);
    const { code, documents } = await eachBook(books, pool, async (path) => {
      const target = targetOf(path, options);
      if (targets.has(resolve(target))) {
        throw new UserError(
          `${path}: found another book of this run at ${target}; expected books of different names; rename one.`,
        );
      }
      if (!inPlace && (await isAmong(target, books))) {
        throw new UserError(
          `${path}: its result would go over ${target}, another book of this run; ` +
            'expected a place of its own; leave that book out, or give --out DIR.',
        );
      }
      targets.add(resolve(target));
      return {
        kind: 'check',
        path,
        target,
        options: { values, output, isPreviousKept: inPlace, seconds, takeRepeatability },
      };
    });
    if (json) printDocument(documents);
    return code;
  });
}

function targetOf(path: string, { out, inPlace }: CheckOptions): string {
  if (inPlace) {
    if (isPreviousName(path)) {
      throw new UserError(
        `${path}: found a book that an earlier run kept as the previous one; expected a book to write into; leave it out, or rename it first.`,
      );
    }
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
