/** What is left of the stock: parts that matching chooses among and no set takes. */
import { partSheet } from '../input-sheets/index.js';
import { kindsOfFit } from '../kinds/index.js';
import type { MatchedSet } from './matched-sets.js';
import type { PartResult } from './part-result.js';
import { type PartsOfBook, partsOf } from './placed-fit.js';

export interface LeftPart {
  readonly part: PartResult;
  /** How many of its row no set takes. */
  readonly count: number;
}

export function leftOver(sets: readonly MatchedSet[], parts: PartsOfBook): LeftPart[] {
  const taken = new Map<PartResult, number>();
  for (const part of sets.flatMap(partsOf)) taken.set(part, (taken.get(part) ?? 0) + 1);
  return parts.ofAll(chosenSheets()).flatMap((part) => {
    const count = part.row.quantity - (taken.get(part) ?? 0);
    return count > 0 ? [{ part, count }] : [];
  });
}

/** The sheets whose parts matching chooses among. */
function chosenSheets(): string[] {
  const matched = kindsOfFit().filter(({ isMatched }) => isMatched);
  const sheets = matched.flatMap(({ terms }) => terms.flatMap((term) => term.sheets));
  return [...new Set(sheets)].filter((sheet) => partSheet(sheet).matching === 'chosen');
}
