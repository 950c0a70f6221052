/** What is tidied up where a run is broken off, by Ctrl-C or otherwise. */
import { removeTemporaries } from '../io/temporaries.js';

const tasks: (() => void)[] = [];

/** Has something done at once before the program ends by a signal. */
export function whenBrokenOff(task: () => void): void {
  tasks.push(task);
}

/** From now on nothing half-written stays where the run is broken off; the program ends as it would have ended. */
export function tidyOnSignals(): void {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.once(signal, () => {
      for (const task of tasks) task();
      removeTemporaries();
      process.kill(process.pid, signal);
    });
  }
}
