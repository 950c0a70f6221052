/** The journals that rods ran on, where the rod may stay. */
import { ranOn } from './kept-fits.js';
import { BIG_END, keyOfKind } from './part-classes.js';
import type { Stock, StockJournal, StockRod } from './stock.js';
import type { ProvableLimits } from './verdicts.js';

/** A journal with a rod that ran on it. */
export interface Home {
  /** Place of the engine in the stock. */
  readonly engine: number;
  readonly journal: StockJournal;
  readonly rod: StockRod;
}

const placeKey = (engineType: string, engine: string, position: string) =>
  JSON.stringify([engineType, engine, position]);

/** Every journal with each rod that ran on it, in the order of the stock. */
export function homesOf({ engines, rods }: Stock, limits: ReadonlyMap<string, ProvableLimits>): Home[] {
  const byPlace = new Map<string, StockRod[]>();
  for (const rod of rods) {
    if (!rod.ran) continue;
    const key = placeKey(rod.engineType, rod.ran.engine, rod.ran.position);
    byPlace.set(key, [...(byPlace.get(key) ?? []), rod]);
  }
  return engines.flatMap((engine, place) =>
    engine.journals.flatMap((journal) => {
      const own = limits.get(keyOfKind(journal));
      if (!own || !journal.part || journal.caseBore || journal.fit !== BIG_END) return [];
      return (byPlace.get(placeKey(journal.engineType, engine.name, journal.position)) ?? [])
        .filter(
          (rod) =>
            ranOn(rod.ran, engine, journal) && (own.massSpread === undefined || rod.mass !== undefined),
        )
        .map((rod) => ({ engine: place, journal, rod }));
    }),
  );
}
