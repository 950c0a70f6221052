/** The lists that get a sheet of the program's own each, in the order of the sheets behind Summary. */
import type { Assessment } from '../assess/assess.js';
import { REMEASURE } from './remeasure-columns.js';
import { type ResultTable, tableOfAny } from './result-table.js';
import { MATCHED_SETS, PICK_LIST } from './set-columns.js';
import { LEFT_OVER, NOT_MATCHED, TO_BUY } from './stock-columns.js';
import { STUDY_RESULTS } from './study-columns.js';

interface OwnTable {
  readonly table: ResultTable<unknown>;
  /** Whether a book gets the sheet. */
  readonly isMade: (assessment: Assessment) => boolean;
}

const wasMatched = ({ matching }: Assessment) => matching !== undefined;

export const OWN_TABLES: readonly OwnTable[] = [
  { table: tableOfAny(REMEASURE), isMade: () => true },
  { table: tableOfAny(MATCHED_SETS), isMade: wasMatched },
  { table: tableOfAny(NOT_MATCHED), isMade: wasMatched },
  { table: tableOfAny(PICK_LIST), isMade: wasMatched },
  { table: tableOfAny(TO_BUY), isMade: (found) => wasMatched(found) || found.toBuy.length > 0 },
  { table: tableOfAny(LEFT_OVER), isMade: wasMatched },
  { table: tableOfAny(STUDY_RESULTS), isMade: ({ studies }) => studies.length > 0 },
];
