/** Readings of a list: which goes where, before anything is written. */
import { quoted } from '../book/problems.js';
import type { BenchBook, BenchSpot } from './bench-book.js';
import { findSpots } from './find-spots.js';
import type { LogEntry } from './log-line.js';
import { isMoot } from './order.js';
import { placeText } from './question.js';
import { readingText } from './row-answers.js';
import { Scribe } from './scribe.js';
import { doubtsAbout } from './strip-spots.js';
import { readAtBench } from './typed-reading.js';

/** One reading of a list; without a part it is of the next spot that the bench would ask for. */
export interface ListedReading {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly sheet: string;
  readonly part: string | undefined;
  readonly spot: string;
  readonly value: string;
  /** Keeps a reading that would be doubted. */
  readonly reason: string;
}

export interface PlacedList {
  /** `line 3: Journals P1 A 0: 42.003 mm`. */
  readonly placed: readonly string[];
  /** What cannot be placed, and why. */
  readonly refused: readonly string[];
  readonly entries: readonly LogEntry[];
}

/**
 * Takes the readings into the book's cells in memory; nothing is kept before the entries are in the log.
 * @param spots for readings without a part, in the order in which the bench would ask
 */
export function placeList(
  book: BenchBook,
  list: readonly ListedReading[],
  spots: readonly BenchSpot[],
  now: () => string,
): PlacedList {
  const scribe = new Scribe(book, now);
  const placed: string[] = [];
  const refused: string[] = [];
  const entries: LogEntry[] = [];
  let next = 0;
  for (const listed of list) {
    const refuse = (why: string) => refused.push(`line ${listed.line}: ${why}`);
    while (spots[next] && isMoot(book, spots[next]!)) next++;
    const found = listed.part === undefined ? nextSpot(spots[next++]) : namedSpot(book, listed);
    if ('fault' in found) {
      refuse(found.fault);
      continue;
    }
    const { spot } = found;
    const table = book.table(spot.sheet)!;
    const reading = readAtBench(table, spot.row, spot.column, listed.value, scribe.settingFor(spot));
    if ('fault' in reading) {
      refuse(`${placeText(spot)}: ${reading.fault}`);
      continue;
    }
    const shown = readingText(reading, book);
    const doubts = doubtsAbout(book, spot, reading);
    if (doubts.length > 0 && listed.reason === '') {
      refuse(
        `${placeText(spot)}: ${shown} is doubtful: ${doubts.join('; ')}; measure it again, or give a Reason`,
      );
      continue;
    }
    entries.push(
      ...scribe.reading(spot, reading, listed.value, doubts.length > 0 ? listed.reason : '').entries,
    );
    placed.push(`line ${listed.line}: ${placeText(spot)}: ${shown}`);
  }
  return { placed, refused, entries };
}

type FoundSpot = { readonly spot: BenchSpot } | { readonly fault: string };

function nextSpot(spot: BenchSpot | undefined): FoundSpot {
  return spot ? { spot } : { fault: 'found more values than the bench would ask for' };
}

/** A named spot has to be blank: a list is made once, and a second reading of a spot is a repeat. */
function namedSpot(book: BenchBook, { sheet, part = '', spot }: ListedReading): FoundSpot {
  const name = [sheet, part, spot].filter((word) => word !== '').join(' ');
  if (spot === '') return { fault: `found no spot for ${quoted(part)}; expected one such as A 0` };
  const found = findSpots(book, name);
  if ('fault' in found) return { fault: found.fault };
  const [own] = found.spots;
  if (!own || !found.isOneSpot)
    return { fault: `found ${quoted(name)}; expected a part of the book and one spot of it` };
  if (book.isBlank(own)) return { spot: own };
  const held = book.textAt(own.sheet, own.row, own.column.column);
  return {
    fault: `${placeText(own)} holds ${quoted(held)} already; expected a blank cell; name a repeat, such as A 0 #2, or take the reading out of the book`,
  };
}
