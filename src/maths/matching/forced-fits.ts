/**
 * What an aim forces that is reached to the full: where every journal that can keep its parts keeps them, no other
 * fits of these journals, and no other use of these parts, are left to the aims after it.
 */
import type { Aim } from './aims.js';
import type { Column, Model } from './model-columns.js';
import type { Filter } from './pricing.js';
import { isPair } from './quads.js';

/** What stays open to the aims after one that is reached to the full. */
export interface Forced {
  readonly filter: Filter;
  readonly isOpen: (column: Column) => boolean;
}

/** How many parts of each class serve in forced fits. */
class Served {
  private readonly parts = new Set<object>();

  add(...parts: readonly object[]): void {
    for (const part of parts) this.parts.add(part);
  }

  /** Whether each of some parts serves. */
  every(parts: readonly object[]): boolean {
    return parts.length > 0 && parts.every((part) => this.parts.has(part));
  }
}

/** The journals of some fits, each with the only one of them; undefined where a journal has several. */
function onlyOnes<Fit extends { readonly journal: object }>(
  fits: readonly Fit[],
): ReadonlyMap<object, Fit | undefined> {
  const only = new Map<object, Fit | undefined>();
  for (const fit of fits) only.set(fit.journal, only.has(fit.journal) ? undefined : fit);
  return only;
}

/** @returns undefined where the aim forces nothing */
export function forcedBy(model: Model, aim: Aim, reached: number): Forced | undefined {
  const { kept, homes, journals, rods, shells, spaces, shapes } = model.problem;
  if (aim.amount !== 'kept' && aim.amount !== 'stayed') return undefined;
  const ofJournals = aim.amount === 'kept' ? onlyOnes(kept) : onlyOnes(homes);
  if (ofJournals.size === 0 || reached !== -ofJournals.size) return undefined;
  const served = new Served();
  for (const fit of ofJournals.values()) {
    if (!fit) continue;
    if (fit.rod) served.add(fit.rod);
    // A row of several half-shells is not used up by one fit.
    if ('upper' in fit) served.add(...[fit.upper, fit.lower].filter(({ quantity }) => quantity === 1));
  }
  const isForced = journals.map((each) => each.journals.every((journal) => ofJournals.has(journal)));
  const isServed = rods.map((each) => served.every(each.rods));
  const isUsedUp = shells.map((each) => served.every(each.shells));
  const isOut = spaces.map(({ journal, rod, homes: own }) => {
    // The fits of parts that ran together have columns of their own.
    const isOther = aim.amount === 'kept' || !own;
    return isOther && (isForced[journal]! || (rod !== undefined && isServed[rod]!));
  });
  const none = {
    filledOpen: 0,
    filledBeyond: 0,
    inRange: 0,
    stayed: 0,
    countsStayed: true,
    distance: 0,
    distanceStep: 1,
  };
  return {
    filter: {
      ofSpace: Float64Array.from(isOut, Number),
      ofShape: new Float64Array(shapes.length),
      weights: none,
      most: 0,
    },
    isOpen: (column) =>
      !isPair(column) || !(isUsedUp[column.meaning.upper] || isUsedUp[column.meaning.lower]),
  };
}
