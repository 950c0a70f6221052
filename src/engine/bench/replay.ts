/** Replays a log: what it holds and the book's file does not hold yet goes into the book. */
import { decimalText, exact, subtract, toNumber } from '../../maths/decimal.js';
import { quoted } from '../book/problems.js';
import { FITS } from '../input-sheets/fits.js';
import type { BenchBook, BenchSpot } from './bench-book.js';
import type { LogEntry } from './log-line.js';
import { rowValue } from './scribe.js';
import { SET_TO } from './sitting.js';
import { columnNamed, hasOrMakesColumn } from './spot-columns.js';
import { isStripSpot, stripColumn, stripsNamed } from './strip-spots.js';
import { readAtBench } from './typed-reading.js';

export interface Replayed {
  /** Readings that the book now holds from the log. */
  readonly readings: number;
  /** Sentences about lines that could not be taken over; they stay in the log. */
  readonly left: readonly string[];
}

/** The changes since the book was last written, of each cell together. */
function openChanges(entries: readonly LogEntry[]): LogEntry[][] {
  const last = entries.findLastIndex(({ kind }) => kind === 'written');
  const cells = new Map<string, LogEntry[]>();
  for (const entry of entries.slice(last + 1)) {
    const key = [entry.sheet, entry.part, entry.spot].join('\u0000');
    const chain = cells.get(key);
    if (chain) chain.push(entry);
    else cells.set(key, [entry]);
  }
  return [...cells.values()];
}

export function replay(book: BenchBook, entries: readonly LogEntry[]): Replayed {
  let readings = 0;
  const left: string[] = [];
  for (const chain of openChanges(entries)) {
    const { sheet, part, spot, typed } = chain.at(-1)!;
    const refuse = (found: string) =>
      left.push(
        `${book.file}: its log has ${quoted(typed)} for ${sheet} ${quoted(part)} ${spot}, but ${found}; ` +
          'the book stays as it is; type the reading again if it is the right one.',
      );
    const rows = sheet ? rowsNamed(book, part, sheet) : [];
    if (!sheet || rows.length !== 1) {
      refuse(rows.length === 0 ? 'the book has no such part' : 'several parts have that name');
      continue;
    }
    const { row, name } = rows[0]!;
    if (spot === SET_TO) hasOrMakesColumn(book, sheet, spot);
    const named = book.table(sheet)?.columns.get(spot);
    const isReading = !named || isStripSpot({ sheet });
    const column = (named ?? columnNamed(book, sheet, spot, { make: true }))?.column;
    if (column === undefined) {
      refuse('the book has no such column');
      continue;
    }
    const now = book.textAt(sheet, row, column);
    const known = chain.flatMap((entry) => [
      entry.before,
      entry.typed,
      valueText(book, entry, { row, name, column }),
    ]);
    if (now !== '' && !known.includes(now)) {
      refuse(`its cell holds ${book.shown(sheet, row, column)}, typed since`);
      continue;
    }
    if (isReading) {
      const spotOf = readingSpot(book, chain.at(-1)!, { row, name, column });
      const reading = typed === '' ? undefined : readingOf(book, chain.at(-1)!, spotOf);
      if (reading && 'fault' in reading) {
        // An undone reading may have replaced a cell that was no reading.
        if (chain.at(-1)!.kind === 'undo') book.fillRaw(spotOf, typed);
        else refuse(reading.fault);
      } else {
        book.fillSpot(spotOf, reading);
        if (reading) readings += 1;
      }
    } else {
      book.fill({ sheet: book.table(sheet)!.sheet.name, row, column, value: rowValue(spot, typed) });
      if (spot === SET_TO) book.reread();
    }
  }
  return { readings, left };
}

function rowsNamed(book: BenchBook, part: string, sheet: string): { row: number; name: string }[] {
  if (!isStripSpot({ sheet })) return book.partsNamed(part, sheet);
  return stripsNamed(book, part).map(({ row, part: name }) => ({ row, name }));
}

interface CellPlace {
  readonly row: number;
  readonly name: string;
  readonly column: number;
}

function readingSpot(book: BenchBook, { sheet }: LogEntry, { row, name, column }: CellPlace): BenchSpot {
  const known =
    sheet === FITS.name
      ? stripColumn(book)!
      : book.table(sheet!)!.readingColumns.find((reading) => reading.column === column)!;
  return { sheet: sheet!, row, part: name, column: known };
}

/** The reading of a line; its mm count where the book's unit has changed since it was typed. */
function readingOf(book: BenchBook, { kind, typed, mm }: LogEntry, spot: BenchSpot) {
  const setTo = book.settingAt(spot);
  const table = book.table(spot.sheet)!;
  // What is taken back to is a cell's text.
  const reading =
    kind === 'undo' ? book.read(typed, spot) : readAtBench(table, spot.row, spot.column, typed, setTo);
  const isSame = !('fault' in reading) && (mm === '' || String(toNumber(reading.mm)) === mm);
  if (isSame || mm === '') return reading;
  const size = exact(Number(mm));
  const length = setTo ? decimalText(subtract(size, setTo.mm)) : mm;
  return book.read(`${length} mm`, spot);
}

/** What a cell holds once the line's value has gone into it: `42,003` is the number 42.003. */
function valueText(book: BenchBook, entry: LogEntry, place: CellPlace): string {
  if (entry.kind !== 'reading') return entry.typed;
  const reading = readingOf(book, entry, readingSpot(book, entry, place));
  return 'fault' in reading ? entry.typed : String(reading.value);
}
