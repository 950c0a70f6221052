/** From named parts to the classes of a search: the reverse of named-fits.ts. */
import { placesIn } from './model-spaces.js';
import { NO_ROD } from './sites.js';
import type { MatchedFit, TakenShell } from './stock.js';
import type { WorkingSets } from './working-sets.js';

/**
 * Empties the journals of some engines, and fills journals as some fits say.
 * @param engines by name
 * @param rowOf the row of the searched stock for a row of a fit, which may be a copy of it
 */
export function putFits(
  sets: WorkingSets,
  engines: ReadonlySet<string>,
  fits: readonly MatchedFit[],
  rowOf: (row: object) => object,
): void {
  const { sites, problem } = sets.table;
  const places = placesIn(problem);
  const rods = new Map(problem.rods.flatMap(({ rods }) => rods.map((rod) => [rod.name, rod] as const)));
  const site = new Map(sites.map(({ journal }, at) => [journal, at]));
  const shell = ({ shell: row }: TakenShell) => places.shell.get(rowOf(row))!;
  for (const [at, { engine }] of sites.entries())
    if (engines.has(problem.stock.engines[engine]!.name)) sets.put(at, undefined);
  for (const { journal, bore, upper, lower } of fits) {
    const rod = journal.caseBore ? NO_ROD : places.rod.get(rods.get(bore.name)!)!;
    sets.put(site.get(journal)!, { rod, upper: shell(upper), lower: shell(lower) });
  }
}
