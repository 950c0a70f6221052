/** One sheet of a stock: the cells that are written, and the table that they make. */

import { fromMm } from '../../maths/units.js';
import { isBlank } from '../book/blank-cell.js';
import { KnownNumbers } from '../book/known-numbers.js';
import { nameText } from '../book/names.js';
import type { BadCell } from '../book/problems.js';
import { readAmount } from '../book/read-amount.js';
import { type BookUnits, type ReadingColumn, type ReadLength, Table } from '../book/table.js';
import { engineType } from '../input-sheets/common-columns.js';
import type { InputSheet } from '../input-sheets/input-sheet.js';
import type { NameQuantity } from '../input-sheets/quantities.js';
import { type Cell, cellAddress, type SheetModel } from '../workbook-model.js';
import { type CopiedColumn, MergedColumns, type SourceSheet } from './merged-columns.js';
import { amountCell, refusedCell, torqueCell, typedCell, unitWithoutSaying } from './written-cell.js';

/** A row of a single book. */
export interface SourceRow {
  readonly table: Table;
  readonly row: number;
  readonly bad: readonly BadCell[];
  readonly readings?: readonly ReadLength[];
  /** The engine type of a row that names none. */
  readonly engineType: string | undefined;
  readonly nameOf: (name: string, quantity: NameQuantity) => string;
}

/** Where a row is in the stock. */
export interface MovedRow {
  readonly row: number;
  readonly bad: readonly BadCell[];
  readonly cells: readonly (Cell | undefined)[];
}

const NOTHING: readonly never[] = [];

export class MergedSheet {
  readonly table: Table;
  private readonly sheet: SheetModel;
  private readonly columns: MergedColumns;
  private readonly readingAt: ReadonlyMap<number, ReadingColumn>;
  /** Cells of numbers of another unit: in a long list, many are alike. */
  private readonly known = new Map<CopiedColumn, KnownNumbers<Cell>>();

  constructor(
    record: InputSheet,
    sources: readonly SourceSheet[],
    private readonly units: BookUnits,
  ) {
    this.columns = new MergedColumns(record, sources);
    const titles = this.columns.headers.map((header): Cell => ({ content: { kind: 'text', value: header } }));
    this.sheet = { name: record.name, rows: [titles] };
    this.table = new Table(record, this.sheet, units);
    this.readingAt = new Map(this.table.readingColumns.map((reading) => [reading.column, reading]));
  }

  /** Puts a row below the others. */
  add(source: SourceRow): MovedRow {
    const { rows } = this.sheet;
    const row = rows.length;
    const cells: (Cell | undefined)[] = [];
    // As long as the row is: what grows has room to spare.
    cells.length = this.columns.headers.length;
    const columns = this.columns.of(source.table);
    const isAt = (bad: BadCell, { from }: CopiedColumn) => bad.cell === cellAddress(source.row, from);
    for (const column of columns) {
      const cell = source.table.sheet.rows[source.row]?.[column.from];
      if (isBlank(cell)) continue;
      const isRefused = source.bad.some((bad) => isAt(bad, column));
      cells[column.to] = this.writtenCell(cell!, column, source, isRefused);
    }
    const type = this.table.columns.get(engineType.header);
    if (type && source.engineType && !cells[type.column]) {
      cells[type.column] = { content: { kind: 'text', value: source.engineType } };
    }
    rows.push(cells);
    const bad = source.bad.flatMap((one) => {
      const column = columns.find((other) => isAt(one, other));
      return column ? [{ ...one, sheet: this.sheet.name, cell: cellAddress(row, column.to) }] : [];
    });
    return { row, bad: bad.length > 0 ? bad : NOTHING, cells };
  }

  /** Whether the cell under a header is a plain number, over which a live formula can work. */
  isNumber({ cells }: MovedRow, header: string): boolean {
    const known = this.table.columns.get(header);
    return known !== undefined && cells[known.column]?.content?.kind === 'number';
  }

  /** The readings of a row, each in its column of the stock. */
  readingsOf({ table, readings = [] }: SourceRow, { cells }: MovedRow): ReadLength[] {
    return this.columns.of(table).flatMap((column) => {
      const { is } = column;
      const read = 'reading' in is && readings.find((other) => other.column === is.reading);
      if (!read) return [];
      const reading = this.readingAt.get(column.to)!;
      const { content } = cells[column.to]!;
      const isNumber = content?.kind === 'number';
      // Deviations that are alike may be of parts that are not.
      if (!isNumber || read.deviation) return [{ ...read, column: reading, isNumber }];
      const make = () => ({ column: reading, mm: read.mm, isNumber: true });
      return this.table.readingsOf(reading).of(content.value, make)!;
    });
  }

  private writtenCell(
    cell: Cell,
    column: CopiedColumn,
    source: SourceRow,
    isRefused: boolean,
  ): Cell | undefined {
    if ('reading' in column.is) return this.writtenReading(cell, column, column.is.reading, source);
    const { table } = source;
    const { quantity } = column.is.input;
    const { content } = cell;
    const unit = unitWithoutSaying(quantity, this.units);
    const own = column.unit ?? unitWithoutSaying(quantity, table.units);
    if (isRefused) return refusedCell(cell, own, unit);
    if (quantity.kind === 'name') {
      const name = content && nameText(content);
      const renamed = name && source.nameOf(name, quantity);
      return name === renamed ? typedCell(cell) : { content: { kind: 'text', value: renamed! } };
    }
    if (quantity.kind === 'torque' && content) return torqueCell(content, own, unit);
    if (!('units' in quantity) || (content?.kind === 'number' && own === unit)) return typedCell(cell);
    const amount = readAmount(content, own, quantity, (meant) => table.settledSign(column.from, meant));
    return 'value' in amount
      ? amountCell({ ...amount, content: content! }, unit)
      : refusedCell(cell, own, unit);
  }

  private writtenReading(cell: Cell, column: CopiedColumn, readingColumn: ReadingColumn, source: SourceRow) {
    const { content } = cell;
    const { length } = this.units;
    const { unit } = readingColumn;
    const reading = source.readings?.find((other) => other.column === readingColumn);
    if (!reading) return refusedCell(cell, unit, length);
    if (content?.kind === 'number' && unit === length) return typedCell(cell);
    const write = () =>
      amountCell({ value: fromMm(reading.deviation ?? reading.mm, unit), unit, content: content! }, length);
    if (content?.kind !== 'number') return write();
    const known = this.known.get(column) ?? new KnownNumbers<Cell>();
    this.known.set(column, known);
    return known.of(content.value, write);
  }
}
