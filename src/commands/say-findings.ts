/** What is said of every book, whatever is done with its results: refused cells, slips of the hand, notices, a search that stopped. */
import type { Assessment } from '../engine/assess/assess.js';
import { doubtSentence } from '../engine/assess/doubt-words.js';
import { sentenceOf } from '../engine/book/problems.js';
import { missingSentence, stopSentence } from '../engine/words/proof-words.js';
import { say } from './messages.js';

export function sayFindings(assessment: Assessment): void {
  const { book, doubts } = assessment;
  const { model } = book;
  for (const bad of book.bad) say(sentenceOf(model.file, bad));
  for (const doubt of doubts) say(doubtSentence(doubt, book));
  for (const notice of book.notices) say(notice);
  for (const sentence of [stopSentence(assessment), missingSentence(assessment)]) {
    if (sentence !== undefined) say(`${model.file}: ${sentence}`);
  }
}
