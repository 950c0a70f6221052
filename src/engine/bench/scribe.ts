/** Takes what was typed into the book's cells, and makes the log entries that say so. */
import { toNumber } from '../../maths/decimal.js';
import { toCelsius } from '../../maths/units.js';
import { nameKey } from '../book/names.js';
import { readScanned, scanNumber } from '../book/number-text.js';
import { quoted } from '../book/problems.js';
import { isWorkshopTemperature, WORKSHOP_TEMPERATURE } from '../input-sheets/quantities.js';
import { type BenchBook, type BenchSpot, spotName, type TypedReading } from './bench-book.js';
import { gaugeList } from './gauge-list.js';
import type { LogEntry, LogKind } from './log-line.js';
import { type RowHeader, SET_TO, Sitting } from './sitting.js';
import { hasOrMakesColumn } from './spot-columns.js';
import { readSetting, type TypedSetting } from './typed-reading.js';

/** One cell that was changed, so that it can be changed back. */
export interface Change {
  readonly spot: BenchSpot;
  /** A header for a cell that is no reading. */
  readonly header?: 'Note';
  readonly before: string;
}

export interface Written {
  readonly entries: readonly LogEntry[];
  readonly changes: readonly Change[];
}

const KIND_OF: Readonly<Record<RowHeader, LogKind>> = {
  Temperature: 'temperature',
  Gauge: 'gauge',
  [SET_TO]: 'set to',
};

export class Scribe {
  /**
   * @param now the time, ISO 8601
   * @param sitting values for rows that name none
   */
  constructor(
    private readonly book: BenchBook,
    private readonly now: () => string,
    private readonly sitting = new Sitting(),
  ) {}

  /** What a row will have under a header once it is read: its own value, else that of the sitting; blank for none. */
  valueFor(spot: BenchSpot, header: RowHeader): string {
    const own = this.ownValue(spot, header);
    if (own !== '' || (header === SET_TO && this.isBegun(spot))) return own;
    return this.sitting.get(header, spot.sheet, header === SET_TO ? this.valueFor(spot, 'Gauge') : '');
  }

  /** The size from which the readings of a row are deviations; undefined where they are sizes. */
  settingFor(spot: BenchSpot): TypedSetting | undefined {
    const text = this.valueFor(spot, SET_TO);
    if (text === '' || !this.book.table(spot.sheet)!.columns.has(SET_TO)) return undefined;
    const read = readSetting(this.book.table(spot.sheet)!, spot.row, text);
    return 'fault' in read ? undefined : read;
  }

  private ownValue(spot: BenchSpot, header: RowHeader): string {
    return this.book.table(spot.sheet)?.columns.has(header) ? this.textOf(spot, header) : '';
  }

  /** A row with readings keeps what they were taken from. */
  private isBegun({ sheet, row }: BenchSpot): boolean {
    return this.book.readings(sheet, row).size > 0;
  }

  /**
   * Sets the size that the gauge is set to, of a part and of those that follow with its gauge; blank for sizes again.
   * @returns the entries and whether the part itself takes it, or why it cannot be set
   */
  setZero(spot: BenchSpot, text: string): { entries: LogEntry[]; isOfPart: boolean } | { fault: string } {
    if (!hasOrMakesColumn(this.book, spot.sheet, SET_TO)) {
      return { fault: `${spot.sheet} has no column ${SET_TO}; add one in the spreadsheet program` };
    }
    const read = text === '' ? undefined : readSetting(this.book.table(spot.sheet)!, spot.row, text);
    if (read && 'fault' in read) return read;
    const typed = read ? String(read.value) : '';
    this.sitting.set(SET_TO, spot.sheet, this.valueFor(spot, 'Gauge'), typed);
    const isOfPart = !this.isBegun(spot) || this.ownValue(spot, SET_TO) === typed;
    return { entries: isOfPart ? this.rowValues(spot, SET_TO) : [], isOfPart };
  }

  /** @param reason why a doubtful reading was kept; goes into the part's Note too */
  reading(spot: BenchSpot, reading: TypedReading, typed: string, reason: string): Written {
    const before = this.textOf(spot, undefined);
    const row = this.rowValues(spot);
    this.book.fillSpot(spot, reading);
    const mm = String(toNumber(reading.mm));
    const entry = this.entry(spot, 'reading', { typed, before, reason, mm });
    const note = reason === '' ? undefined : this.note(spot, `${spotName(spot.column)} ${typed}: ${reason}`);
    return {
      entries: [...row, entry, ...(note?.entries ?? [])],
      changes: [{ spot, before }, ...(note?.changes ?? [])],
    };
  }

  /** Adds words to the Note of a part; undefined where its sheet has no such column. */
  note(spot: BenchSpot, words: string): Written | undefined {
    if (!this.book.table(spot.sheet)?.columns.has('Note')) return undefined;
    const before = this.textOf(spot, 'Note');
    const typed = before === '' ? words : `${before}; ${words}`;
    this.fill(spot, 'Note', typed);
    return {
      entries: [this.entry(spot, 'note', { typed, before, name: 'Note' })],
      changes: [{ spot, header: 'Note', before }],
    };
  }

