/**
 * One sheet read as a table: its header row, which columns are known, which hold readings, and the
 * typed access to the cells of a row.
 */

import { exact, type Ratio, toNumber } from '../../maths/decimal.js';
import { type Grain, roundToWhole } from '../../maths/grain.js';
import { grainOf, type LengthUnit, type TemperatureUnit, toCelsius, toMm } from '../../maths/units.js';
import { type Cell, cellAddress, type SheetModel } from '../workbook-model.js';
import type { InputSheet, SheetName } from './input-sheets.js';
import { KnownNumbers } from './known-numbers.js';
import { headerKey, nameText } from './names.js';
import {
  type DecimalSign,
  decimalSignShown,
  readScanned,
  type ScannedNumber,
  scanNumber,
  type TextUnit,
} from './number-text.js';
import { type BadCell, quoted } from './problems.js';
import { looksLikeReading, readingOf, splitHeader } from './reading-headers.js';
import { breachOf, type NumberRule } from './rules.js';

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

/** Exact °C of a temperature cell. */
export interface ReadTemperature {
  readonly celsius: Ratio;
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

export const isLength = (unit: TextUnit | undefined): unit is LengthUnit =>
  unit === 'mm' || unit === 'in' || unit === 'µm';

/** A sheet of the user's that the program knows. */
export class Table {
  readonly columns = new Map<string, { column: number; header: string; unit: TextUnit | undefined }>();
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

