/** How far the matched sets are proved the best. */
import type { MatchResult, StageResult } from '../../maths/matching/stock.js';

/** How far what an aim reached is from its proven best; 0 is proved. */
export function gapOf({ reached, bound }: StageResult): number {
  return Math.abs(bound - reached);
}

/** Whether no other choice of sets is better; so also where nothing was matched. */
export function isProved({ matching }: { readonly matching: MatchResult | undefined }): boolean {
  return matching?.stages.every((stage) => gapOf(stage) === 0) ?? true;
}
