/** One part in another: a piston in its cylinder, a shaft in its bush, a guide pressed into its head. */
import { BORES } from '../input-sheets/bores.js';
import { CYLINDERS } from '../input-sheets/cylinders.js';
import { PISTONS } from '../input-sheets/pistons.js';
import { SHAFTS } from '../input-sheets/shafts.js';
import type { AskedPlaces, KindOfFit } from './kind-of-fit.js';

const asked = (fit: string, option: string, letter: string): AskedPlaces => ({
  fit,
  option,
  help: `${fit} positions, such as 1-4, or none; blank: none`,
  letter,
  standard: () => 0,
});

export const PLAIN_FIT: KindOfFit = {
  name: 'plain fit',
  help: 'An inner part in an outer one; negative is a press fit.',
  terms: [
    { slot: 'bore', sign: 1, sheets: [CYLINDERS.name, BORES.name] },
    { slot: 'journal', sign: -1, sheets: [PISTONS.name, SHAFTS.name] },
  ],
  functions: { clearance: 'PLAIN_CLEARANCE', tightest: 'PLAIN_CLEARANCE', loosest: 'PLAIN_CLEARANCE' },
  equation: 'outer less inner',
  words: ['piston'],
  claimedBy: [BORES.name, SHAFTS.name],
  leader: 'bore',
  leaderNeedsPlace: true,
  isMatched: false,
  asked: [
    asked('piston', 'pistons', 'Cyl '),
    asked('small end', 'small-ends', 'Small end '),
    asked('guide', 'guides', 'Guide '),
    asked('cam', 'cams', 'Cam '),
  ],
};