  /** @param userWidth columns from here on are the program's own of an earlier run and are passed over */
  constructor(
    readonly name: SheetName,
    readonly sheet: SheetModel,
    layout: InputSheet,
    readonly units: BookUnits,
    userWidth = Number.POSITIVE_INFINITY,
  ) {
    this.headerRow = headerRowOf(sheet);
    this.headers = headersOf(sheet, this.headerRow);
    this.width = this.headers.length;
    const known = new Map(layout.columns.map(({ header }) => [headerKey(header), header]));
    for (const [column, header] of this.headers.entries()) {
      if (header === undefined || column >= userWidth) continue;
      const { name: plain, unit } = splitHeader(header);
      const match = known.get(headerKey(plain));
      if (match) {
        if (this.columns.has(match)) this.repeatedHeaders.push(header);
        else this.columns.set(match, { column, header, unit });
        continue;
      }
      if (!layout.readings) continue;
      const reading = readingOf(plain, layout.readings);
      if (!reading) {
        if (looksLikeReading(plain, layout.readings)) this.nearReadings.push(header);
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

  /** Rows below the header with anything in a known column. */
  dataRows(): number[] {
    const columns = [...this.columns.values(), ...this.readingColumns].map(({ column }) => column);
    const rows: number[] = [];
    this.sheet.rows.forEach((cells, row) => {
      if (row > this.headerRow && columns.some((column) => !isBlank(cells[column]))) rows.push(row);
    });
    return rows;
  }

  row(row: number): Row {
    return new Row(this, row);
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

const isMmOrIn = (unit: TextUnit | undefined) => unit === 'mm' || unit === 'in';

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

/** One row of a table; refused cells gather in `bad`. */
export class Row {
  readonly bad: BadCell[] = [];

  constructor(
    readonly table: Table,
    readonly row: number,
  ) {}

  /** A name, or undefined where the cell is blank or refused. */
  name(header: string): string | undefined {
    const found = this.cell(header);
    if (!found) return undefined;
    const text = found.cell.content && nameText(found.cell.content);
    if (text === undefined) this.refuse(found, 'a name', 'type it as text');
    return text;
  }

  /** One of a few words. */
  word<Word extends string>(header: string, words: readonly Word[]): Word | undefined {
    const found = this.cell(header);
    if (!found) return undefined;
    const text = found.cell.content && nameText(found.cell.content);
    const word = words.find((candidate) => candidate.toLowerCase() === text?.toLowerCase());
    if (!word) this.refuse(found, listOf(words), 'type one of these words');
    return word;
  }

  /** A length on the grain. */
  length(header: string, rule: NumberRule): Grain | undefined {
    const found = this.cell(header);
    return found && this.lengthOf(found, rule);
  }

  /** The exact millimetres of one reading, uncorrected. */
  reading(column: ReadingColumn, rule: NumberRule): ReadLength | undefined {
    const cell = this.table.sheet.rows[this.row]?.[column.column];
    if (isBlank(cell)) return undefined;
    const { content } = cell!;
    if (content?.kind !== 'number') return this.readLength(column, cell!, rule);
    return this.table.readingsOf(column).of(content.value, () => this.readLength(column, cell!, rule));
  }

  private readLength(column: ReadingColumn, cell: Cell, rule: NumberRule): ReadLength | undefined {
    const found = { cell, column: column.column, header: column.header, unit: column.unit as TextUnit };
    const read = this.number(found, rule);
    if (!read) return undefined;
    const mm = toMm(read.value, isLength(read.unit) ? read.unit : column.unit);
    return { column, mm, isNumber: cell.content?.kind === 'number' };
  }

  /** A number that is no length: grams, prices, degrees Celsius, counts. */
  plainNumber(header: string, rule: NumberRule): number | undefined {
    const found = this.cell(header);
    const read = found && this.number(found, rule);
    return read && toNumber(read.value);
  }

  /** Exact degrees Celsius. */
  temperature(header: string, rule: NumberRule): ReadTemperature | undefined {
    const found = this.cell(header);
    if (!found) return undefined;
    const { content } = found.cell;
    if (content?.kind !== 'number') return this.readTemperature(found, rule);
    return this.table.temperatures.of(content.value, () => this.readTemperature(found, rule));
  }

  private readTemperature(found: FoundCell, rule: NumberRule): ReadTemperature | undefined {
    const read = this.number({ ...found, unit: found.unit ?? this.table.units.temperature }, rule);
    if (!read) return undefined;
    const celsius = toCelsius(read.value, read.unit === 'F' ? 'F' : 'C');
    if (toNumber(celsius) > ABSOLUTE_ZERO)
      return { celsius, isNumber: found.cell.content?.kind === 'number' };
    this.refuse(found, 'a temperature above absolute zero', 'check the reading and its unit');
    return undefined;
  }

  /** The cell under a header, or undefined where there is no such column or the cell is blank. */
  cell(header: string) {
    const known = this.table.columns.get(header);
    if (!known) return undefined;
    const cell = this.table.sheet.rows[this.row]?.[known.column];
    return isBlank(cell) ? undefined : { cell: cell!, column: known.column, header, unit: known.unit };
  }

  address(header: string): string | undefined {
    const known = this.table.columns.get(header);
    return known && cellAddress(this.row, known.column);
  }

  private lengthOf(found: FoundCell, rule: NumberRule): Grain | undefined {
    const unit = found.unit ?? this.table.units.length;
    const read = this.number({ ...found, unit }, rule);
    return read && grainOf(read.value, isLength(read.unit) ? read.unit : this.table.units.length);
  }

  private number(
    found: FoundCell,
    rule: NumberRule,
  ): { value: Ratio; unit: TextUnit | undefined } | undefined {
    const { content } = found.cell;
    const remedy = rule.units.some(isLength) ? 'measure again or correct the cell' : 'correct the cell';
    if (found.unit && !rule.units.includes(found.unit)) {
      this.refuse(found, `${rule.expected}, not in ${found.unit}`, 'correct the unit in the header');
      return undefined;
    }
    if (content?.kind === 'number') {
      const unit = found.unit ?? rule.units[0];
      const expected = breachOf(rule, content.value, unit);
      if (expected === undefined) return { value: exact(content.value), unit };
      this.refuse(found, expected, remedy);
      return undefined;
    }
    const scan = content?.kind === 'text' ? scanNumber(content.value) : undefined;
    const columnUnit = found.unit ?? rule.units[0];
    if (!scan || (scan.unit && !rule.units.includes(scan.unit))) {
      this.refuse(found, rule.expected, remedy);
      return undefined;
    }
    return this.numberOfText(found, scan, columnUnit, rule, remedy);
  }

  private numberOfText(
    found: FoundCell,
    scan: ScannedNumber,
    columnUnit: TextUnit | undefined,
    rule: NumberRule,
    remedy: string,
  ) {
    const unit = scan.unit ?? columnUnit;
    const read = readScanned(scan, isMmOrIn(unit), this.table.settledSign(found.column, columnUnit));
    const breach = typeof read === 'object' && 'value' in read && breachOf(rule, toNumber(read.value), unit);
    if (read === 'not a number') {
      this.refuse(found, rule.expected, remedy);
    } else if ('either' in read) {
      this.refuse(
        found,
        `a number with one reading, not ${read.either.join(' or ')}`,
        'type it as a number, or without the thousands mark',
      );
    } else if (breach) {
      this.refuse(found, breach, remedy);
    } else {
      if (!scan.unit && !scan.fraction) {
        const { name } = this.table.sheet;
        this.table.bareNumbers.push({
          sheet: name,
          row: this.row,
          column: found.column,
          value: toNumber(read.value),
        });
      }
      return { value: read.value, unit };
    }
    return undefined;
  }

  refuse(found: FoundCell, expected: string, remedy: string): void {
    this.bad.push({
      sheet: this.table.sheet.name,
      cell: cellAddress(this.row, found.column),
      header: found.header,
      found: describe(found.cell),
      expected,
      remedy,
    });
  }
}

interface FoundCell {
  readonly cell: Cell;
  readonly column: number;
  readonly header: string;
  readonly unit: TextUnit | undefined;
}

const ABSOLUTE_ZERO = -273.15;

/** What stands in a cell, in words. */
export function describe({ content, formula }: Cell): string {
  if (!content) return `the formula ${quoted(`=${formula ?? ''}`)} without a value`;
  switch (content.kind) {
    case 'number':
      return `the number ${content.value}`;
    case 'text':
      return `the text ${quoted(content.value)}`;
    case 'boolean':
      return content.value ? 'TRUE' : 'FALSE';
    case 'date':
      return `a date or time (serial number ${roundToWhole(content.value * 1e5) / 1e5})`;
    case 'error':
      return `the error ${content.value}`;
  }
}

export function listOf(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}
