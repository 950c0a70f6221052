/** Which kind of fit a word of the column Fit means in a book. */
import type { Book } from '../book/book.js';
import type { BySheet } from '../book/by-sheet.js';
import { nameKey } from '../book/names.js';
import { kindsOfFit } from '../kinds/index.js';
import type { KindOfFit } from '../kinds/kind-of-fit.js';
import { SHELL_BEARING } from '../kinds/shell-bearing.js';

export class WordsOfFits {
  private readonly claims = new Map<string, Map<KindOfFit, string[]>>();

  /** @param parts of the book: some sheets make words of Fit their kind's */
  constructor(parts: BySheet<{ readonly row: { readonly fit: string } }>) {
    for (const kind of kindsOfFit()) {
      for (const word of kind.words) this.claim(word, kind, '');
      for (const sheet of kind.claimedBy) {
        for (const fit of new Set(parts.of(sheet).map(({ row }) => row.fit)))
          if (fit !== '') this.claim(fit, kind, sheet);
      }
    }
  }

  private claim(word: string, kind: KindOfFit, sheet: string): void {
    const key = nameKey(word);
    const kinds = this.claims.get(key) ?? new Map<KindOfFit, string[]>();
    this.claims.set(key, kinds);
    const sheets = kinds.get(kind) ?? [];
    kinds.set(kind, sheets.includes(sheet) ? sheets : [...sheets, sheet]);
  }

  /** The kind that claims the word first. */
  claimantOf(word: string): KindOfFit | undefined {
    const [first] = this.claims.get(nameKey(word))?.keys() ?? [];
    return first;
  }

  /** The same; a word that nobody claims is that of a bearing not yet complete. */
  kindOf(word: string): KindOfFit {
    return this.claimantOf(word) ?? SHELL_BEARING;
  }

  /** Why a word does not say which kind is meant; undefined where it does. */
  faultOf(word: string): string | undefined {
    const kinds = this.claims.get(nameKey(word));
    if (!kinds || kinds.size < 2) return undefined;
    const sheets = [...kinds].map(
      ([kind, own]) => `${kind.name} (${own.filter((sheet) => sheet !== '').join(', ') || 'the word'})`,
    );
    return `Fit ${word} is claimed by ${sheets.join(' and by ')}: name one of the two otherwise`;
  }
}

const wordsOf = new WeakMap<Book, WordsOfFits>();

/** The words of a book, looked through once. */
export function wordsOfBook(book: Book): WordsOfFits {
  const words = wordsOf.get(book) ?? new WordsOfFits(book.parts.map((rows) => rows.map((row) => ({ row }))));
  wordsOf.set(book, words);
  return words;
}
