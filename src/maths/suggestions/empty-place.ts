/** One empty journal, and the parts that may go on it. */
import type { FitParts } from '../clearance.js';
import type { Grain } from '../grain.js';
import type { StockJournal } from '../matching/stock.js';
import type { MeasuredPart } from '../uncertainty.js';
import { outward } from './outward.js';
import type { KindParts, MassRange } from './plan.js';
import type { Pool, PooledRod, PooledShell } from './pool.js';
import { type AnyShell, type Side, type SingleFitRules, wishOf } from './rules.js';
import { intersect, type Window, windowOf } from './windows.js';

/** The crank of the journal, and the parts that it may still take. */
export interface Giving {
  /** The crank that takes parts; its own stay where they are. */
  readonly engine: string;
  readonly pool: Pool;
  /** Parts that an earlier place of the crank has taken. */
  readonly used: ReadonlyMap<object, number>;
  /** Masses that a rod of the crank may have; undefined where none is asked. */
  readonly mass: MassRange | undefined;
}

/** Most bores and walls that are tried, from the wished size outward: those farther off seldom fit better. */
export const TRIES = 64;
/** The same where bores, uppers and lowers are tried with each other, which multiplies the time. */
export const TRIES_OF_EACH = 16;

export interface Bore {
  readonly rod: PooledRod | undefined;
  readonly part: MeasuredPart;
}

/** How many of an entry the crank may still take. */
export function freeCount(
  entry: PooledRod | PooledShell,
  { engine, used }: Pick<Giving, 'engine' | 'used'>,
): number {
  return entry.holder?.engine === engine ? 0 : entry.count - (used.get(entry) ?? 0);
}

export class EmptyPlace {
  readonly wish: Grain;
  private readonly reach: Grain;
  readonly journalPart: MeasuredPart;

  constructor(
    readonly rules: SingleFitRules,
    readonly kind: KindParts,
    readonly journal: StockJournal,
    readonly giving: Giving,
  ) {
    const { limits } = kind;
    this.journalPart = journal.part!;
    this.wish = wishOf(limits);
    // The clearance of an allowed fit lies in the range; that of an undecided fit may lie outside by its guard.
    this.reach = Math.max(limits.max - this.wish, this.wish - limits.min) * (rules.allowsOutside ? 2 : 1);
  }

  free(entry: PooledRod | PooledShell): number {
    return freeCount(entry, this.giving);
  }

  *bores(): Generator<Bore> {
    const { caseBore } = this.journal;
    if (caseBore) {
      // No shells can be chosen for a bore of which only the size with its own is known.
      if (caseBore.part && !caseBore.hasShells) yield { rod: undefined, part: caseBore.part };
      return;
    }
    const { mass, pool } = this.giving;
    const wall = this.kind.usualWall;
    const wished = wall === undefined ? undefined : this.journalPart.size + this.wish + 2 * wall;
    let tried = 0;
    for (const rod of outward(pool.rods, wished ?? this.kind.usualBore ?? 0)) {
      if (this.free(rod) < 1 || !hasMass(rod.row.mass, mass)) continue;
      if (!this.rules.mayServe(rod.row, this.giving.engine, this.journal)) continue;
      yield { rod, part: rod.row.part };
      if (++tried === TRIES) return;
    }
  }

  parts(bore: MeasuredPart, upper: MeasuredPart, lower: MeasuredPart): FitParts<MeasuredPart> {
    return { bore, upper, lower, journal: this.journalPart };
  }

  /** Shells for one side that make an allowed fit beside the other half, the nearest to the aim first. */
  *beside(bore: MeasuredPart, shell: AnyShell, side: Side): Generator<PooledShell> {
    const other = shell.part;
    const size = bore.size - this.journalPart.size - other.size - this.wish;
    let tried = 0;
    for (const entry of outward(this.giving.pool[side], size, this.reach)) {
      if (this.free(entry) < 1) continue;
      const [upper, lower] = side === 'upper' ? [entry.row, shell] : [shell, entry.row];
      if (!this.rules.mayStand(upper, lower)) continue;
      if (tried++ === TRIES_OF_EACH) return;
      const { part } = entry.row;
      const fit = side === 'upper' ? this.parts(bore, part, other) : this.parts(bore, other, part);
      if (this.rules.allows(fit, this.kind.limits)) yield entry;
    }
  }

  wallWindow(bore: MeasuredPart, other: MeasuredPart, side: Side): Window | undefined {
    const { limits, measureWall } = this.kind;
    const window = windowOf(
      this.rules,
      limits,
      (size) =>
        side === 'upper'
          ? this.parts(bore, measureWall(size), other)
          : this.parts(bore, other, measureWall(size)),
      -1,
    );
    const { halfDifference } = limits;
    if (!window || halfDifference === undefined) return window;
    return intersect(window, { from: other.size - halfDifference, to: other.size + halfDifference });
  }

  boreWindow(upper: MeasuredPart, lower: MeasuredPart): Window | undefined {
    const { limits, measureBore, boreRange } = this.kind;
    const window = windowOf(this.rules, limits, (size) => this.parts(measureBore(size), upper, lower), 1);
    return window && intersect(window, boreRange);
  }
}

export function hasMass(mass: number | undefined, range: MassRange | undefined): boolean {
  if (!range) return true;
  if (mass === undefined) return false;
  return mass >= (range.from ?? mass) && mass <= (range.to ?? mass);
}
