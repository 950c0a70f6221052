/** What the bench asks for: a spot, with what to know before it is measured. */
import { grainOfRatio } from '../../maths/grain.js';
import { lengthText } from '../assess/words.js';
import { type BenchBook, type BenchSpot, spotName } from './bench-book.js';
import { gaugeList } from './gauge-list.js';
import type { Scribe } from './scribe.js';
import { isStripSpot, stepText, usualAt } from './strip-spots.js';

export interface Question {
  readonly spot: BenchSpot;
  /** Where it is: sheet, gauge, how many are left. */
  readonly heading: string;
  /** What the sheet's rows lack, said once. */
  readonly notes: readonly string[];
  readonly usual: string;
}

/**
 * @param left how many readings are still to be taken, this one included
 * @param isFirst whether it is the first spot of its sheet in this sitting
 */
export function questionOf(
  book: BenchBook,
  scribe: Scribe,
  spot: BenchSpot,
  { left, isFirst }: { readonly left: number; readonly isFirst: boolean },
): Question {
  const gauge = scribe.valueFor(spot, 'Gauge');
  const setTo = scribe.settingFor(spot);
  const zero = setTo ? `, set to ${lengthText(grainOfRatio(setTo.mm), book.unit)}` : '';
  const measuredWith = `, ${gauge === '' ? 'no gauge named' : `gauge ${gauge}`}${zero}`;
  return {
    spot,
    heading: `${spot.sheet}${isStripSpot(spot) ? stepText(book, spot) : measuredWith}; ${countText(left)} left`,
    notes: isFirst ? notesOf(book, scribe, spot, gauge) : [],
    usual: usualAt(book, spot),
  };
}

/** What is asked for once a sheet: gauge and temperature, or said as they were. */
function notesOf(book: BenchBook, scribe: Scribe, spot: BenchSpot, gauge: string): string[] {
  const { columns } = book.table(spot.sheet)!;
  const temperature = scribe.valueFor(spot, 'Temperature');
  const unit = book.measured.book.setup.temperatureUnit;
  const notes: string[] = [];
  if (gauge === '' && columns.has('Gauge')) {
    const known = gaugeList(book);
    notes.push(`gauge: type g and its name${known === '' ? ', once Gauges names it' : `: ${known}`}`);
  }
  if (temperature !== '') notes.push(`temperature: ${temperature}; t changes it`);
  else if (columns.has('Temperature')) {
    notes.push(`temperature: type t and its value, or ${unit === 'F' ? '68 °F' : '20 °C'} counts`);
  }
  return notes;
}

/** `Journals J1 A 0`. */
export function placeText({ sheet, part, column }: BenchSpot): string {
  return `${sheet} ${part} ${spotName(column)}`;
}

function countText(left: number): string {
  return `${left} ${left === 1 ? 'reading' : 'readings'}`;
}
