/** Different numbers of one column that are kept. */
const MOST_KEPT = 20_000;

/** What was read of the numbers of one column: in a long list, many are alike. */
export class KnownNumbers<Read> {
  private readonly known = new Map<number, Read>();

  of(value: number, read: () => Read | undefined): Read | undefined {
    const known = this.known.get(value);
    if (known) return known;
    const found = read();
    if (found && this.known.size < MOST_KEPT) this.known.set(value, found);
    return found;
  }
}
