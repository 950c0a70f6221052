/** Independent searches, one after the other. */
import type { Solver } from './solver.js';
import { type Finished, finish, type Progress, type Started } from './whole-stock.js';

/** A stock, with the words that tell it from the others in messages of progress. */
export interface Labelled {
  readonly started: Started;
  readonly label: string;
}

/** With fewer seconds left over no search is repeated. */
const LEAST_SECONDS = 1;

/**
 * The best sets of every stock. The time is shared out among them; what is left over goes to those whose share was too
 * short.
 */
export function finishInTurn(
  all: readonly Labelled[],
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
): ReadonlyMap<Started, Finished> {
  const found = new Map<Started, Finished>();
  // The small ones first: what they leave of their share goes to the others.
  let open = [...all].sort((a, b) => a.started.problem.spaces.length - b.started.problem.spaces.length);
  while (open.length > 0) {
    for (const [place, { started, label }] of open.entries()) {
      const others = open.length - 1 - place;
      const rest = (remaining() * others) / (others + 1);
      const before = found.get(started);
      if (before) onProgress(`${label}once more, in the time that is left over`);
      const tell = (message: string) => onProgress(label + message);
      found.set(
        started,
        finish(started, solver, () => remaining() - rest, tell, before),
      );
    }
    open = remaining() > LEAST_SECONDS ? open.filter(({ started }) => found.get(started)!.isCutShort) : [];
  }
  return found;
}
