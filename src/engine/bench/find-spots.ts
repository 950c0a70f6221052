/** Finds what a user names: `P1`, `Rods 1`, `P1 A 90`. */
import { headerKey } from '../book/names.js';
import { quoted } from '../book/problems.js';
import { type BenchBook, type BenchSpot, spotName } from './bench-book.js';
import { measuredSheets } from './bench-row.js';
import { stripsNamed } from './strip-spots.js';

export type FoundSpots =
  | { readonly spots: readonly BenchSpot[]; readonly isOneSpot: boolean }
  | { readonly fault: string };

/** Every spot of the part, or the one that is named behind it. */
export function findSpots(book: BenchBook, text: string): FoundSpots {
  const words = text.split(/\s+/);
  return (
    findInSheet(book, words) ??
    findIn(book, words) ??
    findStrip(book, text) ?? {
      fault: `found ${quoted(text)}; expected a part of the book, and perhaps a spot of it`,
    }
  );
}

/** A bearing of Fits: `E1 big end 1`, `Fits E1 big end 1`. */
function findStrip(book: BenchBook, text: string): FoundSpots | undefined {
  const spots = stripsNamed(book, text.replace(/^fits\s+/i, '').replace(/\s+strip reading$/i, ''));
  return spots.length === 1 ? { spots, isOneSpot: true } : undefined;
}

/** What a jump asks for: a part's blank spots, or one spot whatever it holds. */
export function spotsToAsk(book: BenchBook, text: string): FoundSpots {
  if (text === '') return { fault: 'expected a part behind j, such as: j P1' };
  const found = findSpots(book, text);
  if ('fault' in found || found.isOneSpot) return found;
  const spots = found.spots.filter((spot) => book.isBlank(spot));
  if (spots.length > 0) return { ...found, spots };
  return { fault: `${text}: every spot has its reading; name one to read it again, such as: j ${text} A 0` };
}

/** Where the first words are the name of a sheet. */
function findInSheet(book: BenchBook, words: readonly string[]): FoundSpots | undefined {
  for (const { name } of measuredSheets()) {
    const length = name.split(' ').length;
    if (headerKey(words.slice(0, length).join(' ')) !== headerKey(name)) continue;
    const found = findIn(book, words.slice(length), name);
    if (found) return found;
  }
  return undefined;
}

/** The longest run of first words that is a part's name; the rest is its spot. */
function findIn(
  book: BenchBook,
  words: readonly string[],
  sheet?: BenchSpot['sheet'],
): FoundSpots | undefined {
  for (let length = words.length; length > 0; length--) {
    const rows = book.partsNamed(words.slice(0, length).join(' '), sheet);
    if (rows.length === 0) continue;
    const spotWords = words.slice(length).join(' ');
    const spots = rows.flatMap((part) =>
      (book.table(part.sheet)?.readingColumns ?? [])
        .filter((column) => spotWords === '' || headerKey(spotName(column)) === headerKey(spotWords))
        .map((column) => ({ sheet: part.sheet, row: part.row, part: part.name, column })),
    );
    const sheets = new Set(spots.map((spot) => spot.sheet));
    if (sheets.size > 1) {
      return {
        fault: `found that ${[...sheets].join(' and ')} each have a part of that name; put the sheet's name before it`,
      };
    }
    if (rows.length > 1 && sheets.size === 1 && spots.some((spot) => spot.row !== spots[0]!.row)) {
      return { fault: `found that several rows of ${[...sheets][0]} have that name; give each part its own` };
    }
    if (spots.length > 0) return { spots, isOneSpot: spotWords !== '' };
  }
  return undefined;
}
