/** `--explain PART`: the answer on stdout, or in the JSON document. */
import type { Assessment } from '../engine/assess/assess.js';
import type { Book } from '../engine/book/book.js';
import { type Explanation, explain } from '../engine/explain/explain.js';
import { explanationLines } from '../engine/explain/explanation-words.js';
import { partsMeant, unknownPart } from '../engine/explain/find-parts.js';
import { UserError } from '../engine/user-error.js';

const rowsOf = ({ parts }: Book) => parts.all();

/** @throws UserError where no part has the name, with the nearest that some have */
export function refuseUnknownPart(asked: string, book: Book): void {
  if (partsMeant(asked, rowsOf(book)).length === 0) throw new UserError(unknownPart(asked, rowsOf(book)));
}

/** Every part of that name. */
export function explanationsOf(asked: string, assessment: Assessment): Explanation[] {
  return explain(partsMeant(asked, rowsOf(assessment.book)), assessment);
}

/** The sentences, an empty line between one part and the next. */
export function explanationText(explanations: readonly Explanation[]): string {
  return explanations.map((each) => explanationLines(each).join('\n')).join('\n\n');
}

/** The key `explain` of the JSON document. */
export function explanationJson(asked: string, explanations: readonly Explanation[]) {
  return {
    asked,
    parts: explanations.map((each) => ({
      sheet: each.sheet,
      part: each.part,
      now: each.now,
      lists: each.lists.map(({ what, as, of, open }) => ({ what, as: as ?? null, of, open })),
      sentences: explanationLines(each),
    })),
  };
}
