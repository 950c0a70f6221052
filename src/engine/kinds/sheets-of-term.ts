/** Where the parts of a fit stand. */
import { partSheet } from '../input-sheets/index.js';
import type { FitTerm } from './kind-of-fit.js';

const isSameWord = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The sheets of a term that have parts of a fit: those that it is the word of, else all. */
export function sheetsOfTerm({ sheets }: FitTerm, fit: string): readonly string[] {
  const own = sheets.filter((sheet) => isSameWord(partSheet(sheet).fit ?? '', fit));
  return own.length > 0 ? own : sheets;
}
