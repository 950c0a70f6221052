/**
 * Whether a fastener is to be renewed, by what its maker asks. The limit is the maker's: without one nothing is said of
 * the bolt's use.
 *
 * Source of the decision at a limit: ISO 14253-1:2017, as for parts (src/maths/conformity.ts).
 */
import { type LimitCheck, partVerdict } from './conformity.js';

/** When the maker has it renewed. */
export type Renewal = 'always' | 'by length' | 'by neck';

export type ProvenFastenerVerdict = 'renew' | 'not measured' | 'undecided' | 'within limits' | 'no limits';

export interface FastenerSizes {
  /** The longest of its length readings. */
  readonly longest: number | undefined;
  /** The thinnest of its neck readings. */
  readonly thinnest: number | undefined;
}

/** @param checks one for each limit that is typed, also where its reading is missing */
export function fastenerVerdict(
  renew: Renewal | undefined,
  { longest, thinnest }: FastenerSizes,
  checks: readonly LimitCheck[],
): ProvenFastenerVerdict {
  const verdict = partVerdict(checks);
  if (renew === 'always' || verdict === 'beyond limits') return 'renew';
  const isUnread =
    (renew === 'by length' && longest === undefined) || (renew === 'by neck' && thinnest === undefined);
  return isUnread ? 'not measured' : verdict;
}
