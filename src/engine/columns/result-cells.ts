/** The result cells of one sheet. They are many, so each is made when it is asked for. */
import type { LengthUnit } from '../../maths/units.js';
import { inUnit, snapToGrain } from '../../maths/units.js';
import type { OutputCell, OutputFormat, PlacedCell } from '../workbook-model.js';
import type { TemplateValues } from './block-engine.js';
import type { ResultColumn } from './result-column.js';

export interface ResultRows<Row> {
  readonly rows: readonly Row[];
  /** The row of the sheet that a row stands in. */
  readonly rowOf: (row: Row) => number;
  /** The first result column. */
  readonly first: number;
  readonly columns: readonly ResultColumn<Row>[];
  readonly values: TemplateValues;
}

/** From the top row down, each row from left to right. */
export class ResultCells<Row = unknown> implements Iterable<PlacedCell> {
  constructor(
    private readonly results: ResultRows<Row>,
    private readonly unit: LengthUnit,
  ) {}

  get formats(): ReadonlySet<OutputFormat> {
    return new Set(this.results.columns.map((column) => this.formatOf(column)));
  }

  /** The last row of the sheet that has results; −1 where there is none. */
  get lastRow(): number {
    const { rows, rowOf } = this.results;
    return rows.length === 0 ? -1 : rowOf(rows.at(-1)!);
  }

  get rowCount(): number {
    return this.results.rows.length;
  }

  *[Symbol.iterator](): Generator<PlacedCell> {
    for (const at of this.results.rows.keys()) yield* this.ofRow(at);
  }

  /** The cells of one of the rows, counted from 0 in the order in which they were given. */
  ofRow(at: number): PlacedCell[] {
    const { rows, rowOf, first, columns, values } = this.results;
    const own = rows[at]!;
    const row = rowOf(own);
    const cells: PlacedCell[] = [];
    const ofColumns = values.ofRow(at);
    columns.forEach((column, place) => {
      const found = ofColumns[place];
      const formula = column.live?.(own);
      if (found === undefined && formula === undefined) return;
      const cell: OutputCell = { value: this.shown(column, found), format: this.formatOf(column), formula };
      cells.push({ row, column: first + place, cell });
    });
    return cells;
  }

  /** Lengths computed on the grain are brought back onto it exactly. */
  private shown({ format }: ResultColumn<Row>, value: string | number | undefined): string | number {
    return format === 'length' && typeof value === 'number'
      ? inUnit(snapToGrain(value, this.unit), this.unit)
      : (value ?? '');
  }

  private formatOf({ format }: ResultColumn<Row>): OutputFormat {
    if (format !== 'length') return format;
    return this.unit === 'in' ? 'in' : 'mm';
  }
}
