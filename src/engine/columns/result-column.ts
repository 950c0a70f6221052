/** One column that the program writes: everything about it stands in one record. */
export interface ResultColumn<Row> {
  readonly header: string;
  readonly format: 'length' | 'plain' | 'text' | 'chance';
  /** What the column says, for the documentation. */
  readonly help: string;
  /** The formula in custom functions, with its `=`; or the plain value where no formula gives it. */
  readonly engine: (row: Row) => string | number | undefined;
  /** The formula in built-in functions, without `=`; undefined where the cell is plain. */
  readonly live?: (row: Row) => string | undefined;
}
