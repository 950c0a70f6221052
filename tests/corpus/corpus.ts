/** All books of the corpus. */
import type { CorpusBook } from './corpus-book.js';
import { DRAWN_BOOKS } from './drawn-books.js';
import { SHEET_BOOKS } from './sheet-books.js';
import { TYPED_BOOKS } from './typed-books.js';

export const CORPUS: readonly CorpusBook[] = [...SHEET_BOOKS, ...TYPED_BOOKS, ...DRAWN_BOOKS];
