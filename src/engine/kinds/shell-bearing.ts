/** A journal in a bore through two half-shells: `big end`, `main`, and any word that Shells or Cases name. */
import { CASES } from '../input-sheets/cases.js';
import { SHELLS } from '../input-sheets/shells.js';
import type { KindOfFit } from './kind-of-fit.js';
import { BORE_OF_BEARING, JOURNAL_OF_BEARING, SHELLS_IN_BEARING } from './shells-in-bearing.js';

export const SHELL_BEARING: KindOfFit = {
  name: 'shell bearing',
  help: 'A journal in a bore through two half-shells.',
  terms: [
    BORE_OF_BEARING,
    { slot: 'upper', noun: 'upper shell', sign: -1, sheets: [SHELLS.name] },
    { slot: 'lower', noun: 'lower shell', sign: -1, sheets: [SHELLS.name] },
    JOURNAL_OF_BEARING,
  ],
  functions: {
    clearance: 'SHELL_CLEARANCE',
    tightest: 'TIGHTEST_CLEARANCE',
    loosest: 'LOOSEST_CLEARANCE',
  },
  equation: 'bore less both walls less journal',
  words: ['big end', 'main'],
  claimedBy: [SHELLS.name, CASES.name],
  leader: 'journal',
  leaderNeedsPlace: false,
  strategy: 'half-shells',
  shellsIn: SHELLS_IN_BEARING,
  isSelected: true,
  isMatched: true,
  standIn: 'strip',
  asked: [
    {
      fit: 'big end',
      option: 'big-ends',
      help: 'big-end positions, such as 1-4, or none; blank: one a cylinder',
      letter: 'P',
      standard: (cylinders) => cylinders,
    },
    {
      fit: 'main',
      option: 'mains',
      help: 'main positions, or none; blank: one more than cylinders',
      letter: 'M',
      standard: (cylinders) => cylinders + 1,
    },
  ],
};
