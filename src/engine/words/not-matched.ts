/** Every journal without a set: why, and what would fill it. */
import type { StockJournal } from '../../maths/matching/stock.js';
import type { Assessment } from '../assess/assess.js';
import type { PartResult } from '../assess/part-result.js';
import { matchingFault, reasonNotUsed } from '../assess/stock.js';
import { reasonOf } from '../book/problems.js';
import { obstacleWords } from './obstacle-words.js';
import { suggestionsOf } from './suggestion-words.js';

export interface UnmatchedRow {
  readonly journal: PartResult;
  /** The reason, and what would fill it. */
  readonly why: string;
  /** What would fill it alone, where anything would. */
  readonly filledBy: string | undefined;
}

export function unmatchedRows(assessment: Assessment): UnmatchedRow[] {
  const { matching, stock, context } = assessment;
  if (!matching) return [];
  const suggestions = suggestionsOf(assessment);
  const filled = new Set(matching.fits.map(({ journal }) => journal));
  return [...stock.journals]
    .filter(([journal]) => !filled.has(journal))
    .map(([journal, part]) => {
      const filledBy = suggestions.get(journal);
      const why = whyNot(journal, part);
      return { journal: part, why: filledBy === undefined ? why : `${why}; ${filledBy}`, filledBy };
    });

  function whyNot(journal: StockJournal, part: PartResult): string {
    const { allowUndecided } = context.book.setup;
    const own = reasonNotUsed(part, allowUndecided);
    if (own) return `journal: ${own}`;
    const housing = stock.cases.get(journal);
    if (housing && !journal.caseBore?.part) {
      return `case ${housing.row.name}: ${reasonNotUsed(housing, allowUndecided) ?? 'several cases stand at this place'}`;
    }
    const limits = context.limitsOf(part.row.engineType, part.row.fit);
    const refused = matchingFault(limits, context);
    if (refused) return reasonOf(refused);
    if (limits?.clearanceMin === undefined || limits.clearanceMax === undefined)
      return 'no limits for this fit';
    return obstacleWords(journal, assessment);
  }
}
