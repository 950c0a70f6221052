/** Where the parts of a fit stand. */
import { partSheet } from '../input-sheets/index.js';
import type { FitTerm } from './kind-of-fit.js';

const isSameWord = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The sheets of a term that have parts of a fit: those that it is the word of, else all. */
export function sheetsOfTerm({ sheets }: FitTerm, fit: string): readonly string[] {
  const own = sheets.filter((sheet) => isSameWord(partSheet(sheet).fit ?? '', fit));
  return own.length > 0 ? own : sheets;
}

/** The sheet in which the part of a term is expected: of a word that no sheet has for its own, one with a column Fit. */
export function homeOfTerm(term: FitTerm, fit: string): string {
  const [first] = sheetsOfTerm(term, fit);
  const { sheets } = term;
  if (isSameWord(partSheet(first!).fit ?? '', fit)) return first!;
  return sheets.find((sheet) => 'fit' in partSheet(sheet).columns) ?? first!;
}

/** What the part of a term is called in a sentence. */
export function nounOfTerm(term: FitTerm, fit: string): string {
  return term.noun ?? partSheet(homeOfTerm(term, fit)).noun;
}
