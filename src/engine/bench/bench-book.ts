/**
 * A workbook that is being filled at the bench: its cells in memory, where readings go, and which are still blank.
 * Every change is a fill of one cell, named by sheet, part and spot, so that a log of fills makes the same book again.
 */

import { type Grain, grainOfRatio } from '../../maths/grain.js';
import { assessMeasured, type Measured } from '../assess/assess.js';
import { groupBy } from '../assess/context.js';
import { isBlank } from '../book/blank-cell.js';
import type { Book } from '../book/book.js';
import { leftOutOf } from '../book/data-rows.js';
import { nameKey } from '../book/names.js';
import { openBook } from '../book/open-book.js';
import { isMadeByProgram } from '../book/own-columns.js';
import { describe } from '../book/problems.js';
import type { ReadingColumn, Table } from '../book/table.js';
import { ownHeaders } from '../columns/result-headers.js';
import { readBook } from '../run-book.js';
import type { Cell, WorkbookModel } from '../workbook-model.js';
import { type BenchRow, benchRows, isAskedFor } from './bench-row.js';
import { modelAround } from './model-around.js';
import { type CellFill, cellKey, PendingFills } from './pending-fills.js';
import { type Fault, readTyped, type TypedReading } from './typed-reading.js';

export type { CellFill } from './pending-fills.js';
export type { TypedReading } from './typed-reading.js';

/** A spot of a part that a reading can go to. */
export interface BenchSpot {
  readonly sheet: string;
  readonly row: number;
  readonly part: string;
  readonly column: ReadingColumn;
}

/** `A 0`, `A 0 #2`, `Wall 1`. */
export function spotName({ station, angle, repeat }: ReadingColumn): string {
  const spot = angle === undefined ? station : `${station} ${angle}`;
  return repeat === 1 ? spot : `${spot} #${repeat}`;
}

export const sameSpot = (a: ReadingColumn, b: ReadingColumn) =>
  a.station === b.station && a.angle === b.angle;

export class BenchBook {
  /** The book as it was opened, or as it was when a column was added; the readings since then are in its cells only. */
  measured!: Measured;
  private byName!: Map<string, BenchRow[]>;
  private byRow!: Map<string, BenchRow>;
  private readingsByPart!: Map<string, Map<number, Grain>>;
  private readonly model: WorkbookModel;
  /** Cells that the user's formulas fill. */
  private readonly formulas = new Set<string>();
  /** What the workbook's file does not hold yet. */
  readonly pending = new PendingFills();

  /** @throws UserError where the book cannot be read. */
  constructor(model: WorkbookModel) {
    this.model = withoutFormulas(readBook(model));
    for (const sheet of model.sheets) {
      sheet.rows.forEach((cells, row) => {
        cells?.forEach((cell, column) => {
          if (cell?.formula !== undefined) this.formulas.add(cellKey(sheet.name, row, column));
        });
      });
    }
    this.reread();
  }

  get file(): string {
    return this.model.file;
  }

  get unit() {
    return this.measured.book.setup.lengthUnit;
  }

  /** Whether the book holds results of an earlier run, which new readings make stale. */
  get hasResults(): boolean {
    return this.measured.book.own.size > 0 || this.model.sheets.some(isMadeByProgram);
  }

  table(sheet: string): Table | undefined {
    return this.measured.book.tables.get(sheet);
  }

  parts(): BenchRow[] {
    return benchRows(this.measured.book);
  }

  /** The gauge of a part; undefined where its row names none, or is of Fits. */
  gaugeAt({ sheet, row }: Pick<BenchSpot, 'sheet' | 'row'>): string | undefined {
    return this.byRow.get(rowKey(sheet, row))?.gauge;
  }

  /** The size from which the readings of a part are deviations. */
  settingAt({ sheet, row }: Pick<BenchSpot, 'sheet' | 'row'>): BenchRow['setTo'] {
    return this.byRow.get(rowKey(sheet, row))?.setTo;
  }

  partAt(sheet: string, row: number): BenchRow {
    return this.byRow.get(rowKey(sheet, row))!;
  }

  /** Rows with the name; several where the name stands more than once, or in several sheets. */
  partsNamed(name: string, sheet?: string): BenchRow[] {
    const named = this.byName.get(nameKey(name)) ?? [];
    return sheet === undefined ? named : named.filter((part) => part.sheet === sheet);
  }

  /** The readings of a part by column, in grains as read: neither corrected nor averaged. */
  readings(sheet: string, row: number): ReadonlyMap<number, Grain> {
    return this.readingsByPart.get(rowKey(sheet, row)) ?? new Map();
  }

  /** A part and the fits that it stands in, computed from the cells as they are now. */
  around(sheet: string, row: number): Measured {
    const { book, fits } = this.measured;
    return assessMeasured(
      openBook(modelAround(this.model, book, fits, { sheet, row }), book.setup, ownHeaders),
    );
  }

