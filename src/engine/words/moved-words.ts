/** How many parts the sets of a single engine move, and which; and how many of all sets may lie outside. */
import type { Assessment } from '../assess/assess.js';
import { movedParts } from '../assess/moved-parts.js';
import { countText } from '../assess/words.js';
import { listed } from './listed.js';

/** Undefined where the sets are not of one engine. */
export function movedSentence({ sets, fits, stock }: Assessment): string | undefined {
  if (stock.stock.engines.length !== 1 || sets.length === 0) return undefined;
  const moved = movedParts(sets, fits);
  const bought = sets.some(({ found }) => [found.upper, found.lower].some(({ from }) => from === 'new'));
  if (moved.length === 0)
    return bought ? 'No part has to move; what is bought goes in.' : 'No part has to move.';
  const where = moved.map(({ part, kind, set }) => `${kind} ${part.row.name} to ${set.fit} ${set.position}`);
  return `${countText(moved.length, 'part')} ${moved.length === 1 ? 'moves' : 'move'}: ${listed(where)}.`;
}

/** Of a set without gauges nothing is expected outside: it was allowed by its sizes alone. */
export function expectedOutsideSentence({ sets }: Assessment): string | undefined {
  if (sets.length === 0) return undefined;
  const outside = sets.reduce((sum, { chance }) => sum + (1 - chance), 0);
  return `Expected outside: ${outsideText(outside)} of ${countText(sets.length, 'fit')}.`;
}

function outsideText(outside: number): string {
  if (outside > 0 && outside < 0.05) return 'less than 0.1';
  return outside.toFixed(1).replace(/\.0$/, '');
}
