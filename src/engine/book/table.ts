/** One sheet read as a table: its header row, which columns are known, and which hold readings. */

import type { Ratio } from '../../maths/decimal.js';
import { isTorqueUnit } from '../../maths/torque.js';
import type { LengthUnit, TemperatureUnit } from '../../maths/units.js';
import { columnsOf, type InputColumn, type InputSheet } from '../input-sheets/input-sheet.js';
import type { ReadTemperature, TextUnit } from '../input-sheets/quantities.js';
import type { Cell, SheetModel } from '../workbook-model.js';
import { KnownNumbers } from './known-numbers.js';
import { headerKey, nameText } from './names.js';
import { type DecimalSign, decimalSignShown, scanNumber } from './number-text.js';
import { looksLikeReading, readingOf, splitHeader } from './reading-headers.js';

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
    this.headerRow = headerRowOf(sheet);
    this.headers = headersOf(sheet, this.headerRow);
    this.width = this.headers.length;
    const { readings } = record;
    const known = new Map(columnsOf(record).map((of) => [headerKey(of.header), of]));
    for (const [column, header] of this.headers.entries()) {
      if (header === undefined || isOwn(column)) continue;
      const { name: plain, unit } = splitHeader(header);
      const match = known.get(headerKey(plain));
      if (match) {
        if (!this.place(match, { column, header, unit })) this.repeatedHeaders.push(header);
        continue;
      }
      if (!readings) continue;
      // A torque or an angle is no reading of a length, whatever it is called.
      const reading = unit === '°' || isTorqueUnit(unit) ? null : readingOf(plain, readings);
      if (!reading) {
        if (looksLikeReading(plain, readings)) this.nearReadings.push(header);
        continue;
      }
      const twice = this.readingColumns.some(
        (other) =>
          other.station === reading.station &&
          other.angle === reading.angle &&
          other.repeat === reading.repeat,
      );
      const readingColumn = {
        column,
        header: plain.trim(),
        unit: isLength(unit) ? unit : units.length,
        ...reading,
      };
      if (twice) this.repeatedHeaders.push(header);
      else this.readingColumns.push(readingColumn);
    }
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

export function headerRowOf(sheet: SheetModel): number {
  const first = sheet.rows.findIndex((cells) => cells?.some((cell) => !isBlank(cell)));
  return Math.max(first, 0);
}

export function headersOf(sheet: SheetModel, headerRow: number): (string | undefined)[] {
  const headers: (string | undefined)[] = [];
  sheet.rows[headerRow]?.forEach((cell, column) => {
    const text = cell?.content && nameText(cell.content);
    if (text) headers[column] = text;
  });
  return headers;
}

/** Blank is "not measured": an empty cell or a text of spaces. */
export function isBlank(cell: Cell | undefined): boolean {
  if (!cell?.content) return !cell?.formula;
  return cell.content.kind === 'text' && cell.content.value.trim() === '';
}
