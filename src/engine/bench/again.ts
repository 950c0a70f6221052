/** The spots that the sheet Re-measure names, the one that decides most first. */
import type { Remeasure } from '../assess/remeasure-words.js';
import { headerKey } from '../book/names.js';
import { isStandIn } from '../book/reading-headers.js';
import { type BenchBook, type BenchSpot, spotName } from './bench-book.js';
import { isPlanned, nextRepeat } from './spot-columns.js';

export interface AgainSpots {
  readonly spots: readonly BenchSpot[];
  /** Sentences about cells that a reading cannot put right. */
  readonly other: readonly string[];
}

/**
 * A spot that was read gets a repeat, in a free column or in a new one. In a cell that could not be read, the reading
 * replaces what stands there.
 */
export function againSpots(book: BenchBook): AgainSpots {
  const spots: BenchSpot[] = [];
  const other: string[] = [];
  const all = book.spots();
  const taken = new Set<string>();
  const add = (spot: BenchSpot) => {
    const key = `${spot.sheet} ${spot.row} ${spot.column.column}`;
    if (!taken.has(key)) spots.push(spot);
    taken.add(key);
  };
  const { remeasure } = book.measured;
  for (const { sheet, parts, why } of remeasure.filter((entry) => entry.isBeyondReadings)) {
    other.push(`${sheet} ${parts.join(', ')}: not asked for: ${why}`);
  }
  const decisive = remeasure.filter((entry) => !entry.isBeyondReadings);
  for (const { sheet, part, names, why } of decisive.flatMap(ofEachPart)) {
    const own = all.filter((spot) => spot.sheet === sheet && spot.part === part);
    if (names === 'all') {
      for (const spot of own.filter((known) => book.isBlank(known) && isPlanned(book, known))) add(spot);
      continue;
    }
    for (const name of names.split(', ')) {
      const named = own.find((spot) => isNamed(spot, name));
      if (!named) {
        other.push(`${sheet} ${part}, ${name}: ${why}; correct it in the workbook`);
        continue;
      }
      const isRead = book.readings(named.sheet, named.row).has(named.column.column);
      // Blades and a total have no repeats: the new ones replace them.
      const column = isRead && !isStandIn(named.column) ? nextRepeat(book, named) : named.column;
      if (column) add({ ...named, column });
      else other.push(noColumn(named));
    }
  }
  return { spots, other };
}

function ofEachPart({ sheet, parts, spot: names, why }: Remeasure) {
  return parts.map((part) => ({ sheet, part, names, why }));
}

function isNamed({ column }: BenchSpot, name: string): boolean {
  return [spotName(column), column.header].some((text) => headerKey(text) === headerKey(name));
}

/** Why a spot cannot be read once more. */
export function noColumn({ sheet, column }: BenchSpot): string {
  return (
    `${sheet} has no free column for one more reading of ${spotName({ ...column, repeat: 1 })}, and results ` +
    'stand at its right end; add a column before them in the spreadsheet program'
  );
}
