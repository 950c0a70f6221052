/** Bounds of an aim that need no linear program. */
import type { Aim } from './aims.js';
import type { Model } from './model-columns.js';
import type { Reached } from './stage.js';

/**
 * A bound that counts the journals, engines and kept pairs that allowed fits leave possible.
 * @param complete how many engines are complete
 */
export function plainBound({ problem, columns }: Model, aim: Aim, complete: number): number {
  const { spaces, journals, stock } = problem;
  const completable = columns.flatMap(({ meaning }) => (meaning.is === 'engine' ? [meaning.engine] : []));
  if (aim.amount === 'completeEngines') return 0 - completable.length;
  if (aim.amount === 'kept') return 0 - new Set(problem.kept.map(({ journal }) => journal)).size;
  if (aim.amount !== 'filledBeyond') return 0;
  const sizes = completable.map((engine) => stock.engines[engine]!.journals.length).sort((a, b) => a - b);
  const inComplete = sizes.slice(0, complete).reduce((sum, size) => sum + size, 0);
  const open = new Set(spaces.map(({ journal }) => journal));
  return [...open].reduce((bound, journal) => bound - journals[journal]!.journals.length, inComplete);
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
