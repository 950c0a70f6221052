/** The fits of one engine and fit together: how many got which verdict, their extremes, the spread of neighbours. */
import { neighbourSpread } from '../../maths/clearance.js';
import type { Grain } from '../../maths/grain.js';
import { nameKey } from '../book/names.js';
import { groupBy } from './context.js';
import type { FitResult } from './fit.js';
import type { FitStatus } from './fit-verdicts.js';

/** A run-out over its roof is counted with what is loose. */
export type CountedStatus = Exclude<FitStatus, 'beyond limits'>;

export interface NeighbourResult {
  readonly engine: string;
  readonly fit: string;
  readonly fits: readonly FitResult[];
  /** How many of them have each status. */
  readonly counts: Readonly<Record<CountedStatus, number>>;
  /** How many have no verdict, since something of them is not known. */
  readonly waiting: number;
  /** Of the computed fits. */
  readonly tightest: Grain | undefined;
  readonly loosest: Grain | undefined;
  /** The largest difference of clearance, or of run-out, between computed fits in consecutive rows. */
  readonly spread: Grain | undefined;
  readonly limit: Grain | undefined;
  /** Undefined without a spread or its limit. */
  readonly spreadStatus: 'within its limit' | 'above its limit' | undefined;
}

const WAITING = ['bad reading', 'unclear', 'not measured', 'no limits'] as const;

/** In the order in which engines and fits first stand. */
export function neighbourResults(fits: readonly FitResult[]): NeighbourResult[] {
  const numbered = fits.map((fit, row) => ({ fit, row }));
  const groups = groupBy(numbered, ({ fit }) => `${nameKey(fit.engine)}\u0000${nameKey(fit.fit)}`);
  return [...groups.values()].map((group): NeighbourResult => {
    const own = group.map(({ fit }) => fit);
    const { engine, fit } = own[0]!;
    const counts = countsOf(own);
    // Gaps beside each other wear by themselves.
    const spread =
      own[0]!.kind.strategy === 'feelers' ? undefined : neighbourSpread(inConsecutiveRows(group));
    const limit = own.find(({ limits }) => limits?.neighbourSpread !== undefined)?.limits?.neighbourSpread;
    return {
      ...{ engine, fit, fits: own, counts },
      waiting: WAITING.reduce((sum, status) => sum + counts[status], 0),
      ...extremesOf(own),
      ...{ spread, limit },
      spreadStatus:
        limit === undefined || spread === undefined
          ? undefined
          : spread > limit
            ? 'above its limit'
            : 'within its limit',
    };
  });
}

function countsOf(fits: readonly FitResult[]): Record<CountedStatus, number> {
  const counts: Record<CountedStatus, number> = {
    'bad reading': 0,
    unclear: 0,
    'not measured': 0,
    'no limits': 0,
    'in range': 0,
    'within service limit': 0,
    tight: 0,
    loose: 0,
    undecided: 0,
  };
  for (const { status } of fits) counts[status === 'beyond limits' ? 'loose' : status] += 1;
  return counts;
}

function extremesOf(fits: readonly FitResult[]): Pick<NeighbourResult, 'tightest' | 'loosest'> {
  let tightest: Grain | undefined;
  let loosest: Grain | undefined;
  for (const { clearance } of fits) {
    if (!clearance) continue;
    if (tightest === undefined || clearance.tightest < tightest) tightest = clearance.tightest;
    if (loosest === undefined || clearance.loosest > loosest) loosest = clearance.loosest;
  }
  return { tightest, loosest };
}

/** Clearances row by row, with a hole wherever rows of other fits stand between. Strip readings are not computed. */
function inConsecutiveRows(group: readonly { fit: FitResult; row: number }[]): (Grain | undefined)[] {
  return group.flatMap(({ fit, row }, place) => {
    const clearance = fit.isStrip ? undefined : fit.clearance?.clearance;
    const before = group[place - 1];
    return before && before.row !== row - 1 ? [undefined, clearance] : [clearance];
  });
}
