/** Lists of parts that are sorted by size. */

interface Sized {
  readonly row: { readonly part: { readonly size: number } };
}

/** Entries of a list sorted by size, the nearest to a size first. */
export function* outward<Entry extends Sized>(
  list: readonly Entry[],
  size: number,
  reach = Number.POSITIVE_INFINITY,
): Generator<Entry> {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle]!.row.part.size < size) low = middle + 1;
    else high = middle;
  }
  let [below, above] = [low - 1, low];
  const off = (place: number) => {
    const entry = list[place];
    return entry ? Math.abs(entry.row.part.size - size) : Number.POSITIVE_INFINITY;
  };
  for (;;) {
    const isAbove = off(above) <= off(below);
    const place = isAbove ? above : below;
    const entry = list[place];
    if (!entry || off(place) > reach) return;
    yield entry;
    if (isAbove) above++;
    else below--;
  }
}
