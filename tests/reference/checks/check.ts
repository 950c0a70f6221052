/** One printed value of an outside source beside what the program computes. */
import type { Published } from '../published.js';

export type Value = string | number | readonly number[];

export interface ReferenceCheck {
  /** Id of the item, or the row of a printed table. */
  readonly item: string;
  readonly source: string;
  readonly what: string;
  readonly printed: Value;
  readonly computed: () => Value;
  /** Of each number, by the digits that were printed. */
  readonly tolerance: number;
  /**
   * Where the printed value does not follow from the source's own numbers (a misprint, a slip of units, a fit by
   * selection): what the program says of the row when it is typed in. The value is then not to be reproduced.
   */
  readonly contradiction?: () => string;
}

export function checkOf(
  { id, source }: Published,
  what: string,
  printed: Value,
  tolerance: number,
  computed: () => Value,
): ReferenceCheck {
  return { item: id, source, what, printed, tolerance, computed };
}

export function agrees({ printed, tolerance }: ReferenceCheck, computed: Value): boolean {
  if (typeof printed === 'string' || typeof computed === 'string') return printed === computed;
  const [these, those] = [[printed].flat(), [computed].flat()] as number[][];
  return (
    these!.length === those!.length &&
    // A double of a decimal is off by less than this.
    these!.every((value, place) => Math.abs(value - those![place]!) <= tolerance + 1e-12 * Math.abs(value))
  );
}
