/** Which reading of a part the others speak against. */
import { type Grain, grainOfRatio } from '../../maths/grain.js';
import { doubtsOf } from '../../maths/plausibility.js';
import { lengthText } from '../assess/words.js';
import { inputSheet, isPartSheet } from '../input-sheets/index.js';
import { type BenchBook, type BenchSpot, sameSpot, type TypedReading } from './bench-book.js';
import { expectationOf } from './expectation.js';
import { placeText } from './question.js';
import { isStripSpot } from './strip-spots.js';

/** So many readings that agree outweigh one. Common practice, no published source. */
const MOST_AGREE = 3;

/** How far readings of one part may lie apart and still agree, in grains. */
const AGREE = { diameters: 50_000, walls: 20_000, gaps: 0, dial: 0 } as const;

export interface LoneReading {
  readonly spot: BenchSpot;
  readonly size: Grain;
  /** The least and the greatest of the others. */
  readonly others: readonly [Grain, Grain];
}

/** A spot whose reading stands alone against three others of its part that agree; undefined where there is none. */
export function readingThatStandsAlone(
  book: BenchBook,
  { sheet, row, part }: BenchSpot,
): LoneReading | undefined {
  const readings = [...book.readings(sheet, row)].sort(([, a], [, b]) => a - b);
  const record = inputSheet(sheet);
  // Lengths and necks of a bolt, and what is measured as a whole, need not agree.
  if (!record || !isPartSheet(record) || record.isOfPlaces || readings.length <= MOST_AGREE) return undefined;
  const margin = AGREE[record.readings];
  const [low, high] = [readings[0]!, readings.at(-1)!];
  for (const [alone, others] of [
    [low, readings.slice(1)],
    [high, readings.slice(0, -1)],
  ] as const) {
    const [least, greatest] = [others[0]![1], others.at(-1)![1]];
    const away = Math.max(least - alone[1], alone[1] - greatest);
    if (greatest - least > margin || away <= margin) continue;
    const column = book.table(sheet)!.readingColumns.find((known) => known.column === alone[0])!;
    // A repeat of the same spot is judged by the gauge's repeatability.
    const isOneSpot = others.some(([at]) => sameSpot(column, columnAt(book, sheet, at)));
    if (!isOneSpot) return { spot: { sheet, row, part, column }, size: alone[1], others: [least, greatest] };
  }
  return undefined;
}

function columnAt(book: BenchBook, sheet: string, at: number) {
  return book.table(sheet)!.readingColumns.find(({ column }) => column === at)!;
}

export function standsAloneText(book: BenchBook, { spot, size, others }: LoneReading): string {
  const [least, greatest] = others.map((other) => lengthText(other, book.unit));
  return (
    `${placeText(spot)}: ${lengthText(size, book.unit)} stands against readings that agree, ${least} to ${greatest}: ` +
    'measure it again, or s leaves it'
  );
}

/** What stands at a spot that is read again; nothing for a blank one. */
export function replacedText(book: BenchBook, spot: BenchSpot): string[] {
  const held = book.readings(spot.sheet, spot.row).get(spot.column.column);
  const text = held === undefined ? book.shownAt(spot) : lengthText(held, book.unit);
  return text === undefined
    ? []
    : [`${placeText(spot)} holds ${text}: the next reading replaces it, s leaves it`];
}

/**
 * Whether a doubtful reading is one that the limits allow: then the reading before it, of the same part, may be the wrong
 * one.
 */
export function speaksAgainstOthers(
  book: BenchBook,
  { spot, reading }: { readonly spot: BenchSpot; readonly reading: TypedReading },
  last: BenchSpot | undefined,
): boolean {
  if (!last || isStripSpot(spot) || last.sheet !== spot.sheet || last.row !== spot.row) return false;
  const expectation = { ...expectationOf(book, spot), sisters: [], peers: [] };
  return doubtsOf(grainOfRatio(reading.mm), expectation).length === 0;
}
