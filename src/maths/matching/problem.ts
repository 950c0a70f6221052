/** The stock as the model sees it: classes, gaps, pair shapes, and which gap allows which shape. */

import { type Gap, gapsOf } from './gaps.js';
import type { KeptFit } from './kept-fits.js';
import { keptFits } from './kept-fits.js';
import { type MassWindow, massRanks } from './mass-windows.js';
import { type Shape, shapesOf } from './pairs.js';
import {
  type JournalClass,
  journalClasses,
  kindKey,
  type RodClass,
  rodClasses,
  type ShellClass,
  shellClasses,
} from './part-classes.js';
import type { Stock } from './stock.js';
import { type Guards, guardsOf, isAllowed, isProvable, type ProvableLimits } from './verdicts.js';

export interface OpenGap extends Gap {
  /** Shapes that it allows, by their place among the shapes. */
  readonly shapes: Int32Array;
}

export interface Problem {
  /** In the order of names (order.ts). */
  readonly stock: Stock;
  readonly limits: ReadonlyMap<string, ProvableLimits>;
  readonly journals: readonly JournalClass[];
  readonly rods: readonly RodClass[];
  readonly shells: readonly ShellClass[];
  readonly shapes: readonly Shape[];
  readonly gaps: readonly OpenGap[];
  readonly kept: readonly KeptFit[];
  /** Windows of mass by engine type, where they part the rods at all. */
  readonly windows: ReadonlyMap<string, readonly MassWindow[]>;
  /** Names of the case bores that more than one journal claims; each serves once all the same. */
  readonly sharedBores: ReadonlySet<string>;
}

function provableLimits(stock: Stock): Map<string, ProvableLimits> {
  const limits = new Map<string, ProvableLimits>();
  for (const kind of stock.kinds) {
    if (isProvable(kind)) limits.set(kindKey(kind), kind);
  }
  return limits;
}

/** The shapes that a gap allows; a shape whose guard is in doubt by rounding must be allowed both ways. */
function allowedShapes(
  gap: Gap,
  shapes: readonly Shape[],
  places: readonly number[],
  guards: Guards,
  allowUndecided: boolean,
): Int32Array {
  return Int32Array.from(
    places.filter((place) => {
      const shape = shapes[place]!;
      const tightest = gap.tightest - shape.largest;
      const loosest = gap.loosest - shape.smallest;
      const other = gap.spotVariance + guards.gaugeVariance(gap.gauges, shape.gauges);
      const [least] = guards.ofVariance(other + shape.leastVariance);
      const [, greatest] = guards.ofVariance(other + shape.greatestVariance);
      if (!isAllowed({ tightest, loosest }, gap.limits, least, allowUndecided)) return false;
      return least === greatest || isAllowed({ tightest, loosest }, gap.limits, greatest, allowUndecided);
    }),
  );
}

/** @param stock in the order of names */
export function problemOf(stock: Stock): Problem {
  const limits = provableLimits(stock);
  const kept = keptFits(stock, limits);
  const returning = new Set(kept.map(({ journal }) => journal));
  const shared = sharedCaseBores(stock);
  const journals = journalClasses(
    stock.engines,
    (_, journal) => returning.has(journal) || shared.has(journal.caseBore?.name ?? ''),
  );
  const rods = rodClasses(stock);
  const shells = shellClasses(stock);
  const guards = guardsOf(stock);
  const gaps = gapsOf(journals, rods, limits);
  const shapes: Shape[] = [];
  const open: OpenGap[] = [];
  for (const [kind, kindLimits] of limits) {
    const own = gaps.filter((gap) => gap.limits === kindLimits);
    const first = shapes.length;
    shapes.push(...shapesOf(shells, kind, kindLimits, own, guards));
    const places = [...shapes.keys()].slice(first);
    for (const gap of own) {
      const allowed = allowedShapes(gap, shapes, places, guards, stock.allowUndecided);
      if (allowed.length > 0) open.push({ ...gap, shapes: allowed });
    }
  }
  return {
    stock,
    limits,
    journals,
    rods,
    shells,
    shapes,
    gaps: open,
    kept,
    windows: windowsOf(stock),
    sharedBores: shared,
  };
}

function sharedCaseBores({ engines }: Stock): Set<string> {
  const [seen, shared] = [new Set<string>(), new Set<string>()];
  for (const { caseBore } of engines.flatMap(({ journals }) => journals)) {
    if (!caseBore) continue;
    if (seen.has(caseBore.name)) shared.add(caseBore.name);
    seen.add(caseBore.name);
  }
  return shared;
}

function windowsOf(stock: Stock): Map<string, readonly MassWindow[]> {
  const windows = new Map<string, readonly MassWindow[]>();
  for (const [engineType, ranks] of massRanks(stock)) {
    if (ranks.windows.length > 1) windows.set(engineType, ranks.windows);
  }
  return windows;
}
