/** What is said below the aims of matching: how sure it is, of which books, what would be next. */
import { inUnit } from '../../maths/units.js';
import type { Assessment } from '../assess/assess.js';
import { nextEngine } from '../assess/suggestions.js';
import { countText } from '../assess/words.js';
import { reasonOf } from '../book/problems.js';
import { expectedOutsideSentence, movedSentence } from './moved-words.js';
import { missingSentence, stopSentence } from './proof-words.js';

export function matchingNotes(assessment: Assessment): string[] {
  const { matching, book, stock } = assessment;
  if (!matching) {
    const refused = book.setup.bad.map(reasonOf);
    const why = refused.length > 0 ? `not made. ${refused.join('; ')}` : 'the book has no engine to match.';
    return [`Matched sets: ${why}`];
  }
  const unit = book.setup.lengthUnit;
  const next = nextEngine(assessment);
  const sentences = [
    `Of ${countText(stock.stock.engines.length, 'engine')} in the stock. A gap of 0 means proved.`,
    movedSentence(assessment),
    expectedOutsideSentence(assessment),
    stopSentence(assessment),
    missingSentence(assessment),
    next && `Closest to complete: ${next}. Sheet Not matched says what it needs.`,
    matching.grid === undefined
      ? undefined
      : `Matched on a grid of ${inUnit(matching.grid, unit)} ${unit}, rounded so that only allowed fits are made.`,
  ];
  return sentences.flatMap((sentence) => sentence ?? []);
}
