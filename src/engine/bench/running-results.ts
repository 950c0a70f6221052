/** What can be said of a part and its fits as soon as a reading is in. */
import type { FastenerResult } from '../assess/fastener.js';
import type { FitResult } from '../assess/fit.js';
import type { PartResult } from '../assess/part-result.js';
import { termPartsOf } from '../assess/placed-fit.js';
import { lengthText } from '../assess/words.js';
import { sizeHeader } from '../columns/part-columns.js';
import { partSheet } from '../input-sheets/index.js';
import type { BenchBook, BenchSpot } from './bench-book.js';
import { isPlanned } from './spot-columns.js';

/** Lines such as `P1: out of round 0.002 mm, taper 0.001 mm; within limits`. */
export function runningResults(book: BenchBook, { sheet, row }: BenchSpot): string[] {
  const { parts, fits, fasteners } = book.around(sheet, row);
  const fastener = fasteners.find((known) => known.row.sheet === sheet && known.row.row === row);
  if (fastener) return [fastenerLine(book, fastener)];
  const part = parts.of(sheet).find((known) => known.row.row === row);
  if (part && partSheet(sheet).isOfPlaces) return placeResults(book, part, fits);
  if (!part?.form) return part?.status === 'bad reading' ? [`${part.row.name}: ${part.why.join('; ')}`] : [];
  const text = (length: number) => lengthText(length, book.unit);
  const open = openSpots(book, part);
  const { size, outOfRound, taper } = part.form;
  const form = [
    `${sizeHeader(partSheet(sheet).readings).toLowerCase()} ${text(size)}`,
    ...(outOfRound === undefined ? [] : [`out of round ${text(outOfRound)}`]),
    ...(taper === undefined ? [] : [`taper ${text(taper)}`]),
  ].join(', ');
  const own = fits.filter((fit) => termPartsOf(fit).includes(part) && fit.clearance !== undefined);
  return [
    `${part.row.name}: ${form}; ${verdictText(part.status, part.why)}${soFar(open)}`,
    ...own.map((fit) => {
      const parts = [...new Set(termPartsOf(fit))];
      return fitLine(fit, text) + soFar(parts.reduce((sum, each) => sum + openSpots(book, each), 0));
    }),
  ];
}

/** `E1 cylinder head 1: longest 47.9 mm; within limits`. */
function fastenerLine(book: BenchBook, { row, longest, thinnest, status, why }: FastenerResult): string {
  const read = [
    ...(longest === undefined ? [] : [`longest ${lengthText(longest, book.unit)}`]),
    ...(thinnest === undefined ? [] : [`thinnest ${lengthText(thinnest, book.unit)}`]),
  ];
  const isOpen = (spot: BenchSpot) => spot.sheet === row.sheet && spot.row === row.row && book.isBlank(spot);
  const open = book.spots().filter(isOpen).length;
  const verdict = `${verdictText(status, why)}${soFar(open)}`;
  return `${row.name}: ${[read.join(', '), verdict].filter((words) => words !== '').join('; ')}`;
}

/** What was measured as a whole is judged as a fit, with one blade of a feeler gauge too. */
function placeResults(book: BenchBook, part: PartResult, fits: readonly FitResult[]): string[] {
  return fits
    .filter((fit) => termPartsOf(fit).includes(part) && fit.status !== 'not measured')
    .map((fit) => {
      const value =
        fit.clearance && `${fit.kind.valueNoun} ${lengthText(fit.clearance.clearance, book.unit)}; `;
      return `${part.row.name}: ${value ?? ''}${verdictText(fit.status, fit.why)}`;
    });
}

/** Spots of a part that are still blank: what is said of it may change. */
function openSpots(book: BenchBook, { row: { sheet, row } }: PartResult): number {
  const columns = book.table(sheet)?.readingColumns ?? [];
  return columns.filter(
    (column) => book.isBlank({ sheet, row, column }) && isPlanned(book, { sheet, column }),
  ).length;
}

function soFar(open: number): string {
  return open === 0 ? '' : `; so far, ${open} ${open === 1 ? 'spot' : 'spots'} still open`;
}

/** A verdict with its first reason; verdicts that explain themselves stand alone. */
function verdictText(status: string, why: readonly string[]): string {
  const isSelfEvident = ['within limits', 'measured', 'no limits', 'in range'].includes(status);
  return isSelfEvident || why.length === 0 ? status : `${status} (${why[0]})`;
}

export function fitLine(fit: FitResult, text: (length: number) => string): string {
  const { clearance, tightest, loosest } = fit.clearance!;
  return (
    `${fit.engine} ${fit.fit} ${fit.position}: clearance ${text(clearance)}, ` +
    `${text(tightest).replace(/ \S+$/, '')} to ${text(loosest)}; ${verdictText(fit.status, fit.why)}`
  );
}
