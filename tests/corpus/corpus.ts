/** All books of the corpus. */
import type { CorpusBook } from './corpus-book.js';
import { DRAWN_BOOKS } from './drawn-books.js';
import { FILE_BOOKS } from './file-books.js';
import { NEWER_BOOKS } from './newer-books.js';
import { SHEET_BOOKS } from './sheet-books.js';
import { TYPED_BOOKS } from './typed-books.js';

export const CORPUS: readonly CorpusBook[] = [
  ...SHEET_BOOKS,
  ...TYPED_BOOKS,
  ...DRAWN_BOOKS,
  ...NEWER_BOOKS,
  ...FILE_BOOKS,
];
