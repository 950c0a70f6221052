/**
 * Whether a maker's sizes, shells and clearances can all be true where no selection says which shell goes where.
 *
 *   space     bore less journal: least = B_min − J_max, most = B_max − J_min
 *   clearance space less both walls
 *
 * One shell alone goes into every space; of several, each space needs one that suits it.
 *
 * Source: the general principle of worst-case tolerance stacks (ASME Y14.5, arithmetic tolerancing).
 */
import type { Grain } from './grain.js';

/** From the least to the greatest. */
export interface Extent {
  readonly min: Grain;
  readonly max: Grain;
}

export type WorstCaseFinding =
  | { readonly kind: 'one shell leaves'; readonly worst: Extent }
  | { readonly kind: 'no shell for'; readonly which: 'least' | 'largest'; readonly space: Grain };

/** @param walls what both walls of a place take up together, a range for each choice of shells; at least one */
export function checkWithoutSelection(
  space: Extent,
  walls: readonly Extent[],
  clearance: Extent,
): WorstCaseFinding[] {
  const left = (from: Grain, to: Grain, wall: Extent): Extent => ({
    min: from - wall.max,
    max: to - wall.min,
  });
  const isWithin = ({ min, max }: Extent) => min >= clearance.min && max <= clearance.max;
  if (walls.length === 1) {
    const worst = left(space.min, space.max, walls[0]!);
    return isWithin(worst) ? [] : [{ kind: 'one shell leaves', worst }];
  }
  const spaces = [
    { which: 'least', space: space.min },
    { which: 'largest', space: space.max },
  ] as const;
  return spaces
    .filter((one) => !walls.some((wall) => isWithin(left(one.space, one.space, wall))))
    .map((one) => ({ kind: 'no shell for', ...one }));
}

/** Whether bores less journals are the clearances themselves, so that no wall has room between them. */
export function leavesNoWall(space: Extent, clearance: Extent): boolean {
  return space.min === clearance.min && space.max === clearance.max;
}
