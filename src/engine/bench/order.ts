/** The order in which spots are asked for: the fewest changes of gauge and part. */
import { groupBy } from '../assess/context.js';
import { shellsInBoresOf } from '../assess/shells-in-bores.js';
import { nameKey } from '../book/names.js';
import { isStandIn } from '../book/reading-headers.js';
import { isSheetOfPlaces } from '../input-sheets/index.js';
import type { BenchBook, BenchSpot } from './bench-book.js';
import { type BenchRow, isFastener } from './bench-row.js';
import { isPlanned } from './spot-columns.js';
import { blankStripSpots } from './strip-spots.js';

/** What a spot is measured with: the gauge of its row; without one, its sheet stands for the gauge of such parts. */
export function gaugeGroup(book: BenchBook, spot: BenchSpot): string {
  const gauge = book.gaugeAt(spot);
  return gauge === undefined ? spot.sheet : `gauge ${nameKey(gauge)}`;
}

/**
 * All spots that are still blank: gauge by gauge, in the order in which the gauges first stand in the book; part by
 * part; within a part every spot once before any is repeated, so that a repeat is not taken from memory. Walls of shells
 * that are in a bore which is measured with them are not asked for. Strips come last: they are read where parts were not.
 */
export function blankSpots(book: BenchBook): BenchSpot[] {
  const inBores = shellsInBoresOf(book.measured.book);
  const isInBore = (row: BenchRow) => !isFastener(row) && inBores.boreOf(row) !== undefined;
  const isAsked = (spot: BenchSpot) => isPlanned(book, spot) && !isInBore(book.partAt(spot.sheet, spot.row));
  const blank = book.spots().filter((spot) => book.isBlank(spot) && isAsked(spot));
  const ofParts = [...groupBy(blank, (spot) => gaugeGroup(book, spot)).values()].flatMap((group) =>
    [...groupBy(group, ({ sheet, row }) => `${sheet} ${row}`).values()].flatMap((spots) =>
      spots
        .map((spot, order) => ({ spot, order }))
        .sort((a, b) => a.spot.column.repeat - b.spot.column.repeat || a.order - b.order)
        .map(({ spot }) => spot),
    ),
  );
  return [...ofParts, ...blankStripSpots(book)];
}

/**
 * Whether a spot needs no reading any more: a gap that was read needs no feelers, one that was tried with feelers no
 * reading; and so with the readings of a dial and its total.
 */
export function isMoot(book: BenchBook, { sheet, row, column }: BenchSpot): boolean {
  if (!isSheetOfPlaces(sheet)) return false;
  const readings = book.readings(sheet, row);
  const isOther = isStandIn(column) ? (other: boolean) => !other : (other: boolean) => other;
  return book
    .table(sheet)!
    .readingColumns.some((other) => isOther(isStandIn(other)) && readings.has(other.column));
}
