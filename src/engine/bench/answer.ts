/** What the bench answers to a typed line. */
import type { LogEntry } from './log-line.js';

export interface Answer {
  /** What was done, and what can be said of it. */
  readonly said: readonly string[];
  /** What was not done, and why. */
  readonly refused: readonly string[];
  readonly entries: readonly LogEntry[];
  readonly action?: 'write' | 'quit';
}

export function said(...words: string[]): Answer {
  return { said: words, refused: [], entries: [] };
}

export function refused(...words: string[]): Answer {
  return { said: [], refused: words, entries: [] };
}
