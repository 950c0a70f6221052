/** A journal in a bore through two half-shells: `big end`, `main`, and any word that Shells or Cases name. */
import { CASES } from '../input-sheets/cases.js';
import { JOURNALS } from '../input-sheets/journals.js';
import { RODS } from '../input-sheets/rods.js';
import { SHELLS } from '../input-sheets/shells.js';
import type { KindOfFit } from './kind-of-fit.js';

export const SHELL_BEARING: KindOfFit = {
  name: 'shell bearing',
  help: 'A journal in a bore through two half-shells.',
  terms: [
    { slot: 'bore', noun: 'bore', sign: 1, sheets: [RODS.name, CASES.name] },
    { slot: 'upper', noun: 'upper shell', sign: -1, sheets: [SHELLS.name] },
    { slot: 'lower', noun: 'lower shell', sign: -1, sheets: [SHELLS.name] },
    { slot: 'journal', noun: 'journal', sign: -1, sheets: [JOURNALS.name] },
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
