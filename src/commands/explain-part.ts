/** `--explain PART`: the answer on stdout, or in the JSON document. */
import type { Assessment } from '../engine/assess/assess.js';
import { fastenerGroups } from '../engine/assess/fastener-checks.js';
import type { Book } from '../engine/book/book.js';
import { type Explanation, explain } from '../engine/explain/explain.js';
import { explainFastener, fastenersMeant } from '../engine/explain/explain-fastener.js';
import { explanationLines } from '../engine/explain/explanation-words.js';
import { partsMeant, unknownPart } from '../engine/explain/find-parts.js';
import { UserError } from '../engine/user-error.js';

const rowsOf = ({ parts }: Book) => parts.all();

/** @throws UserError where no part has the name, with the nearest that some have */
export function refuseUnknownPart(asked: string, book: Book): void {
  const { fasteners } = book;
  if (partsMeant(asked, rowsOf(book)).length > 0 || fastenersMeant(asked, fasteners).length > 0) return;
  const others = fasteners.map(({ name }) => name);
  throw new UserError(unknownPart(asked, rowsOf(book), others));
}

/** Every part and fastener of that name. */
export function explanationsOf(asked: string, assessment: Assessment): Explanation[] {
  const { book, fasteners } = assessment;
  const meant = new Set(fastenersMeant(asked, book.fasteners));
  const groups = new Map(
    fastenerGroups(book.fasteners).flatMap((group) => group.map((row) => [row, group] as const)),
  );
  return [
    ...explain(partsMeant(asked, rowsOf(book)), assessment),
    ...fasteners.flatMap((fastener) =>
      meant.has(fastener.row) ? [explainFastener(fastener, groups.get(fastener.row)!)] : [],
    ),
  ];
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
