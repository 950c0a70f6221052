/** Where the page of a book goes. */
import { basename, dirname, join, resolve } from 'node:path';

/**
 * `NAME.report.html` beside the book or the folder, or in `outDir`. A checked book keeps its `.checked`, so that its page
 * does not take the place of its source's.
 */
export function reportPath(input: string, ending: 'html' | 'pdf', outDir?: string): string {
  const book = /^\.{0,2}$/.test(basename(input)) ? resolve(input) : input;
  const name = basename(book).replace(/\.xls[xm]$/i, '');
  return join(outDir ?? dirname(book), `${name}.report.${ending}`);
}
