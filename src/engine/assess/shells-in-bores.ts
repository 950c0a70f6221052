/**
 * Half-shells that are in a bore which was measured with them. They stay with it, their walls are in its size, and they
 * serve nowhere else.
 */
import type { Book, FitRow, PartRow } from '../book/book.js';
import type { BySheet } from '../book/by-sheet.js';
import { nameKey } from '../book/names.js';
import { termOf } from '../kinds/kind-of-fit.js';
import { sheetsOfTerm } from '../kinds/sheets-of-term.js';
import { SHELL_BEARING } from '../kinds/shell-bearing.js';
import { BORE_OF_BEARING } from '../kinds/shells-in-bearing.js';

type Place = Pick<PartRow, 'engine' | 'fit' | 'position'>;

/** The parts of a fit that this concerns. */
type RowsOfSlots = Partial<Record<'bore' | 'upper' | 'lower', { readonly row: PartRow }>>;

const placeKey = ({ engine, fit, position }: Place) => [engine, fit, position].map(nameKey).join('\u0000');
const isPlaced = ({ engine, position }: Place) => engine !== '' && position !== '';

export class ShellsInBores {
  private readonly bores = new Map<PartRow, PartRow>();

  /** @param fits the user's rows of Fits, which may name the shells of a bore */
  constructor(parts: BySheet<PartRow>, fits: readonly FitRow[] | undefined) {
    const measured = parts.ofAll(BORE_OF_BEARING.sheets).filter(({ hasShells }) => hasShells);
    if (measured.length === 0) return;
    const shells = parts.ofAll(termOf(SHELL_BEARING, 'upper')!.sheets);
    this.takeNamed(measured, shells, fits ?? []);
    const atPlace = new Map(
      measured
        .filter((bore) => bore.usable && isPlaced(bore))
        .reverse()
        .map((bore) => [placeKey(bore), bore]),
    );
    for (const shell of shells) {
      const bore = isPlaced(shell) ? atPlace.get(placeKey(shell)) : undefined;
      if (bore) this.take(shell, bore);
    }
  }

  /** The bore that a shell is in; undefined where it is in none, or its bore was measured bare. */
  boreOf(shell: PartRow): PartRow | undefined {
    return this.bores.get(shell);
  }

  /** Why the shells of a fit may not be its own: they are in another bore. */
  shellsElsewhere({ bore, upper, lower }: RowsOfSlots): string[] {
    return [...new Set([upper, lower])].flatMap((part) => {
      const own = part && this.boreOf(part.row);
      if (!own || own === bore?.row) return [];
      return [
        `${part.row.name} is in ${own.name}, which was measured with its shells in: name another shell`,
      ];
    });
  }

  private take(shell: PartRow, bore: PartRow): void {
    if (!this.bores.has(shell)) this.bores.set(shell, bore);
  }

  private takeNamed(measured: readonly PartRow[], shells: readonly PartRow[], fits: readonly FitRow[]): void {
    const named = new Map(shells.toReversed().map((shell) => [nameKey(shell.name), shell]));
    for (const fit of fits) {
      const sheets = sheetsOfTerm(BORE_OF_BEARING, fit.fit);
      const isMeant = (bore: PartRow) =>
        fit.bore === undefined
          ? bore.usable && isPlaced(bore) && placeKey(bore) === placeKey(fit)
          : sheets.includes(bore.sheet) && nameKey(bore.name) === nameKey(fit.bore);
      const names = [fit.upper, fit.lower].filter((name) => name !== undefined);
      const bore = names.length > 0 ? measured.find(isMeant) : undefined;
      if (!bore) continue;
      for (const name of names) {
        const shell = named.get(nameKey(name));
        if (shell) this.take(shell, bore);
      }
    }
  }
}

const known = new WeakMap<Book, ShellsInBores>();

/** Looks up which shells of a book are in which bores. */
export function shellsInBoresOf(book: Book): ShellsInBores {
  const found = known.get(book) ?? new ShellsInBores(book.parts, book.fits);
  known.set(book, found);
  return found;
}
