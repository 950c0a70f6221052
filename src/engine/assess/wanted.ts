/** A row of Re-measure before the rows are ordered. */
import type { Remeasure } from './remeasure-words.js';

export interface Wanted extends Remeasure {
  /** Verdicts that the readings are expected to decide, for each of them. */
  readonly worth: number;
  /** Which comes first of those that are worth as much: 0 bad cells, then slips of the hand, what was not read, repeats. */
  readonly rank: number;
}