  takeBack(changes: readonly Change[]): LogEntry[] {
    return [...changes].reverse().map(({ spot, header, before }) => {
      const now = this.textOf(spot, header);
      if (header) this.fill(spot, header, before);
      else {
        const reading = before === '' ? undefined : this.book.read(before, spot);
        if (reading && 'fault' in reading) this.book.fillRaw(spot, before);
        else this.book.fillSpot(spot, reading);
      }
      return this.entry(spot, 'undo', { typed: before, before: now, ...(header && { name: header }) });
    });
  }

  /**
   * Sets the temperature or gauge of a part and of those that follow.
   * @returns the entries, or why it cannot be set
   */
  setRow(
    spot: BenchSpot,
    header: 'Temperature' | 'Gauge',
    text: string,
  ): { entries: LogEntry[] } | { fault: string } {
    const fault = header === 'Gauge' ? this.gaugeFault(text) : this.temperatureFault(text);
    if (fault) return { fault };
    if (!this.book.table(spot.sheet)?.columns.has(header)) {
      return { fault: `${spot.sheet} has no column ${header}; add one in the spreadsheet program` };
    }
    this.sitting.set(header, spot.sheet, '', text);
    return { entries: this.rowValues(spot, header) };
  }

  private temperatureFault(text: string): string | undefined {
    const found = `found ${quoted(text)}; expected`;
    const scan = scanNumber(text);
    const read =
      scan && [undefined, 'C', 'F'].includes(scan.unit) ? readScanned(scan, false, undefined) : undefined;
    if (typeof read !== 'object' || !('value' in read)) return `${found} a temperature such as 21.5`;
    const unit = scan?.unit ?? this.book.measured.book.setup.temperatureUnit;
    const celsius = toNumber(toCelsius(read.value, unit === 'F' ? 'F' : 'C'));
    return isWorkshopTemperature(celsius) ? undefined : `${found} ${WORKSHOP_TEMPERATURE}`;
  }

  private gaugeFault(name: string): string | undefined {
    const known = this.book.measured.book.gauges.map(({ gauge }) => gauge).filter((gauge) => gauge !== '');
    if (known.some((gauge) => nameKey(gauge) === nameKey(name))) return undefined;
    const unknown = `${quoted(name)} is no gauge of this book`;
    if (known.length === 0) return `${unknown}; add it to the sheet Gauges first`;
    return `${unknown}; name a gauge of Gauges: ${gaugeList(this.book)}`;
  }

  /** Temperature and gauge of the sitting, where the row names none; `replaced` is set even where it does. */
  private rowValues(spot: BenchSpot, replaced?: RowHeader): LogEntry[] {
    const entries: LogEntry[] = [];
    for (const header of ['Temperature', 'Gauge', SET_TO] as const) {
      if (!this.book.table(spot.sheet)?.columns.has(header)) continue;
      const before = this.textOf(spot, header);
      const gauge = header === SET_TO ? this.valueFor(spot, 'Gauge') : '';
      const isReplaced = replaced === header;
      const typed = isReplaced ? this.sitting.get(header, spot.sheet, gauge) : this.valueFor(spot, header);
      if (before === typed || (before !== '' && !isReplaced)) continue;
      this.fill(spot, header, typed);
      if (header !== 'Temperature') this.book.reread();
      entries.push(this.entry(spot, KIND_OF[header], { typed, before, name: header }));
    }
    return entries;
  }

  private textOf({ sheet, row, column }: BenchSpot, header: string | undefined): string {
    const place = header ? this.book.table(sheet)!.columns.get(header)!.column : column.column;
    return this.book.textAt(sheet, row, place);
  }

  private fill({ sheet, row }: BenchSpot, header: string, typed: string): void {
    const table = this.book.table(sheet)!;
    const { column } = table.columns.get(header)!;
    this.book.fill({ sheet: table.sheet.name, row, column, value: rowValue(header, typed) });
  }

  private entry(
    spot: BenchSpot,
    kind: LogKind,
    given: { typed: string; before: string; reason?: string; mm?: string; name?: string },
  ): LogEntry {
    const hasTemperature = this.book.table(spot.sheet)?.columns.has('Temperature');
    return {
      time: this.now(),
      kind,
      sheet: spot.sheet,
      part: spot.part,
      spot: given.name ?? spotName(spot.column),
      typed: given.typed,
      mm: given.mm ?? '',
      gauge: this.book.gaugeAt(spot) ?? '',
      temperature: hasTemperature ? this.textOf(spot, 'Temperature') : '',
      before: given.before,
      reason: given.reason ?? '',
    };
  }
}

/** A temperature or a size that is a plain number goes in as one, over which live formulas can work. */
export function rowValue(header: string, typed: string): number | string {
  return header !== 'Gauge' && header !== 'Note' && /^-?\d+(\.\d+)?$/.test(typed) ? Number(typed) : typed;
}
