/** What is tidied up where a run is broken off, by Ctrl-C or otherwise. */
import { removeTemporaries } from '../io/temporaries.js';
import { endProgress } from './messages.js';
import { sayAtEnd } from './output-faults.js';

const tasks: (() => void)[] = [];

/** Has something done at once before the program ends by a signal. */
export function whenBrokenOff(task: () => void): void {
  tasks.push(task);
}

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** From now on nothing half-written stays where the run is broken off; the program ends as it would have ended. */
export function tidyOnSignals(): void {
  for (const signal of SIGNALS) process.once(signal, tidy);
}

function tidy(signal: NodeJS.Signals): void {
  endProgress();
  for (const task of tasks) task();
  removeTemporaries();
  sayAtEnd(`Ended by ${signal}: a book that was not written yet is as it was; run again for the rest.`);
  // A shell then sees 128 and the signal's number.
  process.kill(process.pid, signal);
}

/**
 * Has a signal end a command's waiting rather than the program.
 * @returns what gives the signals back
 */
export function takeSignals(end: () => void): () => void {
  for (const signal of SIGNALS) {
    process.off(signal, tidy);
    process.on(signal, end);
  }
  return () => {
    for (const signal of SIGNALS) process.off(signal, end);
    tidyOnSignals();
  };
}
