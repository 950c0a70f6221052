/** One column that the program writes: everything about it stands in one record. */
export interface ResultColumn<Row> {
  readonly header: string;
  readonly format: 'length' | 'plain' | 'text' | 'chance';
  /** What the column says, for the documentation. */
  readonly help: string;
  /**
   * The formula in custom functions, with its `=`, over the inputs and the columns of its own row:
   * `=FIT_GRADE([Size],[classes])`.
   */
  readonly engine?: string;
  /** Whether the formula gives the value of a row. */
  readonly isComputed?: (row: Row) => boolean;
  /** The value of a row for which no formula gives it; undefined is a blank cell. */
  readonly plain?: (row: Row) => string | number | undefined;
  /** The formula in built-in functions, without `=`; undefined where the cell is plain. */
  readonly live?: (row: Row) => string | undefined;
}
