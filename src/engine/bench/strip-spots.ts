/** Readings of gauge strips: a bearing whose parts are not measured gets its clearance from Fits. */
import { grainOfRatio } from '../../maths/grain.js';
import type { FitResult } from '../assess/fit.js';
import { lengthText } from '../assess/words.js';
import { nameKey } from '../book/names.js';
import { isLength, type ReadingColumn } from '../book/table.js';
import { FITS } from '../input-sheets/fits.js';
import type { Agenda } from './agenda.js';
import type { BenchBook, BenchSpot, TypedReading } from './bench-book.js';
import { doubtTexts, usualText } from './expectation.js';
import { fitLine, runningResults } from './running-results.js';

const { header: STRIP } = FITS.columns.strip;

/** So many steps of its scale no strip shows. Common practice, no published source. */
const MOST_STEPS = 20;

export const isStripSpot = ({ sheet }: Pick<BenchSpot, 'sheet'>) => sheet === FITS.name;

/** The column of strip readings; undefined where the book has none. */
export function stripColumn(book: BenchBook): ReadingColumn | undefined {
  const table = book.table(FITS.name);
  const known = table?.columns.get(STRIP);
  if (!table || !known) return undefined;
  const unit = isLength(known.unit) ? known.unit : table.units.length;
  return { column: known.column, header: STRIP, station: STRIP, angle: undefined, repeat: 1, unit };
}

/** One spot a bearing of Fits, whether or not it has its reading. */
export function stripSpots(book: BenchBook): BenchSpot[] {
  const column = stripColumn(book);
  if (!column) return [];
  return book.measured.fits.flatMap((fit) =>
    fit.source && fit.kind.standIn === 'strip'
      ? [{ sheet: FITS.name, row: fit.source.row, part: nameOf(fit), column }]
      : [],
  );
}

/** Strips are asked for where no clearance is computed from parts. */
export function blankStripSpots(book: BenchBook): BenchSpot[] {
  const measured = new Set(book.measured.fits.filter(isMeasured).map(({ source }) => source?.row));
  return stripSpots(book).filter((spot) => !measured.has(spot.row) && book.isBlank(spot));
}

/** Strips of bearings that the last reading of a part has measured are not asked for. */
export function leaveOutStrips(book: BenchBook, agenda: Agenda, { sheet, row }: BenchSpot): void {
  const strips = agenda.left().filter(isStripSpot);
  if (strips.length === 0 || isStripSpot({ sheet })) return;
  const measured = book.around(sheet, row).fits.filter(isMeasured);
  const rows = measured.flatMap(({ source }) => source?.row ?? []);
  for (const strip of strips) if (rows.includes(strip.row)) agenda.done(strip);
}

const isMeasured = ({ clearance, isStrip }: FitResult) => clearance !== undefined && !isStrip;

const nameOf = ({ engine, fit, position }: FitResult) => `${engine} ${fit} ${position}`;

/** The strips of a bearing that is named `E1 big end 1`. */
export function stripsNamed(book: BenchBook, name: string): BenchSpot[] {
  return stripSpots(book).filter(({ part }) => nameKey(part) === nameKey(name));
}

/** What will be usual at a spot, in words. */
export function usualAt(book: BenchBook, spot: BenchSpot): string {
  if (!isStripSpot(spot)) return usualText(book, spot);
  const { clearanceMin, clearanceMax } = fitAt(book, spot)?.limits ?? {};
  const text = (length: number) => lengthText(length, book.unit);
  return clearanceMin === undefined || clearanceMax === undefined
    ? ''
    : `clearance ${text(clearanceMin)} to ${text(clearanceMax)} (Limits)`;
}

/** `, step 0.025 mm` of a strip's scale; blank at other spots. */
export function stepText(book: BenchBook, spot: BenchSpot): string {
  return isStripSpot(spot) ? `, step ${lengthText(book.measured.book.setup.stripStep, book.unit)}` : '';
}

/** What speaks against a reading, in words. */
export function doubtsAbout(book: BenchBook, spot: BenchSpot, reading: TypedReading): string[] {
  if (!isStripSpot(spot)) return doubtTexts(book, spot, reading);
  const most = MOST_STEPS * book.measured.book.setup.stripStep;
  return grainOfRatio(reading.mm) > most
    ? [`no strip shows more than ${lengthText(most, book.unit)}: a decimal point may be missing or misplaced`]
    : [];
}

/** What can be said once a reading is in. */
export function resultsAt(book: BenchBook, spot: BenchSpot): string[] {
  if (!isStripSpot(spot)) return runningResults(book, spot);
  book.reread();
  const fit = fitAt(book, spot);
  return fit?.clearance ? [`${fitLine(fit, (length) => lengthText(length, book.unit))}; by the strip`] : [];
}

function fitAt(book: BenchBook, { row }: BenchSpot): FitResult | undefined {
  return book.measured.fits.find(({ source }) => source?.row === row);
}
