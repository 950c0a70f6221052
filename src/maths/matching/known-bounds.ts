/** Bounds of an aim that need no linear program. */
import type { Aim } from './aims.js';
import type { Model } from './model-columns.js';
import type { Reached } from './stage.js';

/**
 * What no sets can beat, whatever they are: known without any search.
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
 * What another search has proven of an aim, in its steps, where both reach the same of the aims before it. The steps of
 * the other search may be others: those of a large one are smaller.
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
