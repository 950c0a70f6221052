/** Rows of the sheets of parts, each under its sheet's name in the records. */
export class BySheet<Row> {
  constructor(private readonly lists: ReadonlyMap<string, readonly Row[]>) {}

  /** Of one sheet; none where the book does not have it. */
  of(sheet: string): readonly Row[] {
    return this.lists.get(sheet) ?? [];
  }

  /** Of several sheets, one behind the other. */
  ofAll(sheets: readonly string[]): readonly Row[] {
    return sheets.length === 1 ? this.of(sheets[0]!) : sheets.flatMap((sheet) => this.of(sheet));
  }

  /** Of every sheet, in the order of the sheets. */
  all(): Row[] {
    return [...this.lists.values()].flat();
  }

  sheets(): Iterable<string> {
    return this.lists.keys();
  }

  map<Result>(make: (rows: readonly Row[], sheet: string) => readonly Result[]): BySheet<Result> {
    return new BySheet(new Map([...this.lists].map(([sheet, rows]) => [sheet, make(rows, sheet)])));
  }

  filter(isWanted: (row: Row) => boolean): BySheet<Row> {
    return this.map((rows) => rows.filter(isWanted));
  }
}
