/** The parts that a crank may still take: what no set holds, and what stands in cranks that stay incomplete. */
import type { FitKind, MatchedFit, Stock, StockRod, StockShell } from '../matching/stock.js';
import { goesOn, type Side, sameKind } from './rules.js';

export interface Pooled<Row> {
  readonly row: Row;
  /** Alike, at this place. */
  readonly count: number;
  /** Where it stands now, in a crank that stays incomplete; undefined for a part that is left over. */
  readonly holder: MatchedFit | undefined;
}

export type PooledRod = Pooled<StockRod>;
export type PooledShell = Pooled<StockShell>;

/** Parts of one kind, sorted by size. */
export interface Pool {
  readonly rods: readonly PooledRod[];
  /** Rods that were measured with their shells in. */
  readonly rodsWithShells: readonly PooledRod[];
  readonly upper: readonly PooledShell[];
  readonly lower: readonly PooledShell[];
}

interface Sized {
  readonly row: { readonly part: { readonly size: number }; readonly name: string };
  readonly holder: MatchedFit | undefined;
}

/** Of parts alike those that are left over first. */
function bySize(a: Sized, b: Sized): number {
  return (
    a.row.part.size - b.row.part.size ||
    Number(a.holder !== undefined) - Number(b.holder !== undefined) ||
    (a.row.name < b.row.name ? -1 : 1)
  );
}

/** Everything that could be pooled, once for all cranks. */
export class Parts {
  readonly rods: PooledRod[] = [];
  readonly shells: PooledShell[] = [];
  private readonly pools = new Map<string, Pool>();

  constructor(stock: Stock, fits: readonly MatchedFit[], completeEngines: readonly string[]) {
    const complete = new Set(completeEngines);
    const taken = new Map<object, number>();
    const take = (row: object) => taken.set(row, (taken.get(row) ?? 0) + 1);
    const rodNamed = new Map(stock.rods.map((row) => [`${row.engineType}\u0000${row.name}`, row]));
    for (const fit of fits) {
      const isOpen = !complete.has(fit.engine);
      const rod = fit.journal.caseBore
        ? undefined
        : rodNamed.get(`${fit.journal.engineType}\u0000${fit.bore.name}`);
      if (rod) {
        take(rod);
        if (isOpen) this.rods.push({ row: rod, count: 1, holder: fit });
      }
      for (const shell of [fit.upper, fit.lower]) {
        // Shells in a bore go where it goes.
        if (shell.from === 'new' || shell.shell.isBrought) continue;
        take(shell.shell);
        if (isOpen) this.shells.push({ row: shell.shell, count: 1, holder: fit });
      }
    }
    for (const row of stock.rods) {
      if (!taken.has(row)) this.rods.push({ row, count: 1, holder: undefined });
    }
    for (const row of stock.shells) {
      if (row.isBrought) continue;
      const count = row.quantity - (taken.get(row) ?? 0);
      if (count > 0) this.shells.push({ row, count, holder: undefined });
    }
    this.rods.sort(bySize);
    this.shells.sort(bySize);
  }

  /**
   * The same lists for every crank: one that takes passes over what it holds itself.
   * @param fromOthers whether parts of incomplete cranks count
   */
  poolFor(kind: FitKind, fromOthers: boolean): Pool {
    const key = JSON.stringify([kind.engineType, kind.fit, fromOthers]);
    const pool = this.pools.get(key) ?? this.makePool(kind, fromOthers);
    this.pools.set(key, pool);
    return pool;
  }

  private makePool(kind: FitKind, fromOthers: boolean): Pool {
    const counts = ({ holder }: Pooled<unknown>) => fromOthers || !holder;
    const shells = this.shells.filter((entry) => counts(entry) && sameKind(entry.row, kind));
    const side = (half: Side) => shells.filter(({ row }) => goesOn(row.half, half));
    const rods = this.rods.filter((entry) => counts(entry) && entry.row.engineType === kind.engineType);
    return {
      rods: rods.filter(({ row }) => !row.hasShells),
      rodsWithShells: rods.filter(({ row }) => row.hasShells),
      upper: side('upper'),
      lower: side('lower'),
    };
  }
}
