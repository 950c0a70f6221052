/** The result cells of one sheet. They are many, so each is made when it is asked for. */
import type { Assessment } from '../assess/assess.js';
import type { OutputFormat, PlacedCell } from '../workbook-model.js';
import type { TemplateValues } from './block-engine.js';
import { liveCell } from './cell-value.js';
import type { Layout } from './layout.js';
import { formatsOf, type ResultColumn } from './result-column.js';

/** Rows of a sheet that have the same columns. */
export interface ResultRows<Row> {
  readonly rows: readonly Row[];
  /** The row of the sheet that a row stands in. */
  readonly rowOf: (row: Row) => number;
  readonly columns: readonly ResultColumn<Row>[];
  /** What the sheet engine makes of the rows, held against what is written. */
  readonly values: TemplateValues;
}

/** From the top row down, each row from left to right. */
export class ResultCells implements Iterable<PlacedCell> {
  private readonly places: readonly { readonly of: ResultRows<unknown>; readonly at: number }[];
  private readonly columns: readonly number[];
  private readonly assessment: Assessment;

  /** @param groups rows of different columns, such as the fits of two kinds, which may stand in any order */
  constructor(
    readonly groups: readonly ResultRows<unknown>[],
    sheet: string,
    private readonly layout: Layout,
  ) {
    this.columns = layout.columns(sheet);
    this.assessment = layout.assessment;
    const places = groups.flatMap((of) => of.rows.map((_, at) => ({ of, at })));
    const rowOf = ({ of, at }: (typeof places)[number]) => of.rowOf(of.rows[at]);
    this.places = groups.length > 1 ? places.sort((a, b) => rowOf(a) - rowOf(b)) : places;
  }

  get formats(): ReadonlySet<OutputFormat> {
    const { lengthUnit } = this.assessment.book.setup;
    return new Set(
      this.groups.flatMap(({ columns }) => columns.flatMap((own) => formatsOf(own, lengthUnit))),
    );
  }

  /** The last row of the sheet that has results; −1 where there is none. */
  get lastRow(): number {
    const last = this.places.at(-1);
    return last ? last.of.rowOf(last.of.rows[last.at]) : -1;
  }

  get rowCount(): number {
    return this.places.length;
  }

  *[Symbol.iterator](): Generator<PlacedCell> {
    for (const at of this.places.keys()) yield* this.ofRow(at);
  }

  /** The cells of one of the rows, counted from 0 in the order of the sheet. */
  ofRow(place: number): PlacedCell[] {
    const { of, at } = this.places[place]!;
    of.values.ofRow(at);
    const own = of.rows[at];
    const row = of.rowOf(own);
    return of.columns.flatMap((column, order): PlacedCell[] => {
      const cell = liveCell(column, own, this.layout);
      return cell ? [{ row, column: this.columns[order]!, cell }] : [];
    });
  }
}
