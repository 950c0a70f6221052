/** The sheet Not matched: every journal without a set, and why. */
import type { StockJournal } from '../../maths/matching/stock.js';
import type { Assessment } from '../assess/assess.js';
import type { PartResult } from '../assess/part-result.js';
import { matchingFault, reasonNotUsed } from '../assess/stock.js';
import type { Book } from '../book/book.js';
import { reasonOf } from '../book/problems.js';
import type { OutputSheet } from '../workbook-model.js';
import { obstacleWords } from './obstacle-words.js';
import { ownSheet, type SheetColumn } from './own-sheet.js';
import { suggestionsOf } from './suggestion-words.js';
import { typedName } from './typed-name.js';

export interface UnmatchedRow {
  readonly journal: PartResult;
  /** The reason, and what would fill it. */
  readonly why: string;
  /** What would fill it alone, where anything would. */
  readonly filledBy: string | undefined;
}

export function notMatchedSheet(assessment: Assessment): OutputSheet {
  return ownSheet('Not matched', columnsOf(assessment.book), unmatchedRows(assessment));
}

function columnsOf(book: Book): SheetColumn<UnmatchedRow>[] {
  return [
    {
      header: 'Engine',
      width: 12,
      value: ({ journal: { row } }) => typedName(book, row, 'Engine', row.engine),
    },
    { header: 'Fit', width: 10, value: ({ journal }) => journal.row.fit },
    {
      header: 'Position',
      width: 10,
      value: ({ journal: { row } }) => typedName(book, row, 'Position', row.position),
    },
    {
      header: 'Journal',
      width: 14,
      value: ({ journal: { row } }) => typedName(book, row, 'Part', row.name),
    },
    { header: 'Why', width: 90, format: 'text', value: ({ why }) => why },
  ];
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
    const own = reasonNotUsed(part);
    if (own) return `journal: ${own}`;
    const housing = stock.cases.get(journal);
    if (housing && !journal.caseBore?.part) {
      return `case ${housing.row.name}: ${reasonNotUsed(housing) ?? 'several cases stand at this place'}`;
    }
    const limits = context.limitsOf(part.row.engineType, part.row.fit);
    const refused = matchingFault(limits, context);
    if (refused) return reasonOf(refused);
    if (limits?.clearanceMin === undefined || limits.clearanceMax === undefined)
      return 'no limits for this fit';
    return obstacleWords(journal, assessment);
  }
}
