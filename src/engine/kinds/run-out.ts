/** The total indicator reading of a turned part: any word that Run-outs names. */
import { RUN_OUTS } from '../input-sheets/run-outs.js';
import type { KindOfFit } from './kind-of-fit.js';

export const RUN_OUT: KindOfFit = {
  name: 'run-out',
  help: 'The total indicator reading of a turned part.',
  terms: [{ slot: 'run-out', noun: 'run-out', sign: 1, sheets: [RUN_OUTS.name] }],
  functions: { clearance: 'SPOT_RUN_OUT', tightest: 'SPOT_RUN_OUT', loosest: 'SPOT_RUN_OUT' },
  equation: 'of one station the largest less the smallest reading',
  words: [],
  claimedBy: [RUN_OUTS.name],
  leader: 'run-out',
  leaderNeedsPlace: false,
  strategy: 'dial',
  valueNoun: 'run-out',
  needsOneLimit: true,
  resultsOn: RUN_OUTS.name,
  isMatched: false,
  asked: [
    {
      fit: 'crank run-out',
      option: 'run-outs',
      help: 'positions of crank run-out, or none; blank: none',
      letter: '',
      standard: () => 0,
    },
  ],
};
