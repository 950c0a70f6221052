/** What a plan for one journal holds, and which of two plans is the cheaper. */
import type { Grain } from '../grain.js';
import type { StockJournal, StockNewShell } from '../matching/stock.js';
import type { PooledRod, PooledShell } from './pool.js';
import type { GivenLimits, Side } from './rules.js';
import type { Measure, Window } from './windows.js';

/** What is known of the parts of one kind that are still to be found. */
export interface KindParts {
  readonly limits: GivenLimits;
  readonly measureBore: Measure;
  readonly measureWall: Measure;
  /** Sizes of a bore that is proved to be within its own limits. */
  readonly boreRange: Window;
  /** What bores and walls of the kind are like; undefined where nothing says. */
  readonly usualBore: Grain | undefined;
  readonly usualWall: Grain | undefined;
  /** Shells that can be bought, whether or not matching may buy. */
  readonly newShells: Readonly<Record<Side, readonly StockNewShell[]>>;
}

export function listsShells({ newShells: { upper, lower } }: KindParts): boolean {
  return upper.length + lower.length > 0;
}

export type Added =
  | { readonly is: 'new shell'; readonly side: Side; readonly shell: StockNewShell }
  | { readonly is: 'wall'; readonly side: Side; readonly window: Window }
  /** Both halves, any two of these walls; `apart`: with no greater difference. */
  | { readonly is: 'walls'; readonly window: Window; readonly apart: Grain | undefined }
  | { readonly is: 'rod'; readonly window: Window; readonly mass: MassRange | undefined }
  /** A rod and a pair, of which bore less both walls is in the window. */
  | { readonly is: 'rod and walls'; readonly window: Window; readonly mass: MassRange | undefined };

/** Grams; undefined where the mass only has to be known. */
export interface MassRange {
  readonly from: number | undefined;
  readonly to: number | undefined;
}

export interface PlacePlan {
  readonly journal: StockJournal;
  readonly added: readonly Added[];
  /** Parts that are there and go with it. */
  readonly rod: PooledRod | undefined;
  readonly upper: PooledShell | undefined;
  readonly lower: PooledShell | undefined;
  readonly cost: Cost;
}

/** Compared one after the other: walls that no listed shell has, rods, walls, money, parts taken from other cranks. */
export type Cost = readonly [unlisted: number, rods: number, walls: number, price: number, taken: number];

export function compareCosts(a: readonly number[], b: readonly number[]): number {
  const place = a.findIndex((value, at) => value !== b[at]);
  return place < 0 ? 0 : a[place]! - b[place]!;
}

/** A plan before it is known for which journal. */
export type Draft = Omit<PlacePlan, 'journal' | 'cost'>;

/** @param isListed whether new shells are listed for the fit */
export function costOf({ added, rod, upper, lower }: Draft, isListed: boolean): Cost {
  const count = (...kinds: Added['is'][]) => added.filter(({ is }) => kinds.includes(is)).length;
  const walls = count('wall') + 2 * count('walls', 'rod and walls');
  // Both halves of a pair are added, for the price of one pair.
  const priceOf = (each: Added) =>
    each.is !== 'new shell' || (each.shell.half === 'pair' && each.side === 'lower') ? 0 : each.shell.price;
  const price = added.reduce((sum, each) => sum + priceOf(each), 0);
  const taken = [rod, upper, lower].filter((entry) => entry?.holder).length;
  return [isListed ? walls : 0, count('rod', 'rod and walls'), walls, price, taken];
}
