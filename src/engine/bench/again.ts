/** The spots that the sheet Re-measure names, the one that decides most first. */
import { headerKey } from '../book/names.js';
import { type BenchBook, type Spot, spotName } from './bench-book.js';

export interface AgainSpots {
  readonly spots: readonly Spot[];
  /** Sentences about cells that no measuring puts right. */
  readonly other: readonly string[];
}

/** A spot that was read goes to a free repeat of it, where the sheet has one; else the new reading takes its place. */
export function againSpots(book: BenchBook): AgainSpots {
  const spots: Spot[] = [];
  const other: string[] = [];
  const all = book.spots();
  const taken = new Set<string>();
  const add = (spot: Spot) => {
    const key = `${spot.sheet} ${spot.row} ${spot.column.column}`;
    if (!taken.has(key)) spots.push(spot);
    taken.add(key);
  };
  for (const { sheet, part, spot: name, why } of book.measured.remeasure) {
    const own = all.filter((spot) => spot.sheet === sheet && spot.part === part);
    if (name === 'all') {
      for (const spot of own.filter((known) => book.isBlank(known))) add(spot);
      continue;
    }
    const named = own.find((spot) =>
      [spotName(spot.column), spot.column.header].some((text) => headerKey(text) === headerKey(name)),
    );
    if (!named) {
      other.push(`${sheet} ${part}, ${name}: ${why}; correct it in the workbook`);
      continue;
    }
    // A cell that could not be read has nothing to be averaged with.
    const isRead = book.readings(named.sheet, named.row).has(named.column.column);
    const free = isRead ? book.freeRepeat(named) : undefined;
    add(free ? { ...named, column: free } : named);
  }
  return { spots, other };
}
