/** A journal in a bore that was measured with its shells in: the size of the bore is that of the bearing. */
import { CASES } from '../input-sheets/cases.js';
import { JOURNALS } from '../input-sheets/journals.js';
import { RODS } from '../input-sheets/rods.js';
import type { FitTerm, KindOfFit } from './kind-of-fit.js';

export const BORE_OF_BEARING: FitTerm = {
  slot: 'bore',
  noun: 'bore',
  sign: 1,
  sheets: [RODS.name, CASES.name],
};
export const JOURNAL_OF_BEARING: FitTerm = {
  slot: 'journal',
  noun: 'journal',
  sign: -1,
  sheets: [JOURNALS.name],
};

/** The walls are in the size of the bore, so that the shells are no terms. */
export const SHELLS_IN_BEARING: KindOfFit = {
  name: 'shell bearing, shells in',
  help: 'The same where the row of the bore says Shells in `yes`.',
  terms: [BORE_OF_BEARING, JOURNAL_OF_BEARING],
  functions: { clearance: 'PLAIN_CLEARANCE', tightest: 'PLAIN_CLEARANCE', loosest: 'PLAIN_CLEARANCE' },
  equation: 'bore with its shells in less journal',
  words: [],
  claimedBy: [],
  leader: 'journal',
  leaderNeedsPlace: false,
  isSelected: true,
  isMatched: true,
  standIn: 'strip',
  asked: [],
};
