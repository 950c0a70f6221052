/** Where the result of a book goes. */
import { realpath } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { UserError } from '../engine/user-error.js';

const CHECKED = /^(.+)\.checked\.(xls[xm])$/i;
const PACKAGE = /^(.+)\.(xls[xm])$/i;

/** Whether a book has the name of a result: `NAME.checked.xlsx` or `NAME.checked.xlsm`. */
export function isCheckedName(path: string): boolean {
  return CHECKED.test(basename(path));
}

/**
 * `NAME.checked.xlsx` beside the book or the folder, or in `outDir`; a book with macros keeps `.xlsm`. A book that
 * is a result already keeps its name.
 *
 * Throws a UserError where that is the book itself.
 */
export function checkedPath(input: string, outDir?: string): string {
  const inner = basename(input);
  const isNamed = inner !== '' && inner !== '.' && inner !== '..';
  const book = isNamed ? input : resolve(input);
  const output = join(outDir ?? dirname(book), checkedName(basename(book)));
  if (resolve(output) === resolve(book)) {
    throw new UserError(
      `${input}: found a book that has the name of a result already; expected a place other than its own; give --out with another folder, or --in-place to change the book itself.`,
    );
  }
  return output;
}

function checkedName(name: string): string {
  const [, stem = name, ending = 'xlsx'] = CHECKED.exec(name) ?? PACKAGE.exec(name) ?? [];
  return `${stem}.checked.${ending.toLowerCase()}`;
}

/** Whether a path leads to one of the files, by whatever links and dots: what is read is never written over. */
export async function isAmong(path: string, files: readonly string[]): Promise<boolean> {
  const place = (file: string) => realpath(file).catch(() => resolve(file));
  const places = await Promise.all(files.map(place));
  return places.includes(await place(path));
}
