/** A row of Re-measure, and what its readings are worth. */
export interface Remeasure {
  readonly sheet: string;
  readonly part: string;
  readonly spot: string;
  readonly why: string;
}

export interface Wanted extends Remeasure {
  /** Verdicts that the readings are expected to decide, for each of them. */
  readonly worth: number;
  readonly rank: number;
}
