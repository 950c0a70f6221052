/** A list that the program makes: a sheet of its own, and a table of the page. */
import type { Assessment } from '../assess/assess.js';
import type { ResultColumn } from './result-column.js';

export interface ResultTable<Row> {
  readonly name: string;
  readonly columns: readonly ResultColumn<Row>[];
  /** The header of the column that names a row. */
  readonly rowName: string;
  readonly rows: (assessment: Assessment) => readonly Row[];
}

/** One of several lists of different rows. */
export function tableOfAny<Row>(table: ResultTable<Row>): ResultTable<unknown> {
  return table as unknown as ResultTable<unknown>;
}
