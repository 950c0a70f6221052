/** The gauges that a user may name. */
import { shortened } from '../book/problems.js';
import type { BenchBook } from './bench-book.js';

/** How many gauges of the book are named where one is asked for. */
const MOST_GAUGES = 12;

/** The gauges of the book as a sentence names them; blank where there is none. */
export function gaugeList(book: BenchBook): string {
  const known = book.measured.book.gauges.map(({ gauge }) => gauge).filter((gauge) => gauge !== '');
  const shown = known.slice(0, MOST_GAUGES).map(shortened).join(', ');
  return `${shown}${known.length > MOST_GAUGES ? ', …' : ''}`;
}
