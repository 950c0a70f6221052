/** Answers to letters that set a value of the row and of those that follow: t, g, z. */
import { type Grain, grainOfRatio } from '../../maths/grain.js';
import { lengthText } from '../assess/words.js';
import { nameKey } from '../book/names.js';
import { type Answer, refused, said } from './answer.js';
import type { BenchBook, BenchSpot, TypedReading } from './bench-book.js';
import type { Scribe, Written } from './scribe.js';

export function rowAnswer(
  scribe: Scribe,
  spot: BenchSpot | undefined,
  header: 'Temperature' | 'Gauge',
  text: string,
): Answer {
  if (text === '' || !spot) return refused(`expected a value behind the letter, such as: t 21.5`);
  const set = scribe.setRow(spot, header, text);
  if ('fault' in set) return refused(set.fault);
  return { ...said(`${header} ${text}: for ${spot.part}, and for those that follow and name none`), ...set };
}

/** What was noted, or why it was not. */
export function noteAnswer(scribe: Scribe, spot: BenchSpot | undefined, words: string): Written | Answer {
  if (words === '' || !spot) return refused('expected words behind n, such as: n scored at the web');
  return (
    scribe.note(spot, words) ??
    refused(`${spot.sheet} has no column Note; add one in the spreadsheet program`)
  );
}

export function zeroAnswer(
  book: BenchBook,
  scribe: Scribe,
  spot: BenchSpot | undefined,
  text: string,
): Answer {
  if (text === '' || !spot) return refused('expected the size that the gauge is set to, such as: z 43.000');
  const isEnd = /^off$/i.test(text);
  const set = scribe.setZero(spot, isEnd ? '' : text);
  if ('fault' in set) return refused(set.fault);
  const gauge = scribe.valueFor(spot, 'Gauge');
  const whose = gauge === '' ? 'the gauge' : `gauge ${gauge}`;
  const setTo = scribe.settingFor(spot);
  const part = set.isOfPart
    ? `for ${spot.part}, and for those that follow`
    : `from the next part on, as ${spot.part} has readings already`;
  const what = isEnd ? `Sizes again, not deviations: ${part}` : `Set to ${text}: ${part}`;
  const steps = setTo ? ['+12 and -3 are steps, +0.012 is a length'] : [];
  return {
    ...said([what, ...(isEnd ? [] : [masterText(book, gauge, whose)]), ...steps].join('; ')),
    entries: set.entries,
  };
}

/** What the gauge's zero was set from. */
function masterText(book: BenchBook, gauge: string, whose: string): string {
  const row = book.measured.book.gauges.find((known) => nameKey(known.gauge) === nameKey(gauge));
  if (row?.setFrom) return `${whose} was set from ${row.setFrom}`;
  return gauge === ''
    ? 'no gauge is named: type g and its name'
    : `Gauges does not say what set the zero of ${gauge}`;
}

/** A reading as it was understood: `43.012 mm (+0.012 mm from 43 mm)`. */
export function readingText(
  { mm, deviation }: Pick<TypedReading, 'mm' | 'deviation'>,
  book: BenchBook,
): string {
  const text = (length: Grain) => lengthText(length, book.unit);
  const size = grainOfRatio(mm);
  if (!deviation) return text(size);
  const away = grainOfRatio(deviation);
  return `${text(size)} (${away < 0 ? '−' : '+'}${text(Math.abs(away))} from ${text(size - away)})`;
}
