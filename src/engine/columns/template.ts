/** What the columns of many alike rows are computed from. */
import { EmptyValue } from 'hyperformula';
import type { Assessment } from '../assess/assess.js';
import type { ResultColumn } from './result-column.js';

/** A cell of an input as the engine holds it; the symbol is BLANK. */
export type InputCell = number | string | symbol;

/** A blank cell: the engine knows no other symbol. */
export const BLANK: symbol = EmptyValue;

export interface Template<Row> {
  /** A name of its own among the templates. */
  readonly name: string;
  /** What messages call the sheet that the columns stand in. */
  readonly sheet: string;
  /** The row of the sheet that a row stands in. */
  readonly rowOf: (row: Row) => number;
  readonly assessment: Assessment;
  readonly rows: readonly Row[];
  /** Cells that are the same for every row. */
  readonly constants: Readonly<Record<string, readonly InputCell[]>>;
  /** The names of the inputs. */
  readonly inputs: readonly string[];
  /** The cells of each input in a row; a table stands in one line, a row of it behind the other. */
  readonly inputsOf: (row: Row) => readonly (readonly InputCell[])[];
  readonly columns: readonly ResultColumn<Row>[];
}
