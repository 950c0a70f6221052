/**
 * Which rods may share a crank: those whose masses lie in one window as wide as the mass spread.
 *
 * Masses are typed decimals of grams (612.3), compared as whole numbers of their last decimal, so
 * that 0.3 − 0.2 is not more than 0.1.
 */
import { exact, type Ratio } from '../decimal.js';
import type { Stock, StockRod } from './stock.js';

/** A run of mass ranks, both ends included. */
export interface MassWindow {
  readonly first: number;
  readonly last: number;
}

export interface MassRanks {
  /** Rank of a mass among the distinct masses, lightest 0. */
  readonly rankOf: (mass: number) => number;
  /** The widest windows; every allowed set of rods lies in one of them. */
  readonly windows: readonly MassWindow[];
}

function inOrder(values: readonly bigint[]): bigint[] {
  return [...values].sort((a, b) => Number(a > b) - Number(a < b));
}

/** Values as whole numbers of one common small step. */
export function toCommonStep(values: readonly number[]): bigint[] {
  const ratios: Ratio[] = values.map(exact);
  const step = inOrder(ratios.map(({ denominator }) => denominator)).at(-1) ?? 1n;
  // Decimal denominators are powers of ten: the greatest is a multiple of each.
  return ratios.map(({ numerator, denominator }) => numerator * (step / denominator));
}

/** Whether the masses differ by no more than the spread. */
export function withinMassSpread(masses: readonly number[], spread: number): boolean {
  const [limit, ...steps] = toCommonStep([spread, ...masses]);
  const sorted = inOrder(steps);
  return steps.length === 0 || sorted.at(-1)! - sorted[0]! <= limit!;
}

export function ranksOf(masses: readonly number[], spread: number): MassRanks {
  const distinct = [...new Set(masses)].sort((a, b) => a - b);
  const [limit, ...steps] = toCommonStep([spread, ...distinct]);
  const windows: MassWindow[] = [];
  let last = 0;
  for (let first = 0; first < distinct.length; first++) {
    if (last < first) last = first;
    while (last + 1 < distinct.length && steps[last + 1]! - steps[first]! <= limit!) last++;
    if (windows.length === 0 || last > windows.at(-1)!.last) windows.push({ first, last });
  }
  const ranks = new Map(distinct.map((mass, rank) => [mass, rank]));
  return { rankOf: (mass) => ranks.get(mass)!, windows };
}

/** The windows of each engine type whose big ends have a mass spread. */
export function massRanks(stock: Stock): Map<string, MassRanks> {
  const ranks = new Map<string, MassRanks>();
  for (const { engineType, fit, massSpread } of stock.kinds) {
    if (fit !== 'big end' || massSpread === undefined) continue;
    const masses = stock.rods
      .filter((rod) => rod.engineType === engineType && rod.mass !== undefined)
      .map((rod) => rod.mass!);
    ranks.set(engineType, ranksOf(masses, massSpread));
  }
  return ranks;
}

/** Rods that ran on one engine with none of them in a window with another: it can keep one at most. */
export function rodsNeverTogether(stock: Stock): StockRod[][] {
  const lists: StockRod[][] = [];
  for (const [engineType, { rankOf, windows }] of massRanks(stock)) {
    const reach = (rod: StockRod) => windows.filter(({ first }) => first <= rankOf(rod.mass!)).at(-1)!.last;
    const byEngine = new Map<string, StockRod[]>();
    for (const rod of stock.rods) {
      if (rod.engineType !== engineType || rod.mass === undefined || !rod.ran) continue;
      byEngine.set(rod.ran.engine, [...(byEngine.get(rod.ran.engine) ?? []), rod]);
    }
    for (const own of byEngine.values()) {
      const order = own.sort((a, b) => a.mass! - b.mass!);
      const apart = (light: StockRod, heavy: StockRod) => rankOf(heavy.mass!) > reach(light);
      for (const [place, first] of order.entries()) {
        for (const [at, second] of order.entries()) {
          if (at <= place || !apart(first, second)) continue;
          const list = [first, second];
          for (const rod of order.slice(at + 1)) if (apart(list.at(-1)!, rod)) list.push(rod);
          lists.push(list);
        }
      }
    }
  }
  return lists;
}
