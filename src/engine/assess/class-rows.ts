/** Rows of Classes as size classes, and lengths in the sentences about them. */
import type { SizeClass } from '../../maths/classes.js';
import type { Grain } from '../../maths/grain.js';
import type { Book, ClassRow } from '../book/book.js';
import { lengthText } from './words.js';

/** The size class of a row; undefined where it has a bad or a blank cell. */
export function sizeClassOf({ mark, from, to, bad }: ClassRow): SizeClass | undefined {
  if (bad.length > 0 || mark === undefined || from === undefined || to === undefined) return undefined;
  return { mark, from, to };
}

/** A length in words. */
export type Text = (length: Grain) => string;

export function textIn(book: Book): Text {
  return (length) => lengthText(length, book.setup.lengthUnit);
}
