/** What the bench asks for: a spot, with what to know before it is measured. */
import { type BenchBook, type BenchSpot, spotName } from './bench-book.js';
import { usualText } from './expectation.js';

export interface Question {
  readonly spot: BenchSpot;
  /** Where it is: sheet, gauge, how many are left. */
  readonly heading: string;
  readonly usual: string;
}

/** @param left how many readings are still to be taken, this one included */
export function questionOf(book: BenchBook, spot: BenchSpot, left: number): Question {
  const { gauge } = book.partAt(spot.sheet, spot.row);
  return {
    spot,
    heading: `${spot.sheet}${gauge === undefined ? '' : `, gauge ${gauge}`}; ${countText(left)} left`,
    usual: usualText(book, spot),
  };
}

/** `Journals J1 A 0`. */
export function placeText({ sheet, part, column }: BenchSpot): string {
  return `${sheet} ${part} ${spotName(column)}`;
}

function countText(left: number): string {
  return `${left} ${left === 1 ? 'reading' : 'readings'}`;
}
