/** A distance measured on the assembly: end float, ring gap, valve clearance, and any word that Gaps names. */
import { GAPS } from '../input-sheets/gaps.js';
import type { AskedPlaces, KindOfFit } from './kind-of-fit.js';

const asked = (fit: string, option: string, help: string, also: readonly string[] = []): AskedPlaces => ({
  fit,
  ...(also.length > 0 && { also }),
  option,
  help: `positions of ${help}, or none; blank: none`,
  letter: '',
  standard: () => 0,
});

export const GAP: KindOfFit = {
  name: 'gap',
  help: 'A distance measured on the assembly, by readings or by feelers.',
  terms: [{ slot: 'gap', noun: 'gap', sign: 1, sheets: [GAPS.name] }],
  functions: { clearance: 'GAP_MEAN', tightest: 'GAP_TIGHTEST', loosest: 'GAP_LOOSEST' },
  equation: 'the gap',
  words: [],
  claimedBy: [GAPS.name],
  leader: 'gap',
  leaderNeedsPlace: false,
  strategy: 'feelers',
  valueNoun: 'gap',
  needsOneLimit: true,
  resultsOn: GAPS.name,
  isMatched: false,
  asked: [
    asked('end float', 'end-floats', 'end float, as in crank'),
    asked('ring gap top', 'ring-gaps', 'ring gaps (top and second ring)', ['ring gap second']),
    asked('rod side clearance', 'rod-sides', 'rod side clearance'),
    asked('valve in', 'valves', 'valve clearance (in and ex)', ['valve ex']),
  ],
};
