/** Bounds of an aim that need no linear program. */
import type { Aim } from './aims.js';
import type { Model } from './model-columns.js';
import type { Reached } from './stage.js';

/**
 * A bound that counts the journals, engines, kept pairs and rods that allowed fits leave possible.
 * @param complete how many engines are complete
 * @param held the aims before it
 */
export function plainBound(
  { problem, columns }: Model,
  aim: Aim,
  complete: number,
  held: readonly Reached[],
): number {
  const { spaces, journals, stock, kept, homes } = problem;
  const completable = columns.flatMap(({ meaning }) => (meaning.is === 'engine' ? [meaning.engine] : []));
  const fillable = (isCounted: (journal: number) => boolean) =>
    [...new Set(spaces.map(({ journal }) => journal))]
      .filter(isCounted)
      .reduce((sum, journal) => sum + journals[journal]!.journals.length, 0);
  const isHopeless = (journal: number) => journals[journal]!.isHopeless;
  const sizes = completable.map((engine) => stock.engines[engine]!.journals.length).sort((a, b) => a - b);
  const inComplete = sizes.slice(0, complete).reduce((sum, size) => sum + size, 0);
  switch (aim.amount) {
    case 'completeEngines':
      return 0 - completable.length;
    case 'kept':
      return 0 - new Set(kept.map(({ journal }) => journal)).size;
    case 'stayed':
      return 0 - new Set(homes.map(({ journal }) => journal)).size;
    case 'inRange':
      return 0 - fillable(() => true);
    case 'filledOpen':
      return inComplete - fillable((journal) => !isHopeless(journal));
    case 'filledBeyond': {
      // Hopeless engines come on top of what is possible without them.
      const open = held.find((each) => each.aim.amount === 'filledOpen');
      return open ? open.bound - fillable(isHopeless) : inComplete - fillable(() => true);
    }
    default:
      return 0;
  }
}

/**
 * The bound that another search has proven of an aim, in the steps of this one: those of a large search are smaller. It
 * holds where both searches reach the same values of the aims before it; else it is undefined.
 */
export function knownBound(
  aim: Aim,
  known: readonly Reached[],
  stages: readonly Reached[],
): number | undefined {
  const before = known[stages.length];
  const isAlike = ({ aim: own, reached }: Reached, place: number) =>
    known[place]!.reached * known[place]!.aim.step === reached * own.step;
  if (!before || !stages.every(isAlike)) return undefined;
  return Math.ceil((before.bound * before.aim.step) / aim.step);
}
