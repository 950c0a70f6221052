/** What is said of every book, whatever is done with its results: refused cells, notices, a search that stopped. */
import type { Assessment } from '../engine/assess/assess.js';
import { sentenceOf } from '../engine/book/problems.js';
import { missingSentence, stopSentence } from '../engine/words/proof-words.js';
import { say } from './messages.js';

export function sayFindings(assessment: Assessment): void {
  const { book } = assessment;
  const { model } = book;
  for (const bad of book.bad) say(sentenceOf(model.file, bad));
  for (const notice of book.notices) say(notice);
  for (const sentence of [stopSentence(assessment), missingSentence(assessment)]) {
    if (sentence !== undefined) say(`${model.file}: ${sentence}`);
  }
}
