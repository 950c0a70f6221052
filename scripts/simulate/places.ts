/**
 * Where a limit lies between two steps of the gauges: what it does to fits on it.
 *
 * Readings of one step s add up to a clearance that is a whole number of steps. So the least clearance that is called
 * `in range` is the first whole step a at or above min + g, the greatest the last whole step b at or below max − g; `tight`
 * begins at the last whole step t under min − G:
 *
 *   in range  Φ((b − min + s/2)/u) − Φ((a − min − s/2)/u)        u = √(u_c² − s²/12)
 *   tight     Φ((t − min + s/2)/u)
 *
 * They swing about 1 − Φ(z) by what half a step is worth: the guard is of a clearance that can have any value.
 */
import { normalProbability } from '../../src/maths/normal.js';
import { drawsOf } from './draws.js';
import { MIN, stepOf } from './judge.js';
import { type Judgement, limitsAt } from './judge-by-maths.js';
import { GRAINS_PER_MICROMETRE } from './measured-part.js';
import { countLimit, judgeFits, type LimitCounts } from './promises.js';
import type { SetUp } from './set-ups.js';

export interface PlaceCounts extends LimitCounts {
  readonly setUp: SetUp;
  /** How far above a whole step the limit lies, in steps. */
  readonly place: number;
  /** The shares that the equations give. */
  expected: { inRange: number; refused: number };
}

/** Fits of one spot a part at 20 °C whose true clearance is Clearance min. */
export function placeCounts(setUp: SetUp, place: number, fits: number, seed: number): PlaceCounts {
  const step = stepOf(setUp);
  const counts: PlaceCounts = {
    ...{ setUp, place, fits: 0, inRange: 0, refused: 0 },
    expected: { inRange: 0, refused: 0 },
  };
  judgeFits(
    drawsOf(seed),
    setUp,
    fits,
    () => ({ tightest: MIN }),
    () => place * step,
    setUp.gauges,
    ({ result, shift }) => {
      countLimit(counts, result, 'tight');
      counts.expected = expectedShares(result, step, shift);
    },
  );
  return counts;
}

function expectedShares({ variance, guards }: Judgement, step: number, shift: number) {
  const steps = (grains: number) => grains / GRAINS_PER_MICROMETRE / step;
  const [limits, u] = [limitsAt(shift), Math.sqrt(steps(Math.sqrt(variance)) ** 2 - 1 / 12)];
  const below = (edge: number) => normalProbability((edge - steps(limits.min)) / u);
  const first = Math.ceil(steps(limits.min + guards.inside));
  const last = Math.floor(steps(limits.max - guards.inside));
  const tight = Math.ceil(steps(limits.min - guards.outside)) - 1;
  return {
    inRange: last < first ? 0 : below(last + 0.5) - below(first - 0.5),
    refused: below(tight + 0.5),
  };
}
