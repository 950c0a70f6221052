/** Which sizes a gauge reaches where Gauges does not say. */
import { GRAINS_PER_MM, type Grain, grainOfRatio } from '../../maths/grain.js';
import type { Book } from '../book/book.js';
import { nameKey } from '../book/names.js';

/** A gauge that measured a size measures its neighbours: one turn of a thimble. Common practice, no published source. */
const NEIGHBOURS: Grain = 0.5 * GRAINS_PER_MM;

/** The sizes that each gauge measured in a book, by its name's key, and as much beside them as any of its kind reaches. */
export function sizesByGauge({
  parts,
}: Book): ReadonlyMap<string, { readonly from: Grain; readonly to: Grain }> {
  const sizes = new Map<string, { from: Grain; to: Grain }>();
  for (const { gauge, readings } of parts.all()) {
    if (gauge === undefined) continue;
    for (const { mm } of readings) {
      const size = grainOfRatio(mm);
      const { from = Infinity, to = -Infinity } = sizes.get(nameKey(gauge)) ?? {};
      sizes.set(nameKey(gauge), {
        from: Math.min(from, size - NEIGHBOURS),
        to: Math.max(to, size + NEIGHBOURS),
      });
    }
  }
  return sizes;
}
