/** The cells of one row of a table, each read by the rule of its quantity; refused cells gather in `bad`. */
import { add, toNumber } from '../../maths/decimal.js';
import type { Grain } from '../../maths/grain.js';
import type { TorqueRange } from '../../maths/torque.js';
import { grainOf, toCelsius, toMm } from '../../maths/units.js';
import {
  breachOf,
  type InputQuantity,
  isWorkshopTemperature,
  type NumberRule,
  type ReadExactLength,
  type ReadTemperature,
  SIGNED_LENGTH,
  SIZE,
  type TextUnit,
  type TorqueQuantity,
  WORKSHOP_TEMPERATURE,
} from '../input-sheets/quantities.js';
import { type Cell, cellAddress } from '../workbook-model.js';
import { isBlank } from './blank-cell.js';
import { nameText } from './names.js';
import { scanNumber } from './number-text.js';
import { areApart, type TypedLength } from './printed-twice.js';
import { type BadCell, describe, listOf } from './problems.js';
import { type Amount, readAmount } from './read-amount.js';
import { readTorque } from './read-torque.js';
import { isLength, type KnownColumn, type ReadingColumn, type ReadLength, type Table } from './table.js';

export class Row {
  readonly bad: BadCell[] = [];
  /** What is printed twice in this row and is not the same, in words. */
  readonly differing: string[] = [];

  constructor(
    readonly table: Table,
    readonly row: number,
  ) {}

  /** What the cell under a header holds; undefined where it is blank, refused, or not read. */
  value(
    header: string,
    quantity: InputQuantity,
  ): Grain | number | string | ReadTemperature | ReadExactLength | TorqueRange | undefined {
    switch (quantity.kind) {
      case 'length':
        return this.length(header, quantity);
      case 'exact length':
        return this.exactLength(header, quantity);
      case 'number':
        return this.plainNumber(header, quantity);
      case 'temperature':
        return this.temperature(header, quantity);
      case 'torque':
        return this.torque(header, quantity);
      case 'name':
        return this.name(header);
      case 'word':
        return this.word(header, quantity.words);
      case 'text':
        return undefined;
    }
  }

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
    const second = this.filled(header, this.table.secondUnits.get(header));
    const typed = found && this.typedLength(found, rule);
    const again = second && this.typedLength(second, rule);
    if (typed && again && areApart(typed, again)) {
      this.differing.push(
        `${header} is ${textOf(typed, found)} and ${textOf(again, second)}, which differ by more than rounding`,
      );
    }
    const counts = found ? typed : again;
    return counts && grainOf(counts.value, counts.unit);
  }

  /** A length that is not rounded to the grain. */
  exactLength(header: string, rule: NumberRule): ReadExactLength | undefined {
    const found = this.cell(header);
    const typed = found && this.typedLength(found, rule);
    return typed && { mm: toMm(typed.value, typed.unit), isNumber: found.cell.content?.kind === 'number' };
  }

  /** A reading that is the deviation from the size to which the gauge was set; refused where the sum is no size. */
  deviation(column: ReadingColumn, setTo: ReadExactLength): ReadLength | undefined {
    const cell = this.table.sheet.rows[this.row]?.[column.column];
    if (isBlank(cell)) return undefined;
    const read = this.readLength(column, cell!, SIGNED_LENGTH);
    if (!read) return undefined;
    const mm = add(setTo.mm, read.mm);
    const breach = breachOf(SIZE, toNumber(mm), 'mm');
    if (breach === undefined) return { ...read, mm, deviation: read.mm };
    const found = {
      cell: cell!,
      column: column.column,
      header: column.header,
      unit: column.unit as TextUnit,
    };
    this.refuse(found, `a deviation from Set to; with it ${breach}`, 'measure again or correct the cell');
    return undefined;
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
  plainNumber(header: string, rule: NumberRule & { readonly decimals?: number }): number | undefined {
    const found = this.cell(header);
    const read = found && this.number(found, rule);
    if (!read) return undefined;
    const value = toNumber(read.value);
    return rule.decimals === undefined ? value : roundTo(value, rule.decimals);
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
    if (isWorkshopTemperature(toNumber(celsius)))
      return { celsius, isNumber: found.cell.content?.kind === 'number' };
    this.refuse(found, WORKSHOP_TEMPERATURE, 'check the reading and its unit');
    return undefined;
  }

  /** A torque, as a range in the unit that it was typed in. */
  torque(header: string, rule: TorqueQuantity): TorqueRange | undefined {
    const found = this.cell(header);
    if (!found) return undefined;
    const read = readTorque(found, rule, (unit) => this.table.settledSign(found.column, unit));
    if ('low' in read) return read;
    this.refuse(found, read.expected, read.remedy);
    return undefined;
  }

  /** The cell under a header, or undefined where there is no such column or the cell is blank. */
  cell(header: string): FoundCell | undefined {
    return this.filled(header, this.table.columns.get(header));
  }

  private filled(header: string, known: KnownColumn | undefined): FoundCell | undefined {
    if (!known) return undefined;
    const cell = this.table.sheet.rows[this.row]?.[known.column];
    return isBlank(cell) ? undefined : { cell: cell!, column: known.column, header, unit: known.unit };
  }

  address(header: string): string | undefined {
    const known = this.table.columns.get(header);
    return known && cellAddress(this.row, known.column);
  }

  private typedLength(found: FoundCell, rule: NumberRule): TypedLength | undefined {
    const unit = found.unit ?? this.table.units.length;
    const read = this.number({ ...found, unit }, rule);
    return read && { value: read.value, unit: isLength(read.unit) ? read.unit : this.table.units.length };
  }

  private number(found: FoundCell, rule: NumberRule): Amount | undefined {
    const read = readAmount(found.cell.content, found.unit, rule, (unit) =>
      this.table.settledSign(found.column, unit),
    );
    if ('expected' in read) {
      this.refuse(found, read.expected, read.remedy);
      return undefined;
    }
    if (read.isBareText) {
      const { name } = this.table.sheet;
      this.table.bareNumbers.push({
        sheet: name,
        row: this.row,
        column: found.column,
        value: toNumber(read.value),
      });
    }
    return read;
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

function textOf({ unit }: TypedLength, { cell }: FoundCell): string {
  const { content } = cell;
  if (content?.kind === 'number') return `${content.value} ${unit}`;
  const text = content?.kind === 'text' ? content.value.trim() : '';
  return scanNumber(text)?.unit ? text : `${text} ${unit}`;
}

function roundTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return Math.round(value * scale) / scale;
}