  cell(sheet: string, row: number, column: number): Cell | undefined {
    return this.table(sheet)?.sheet.rows[row]?.[column];
  }

  isBlank({ sheet, row, column }: Omit<BenchSpot, 'part'>): boolean {
    const isFormula = this.formulas.has(cellKey(this.table(sheet)!.sheet.name, row, column.column));
    return !isFormula && isBlank(this.cell(sheet, row, column.column));
  }

  /** What a cell holds, as it would be typed; blank for nothing. */
  textAt(sheet: string, row: number, column: number): string {
    const content = this.cell(sheet, row, column)?.content;
    return content === undefined ? '' : String(content.value);
  }

  /** Every spot of every part that has a name of its own, in the order of rows and columns. */
  spots(): BenchSpot[] {
    return this.parts().flatMap((part) => {
      const { sheet, row, name } = part;
      if (name === '' || this.partsNamed(name, sheet).length > 1) return [];
      const columns = this.table(sheet)!.readingColumns.filter((column) => isAskedFor(part, column));
      return columns.map((column) => ({ sheet, row, part: name, column }));
    });
  }

  /** What a text says in the cell of a spot, by the rules that a cell is read by; a sentence where it is no reading. */
  read(text: string, spot: BenchSpot): TypedReading | Fault {
    const { sheet, row, column } = spot;
    return readTyped(this.table(sheet)!, row, column, text, this.settingAt(spot));
  }

  /** Takes a value into a cell, to be written later. */
  fill(fill: CellFill): void {
    this.pending.add(fill);
    const sheet = this.model.sheets.find(({ name }) => name === fill.sheet)!;
    sheet.rows[fill.row] ??= [];
    const cells = sheet.rows[fill.row]!;
    const { value } = fill;
    if (value === '') delete cells[fill.column];
    else if (typeof value === 'number') cells[fill.column] = { content: { kind: 'number', value } };
    else cells[fill.column] = { content: { kind: 'text', value } };
  }

  /** Takes a reading into its spot, or with undefined empties it. */
  fillSpot({ sheet, row, column }: BenchSpot, reading: TypedReading | undefined): void {
    const own = this.readingsByPart.get(rowKey(sheet, row)) ?? new Map<number, Grain>();
    this.readingsByPart.set(rowKey(sheet, row), own);
    if (reading) own.set(column.column, grainOfRatio(reading.mm));
    else own.delete(column.column);
    const table = this.table(sheet)!;
    // A cell of a new column looks as the first of its spot does.
    const { column: like } = table.readingColumns.find((other) => sameSpot(other, column)) ?? column;
    this.fill({ sheet: table.sheet.name, row, column: column.column, value: reading?.value ?? '', like });
  }

  /** Takes a text that is no reading back into its cell. */
  fillRaw({ sheet, row, column }: BenchSpot, value: string): void {
    this.fill({ sheet: this.table(sheet)!.sheet.name, row, column: column.column, value });
    this.reread();
  }

  /** Everything read anew from the cells as they are now: where more than readings has changed. */
  reread(): void {
    this.measured = assessMeasured(readBook(this.model));
    const parts = this.parts();
    this.byName = groupBy(parts, ({ name }) => nameKey(name));
    this.byRow = new Map(parts.map((part) => [rowKey(part.sheet, part.row), part]));
    this.readingsByPart = new Map(
      parts.map(({ sheet, row, readings }) => [
        rowKey(sheet, row),
        new Map(readings.map(({ column, mm }) => [column.column, grainOfRatio(mm)])),
      ]),
    );
  }

  /** What the cell of a spot holds, for messages; undefined for nothing. */
  shownAt({ sheet, row, column }: BenchSpot): string | undefined {
    const cell = this.cell(sheet, row, column.column);
    return isBlank(cell) ? undefined : describe(cell!);
  }

  /** What a cell holds, for messages. */
  shown(sheet: string, row: number, column: number): string {
    const cell = this.cell(sheet, row, column);
    return cell ? describe(cell) : 'nothing';
  }
}

/** A copy with the values alone, which the bench may change; formulas have shown which rows hold no part. */
function withoutFormulas({ model, tables }: Book): WorkbookModel {
  const leftOut = new Map([...tables.values()].map((table) => [table.sheet.name, leftOutOf(table)]));
  const sheets = model.sheets.map((sheet) => ({
    ...sheet,
    ...(leftOut.has(sheet.name) && { leftOut: leftOut.get(sheet.name)! }),
    rows: sheet.rows.map((cells) => cells?.map((cell) => cell && { content: cell.content })),
  }));
  return { ...model, sheets };
}

const rowKey = (sheet: string, row: number) => `${sheet} ${row}`;
