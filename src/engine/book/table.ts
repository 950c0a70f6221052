/** One sheet read as a table: its header row, which columns are known, and which hold readings. */

import type { Ratio } from '../../maths/decimal.js';
import type { LengthUnit, TemperatureUnit } from '../../maths/units.js';
import type { InputColumn, InputSheet } from '../input-sheets/input-sheet.js';
import type { ReadTemperature, TextUnit } from '../input-sheets/quantities.js';
import type { SheetModel } from '../workbook-model.js';
import { KnownNumbers } from './known-numbers.js';
import { type DecimalSign, decimalSignShown, scanNumber } from './number-text.js';
import { findHeaderRow, HeaderReader, headersOf } from './read-header.js';

export interface BookUnits {
  readonly length: LengthUnit;
  readonly temperature: TemperatureUnit;
}

/** A column of readings: one repeat of one spot. */
export interface ReadingColumn {
  readonly column: number;
  readonly header: string;
  readonly station: string;
  readonly angle: number | undefined;
  readonly repeat: number;
  readonly unit: LengthUnit;
}

/** The exact millimetres of one reading cell, uncorrected. */
export interface ReadLength {
  readonly column: ReadingColumn;
  readonly mm: Ratio;
  /** What the cell says, where it is the deviation from the size that the gauge was set to. */
  readonly deviation?: Ratio;
  /** Whether the cell holds a plain number, over which a live formula can work. */
  readonly isNumber: boolean;
}

/** A number in a text cell without a unit, which can stand as a number just as well. */
export interface BareNumber {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly value: number;
}

export interface KnownColumn {
  readonly column: number;
  /** As the user typed it. */
  readonly header: string;
  /** Undefined where the header names none. */
  readonly unit: TextUnit | undefined;
}

export const isLength = (unit: TextUnit | undefined): unit is LengthUnit =>
  unit === 'mm' || unit === 'in' || unit === 'µm';

/** A sheet of the user's that the program knows. */
export class Table {
  readonly columns = new Map<string, KnownColumn>();
  /** Columns of lengths that stand a second time, in another unit. */
  readonly secondUnits = new Map<string, KnownColumn>();
  readonly readingColumns: ReadingColumn[] = [];
  readonly headerRow: number;
  /** Needed headers that none of the first rows holds together: the sheet cannot be read. */
  readonly missing: readonly string[];
  /** Whether no row holds any needed header. */
  readonly isHeaderRowGuessed: boolean;
  /** One past the last column that has a header. */
  readonly width: number;
  /** The headers, by column, as the user typed them. */
  readonly headers: (string | undefined)[] = [];
  /** Headers of known columns or readings that stand a second time, and are not read. */
  readonly repeatedHeaders: string[] = [];
  /** Headers that are the user's own but look like a reading, which may have been meant. */
  readonly nearReadings: string[] = [];
  readonly bareNumbers: BareNumber[] = [];
  readonly temperatures = new KnownNumbers<ReadTemperature>();
  private readonly readings = new Map<ReadingColumn, KnownNumbers<ReadLength>>();
  private readonly settledSigns = new Map<number, DecimalSign | undefined>();

  /** @param isOwn whether a column is the program's own of an earlier run, which is passed over */
  constructor(
    readonly record: InputSheet,
    readonly sheet: SheetModel,
    readonly units: BookUnits,
    isOwn: (column: number) => boolean = () => false,
  ) {
    const { row, missing, isGuess } = findHeaderRow(sheet, record);
    this.headerRow = row;
    this.missing = missing;
    this.isHeaderRowGuessed = isGuess;
    this.headers = headersOf(sheet, this.headerRow);
    this.width = this.headers.length;
    const reader = new HeaderReader(record);
    for (const [column, header] of this.headers.entries()) {
      if (header === undefined || isOwn(column)) continue;
      const { inputs, reading, unit, isNearReading } = reader.read(header);
      for (const input of inputs) {
        if (!this.place(input, { column, header, unit })) this.repeatedHeaders.push(header);
      }
      if (reading) this.placeReading({ column, unit: isLength(unit) ? unit : units.length, ...reading });
      else if (inputs.length === 0 && isNearReading) this.nearReadings.push(header);
    }
  }

  private placeReading(reading: ReadingColumn): void {
    const isTwice = this.readingColumns.some(
      ({ station, angle, repeat }) =>
        station === reading.station && angle === reading.angle && repeat === reading.repeat,
    );
    if (isTwice) this.repeatedHeaders.push(this.headers[reading.column]!);
    else this.readingColumns.push(reading);
  }

  /** Whether there was room for a column that the record knows. */
  private place({ header, quantity }: InputColumn, column: KnownColumn): boolean {
    const first = this.columns.get(header);
    if (!first) this.columns.set(header, column);
    else if (!this.record.isPrintedTwice || quantity.kind !== 'length' || this.secondUnits.has(header))
      return false;
    else if ((first.unit ?? this.units.length) === (column.unit ?? this.units.length)) return false;
    else this.secondUnits.set(header, column);
    return true;
  }

  /** The sheet's name in the records; the user may have typed it otherwise. */
  get name(): string {
    return this.record.name;
  }

  readingsOf(column: ReadingColumn): KnownNumbers<ReadLength> {
    const readings = this.readings.get(column) ?? new KnownNumbers<ReadLength>();
    this.readings.set(column, readings);
    return readings;
  }

  /**
   * The decimal sign that the texts of a column agree on.
   * @param unit of texts that name none
   */
  settledSign(column: number, unit: TextUnit | undefined): DecimalSign | undefined {
    if (!this.settledSigns.has(column)) {
      const shown = new Set<DecimalSign>();
      this.sheet.rows.forEach((cells, row) => {
        const content = row > this.headerRow ? cells[column]?.content : undefined;
        if (content?.kind !== 'text') return;
        const scan = scanNumber(content.value);
        const sign = scan && decimalSignShown(scan, isMmOrIn(scan.unit ?? unit));
        if (sign) shown.add(sign);
      });
      this.settledSigns.set(column, shown.size === 1 ? [...shown][0] : undefined);
    }
    return this.settledSigns.get(column);
  }
}

export const isMmOrIn = (unit: TextUnit | undefined) => unit === 'mm' || unit === 'in';
