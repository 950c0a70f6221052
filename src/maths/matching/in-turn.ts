/** Stocks that have nothing to share, searched one after the other. */
import type { Found } from './independent.js';
import type { Stock } from './stock.js';
import type { Progress, Started } from './whole-stock.js';

/** The different ones of a property of the journals, in words. */
const inWords = ({ engines }: Stock, property: 'engineType' | 'fit') =>
  [...new Set(engines.flatMap(({ journals }) => journals.map((journal) => journal[property])))].join(', ');

/** The time shared out among them. */
export function finishInTurn<Own extends Found>(
  all: readonly Started[],
  remaining: () => number,
  onProgress: Progress,
  toldApartBy: 'engineType' | 'fit',
  finishOne: (started: Started, remaining: () => number, onProgress: Progress) => Own,
): Own[] {
  // The easy ones first: what they leave of their share of the time goes to the others.
  const inTurn = [...all].sort((a, b) => a.problem.gaps.length - b.problem.gaps.length);
  return inTurn.map((started, place) => {
    const others = inTurn.length - 1 - place;
    const rest = (remaining() * others) / (others + 1);
    const label = all.length > 1 ? `${inWords(started.stock.inner, toldApartBy)}: ` : '';
    return finishOne(
      started,
      () => remaining() - rest,
      (message) => onProgress(label + message),
    );
  });
}
