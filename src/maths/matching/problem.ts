/** A stock as the model has it: classes, spaces, shapes of pairs, and which space allows which shape. */

import { greatestCommonDivisor } from './aims.js';
import { FitRules } from './fit-rules.js';
import { type Home, homesOf } from './homes.js';
import type { KeptFit } from './kept-fits.js';
import { keptFits } from './kept-fits.js';
import type { MassGroups } from './mass-groups.js';
import { type MassWindow, massRanks } from './mass-windows.js';
import { type PairShape, shapesOf } from './pairs.js';
import {
  type JournalClass,
  journalClasses,
  keyOfKind,
  type RodClass,
  rodClasses,
  type ShellClass,
  shellClasses,
} from './part-classes.js';
import { type Space, spacesOf } from './spaces.js';
import type { Stock, StockRod } from './stock.js';
import { isProvable, type ProvableLimits, StockGuards } from './verdicts.js';

export interface Problem {
  /** In the order of names (order.ts). */
  readonly stock: Stock;
  readonly limits: ReadonlyMap<string, ProvableLimits>;
  readonly journals: readonly JournalClass[];
  readonly rods: readonly RodClass[];
  readonly shells: readonly ShellClass[];
  readonly shapes: readonly PairShape[];
  /** Only those that allow some shape. */
  readonly spaces: readonly Space[];
  readonly rules: FitRules;
  /** By kind: the indices of the shapes that some space allows, in order of size. */
  readonly bySize: ReadonlyMap<string, Int32Array>;
  readonly kept: readonly KeptFit[];
  /** Journals with the rods that ran on them, where some shells make an allowed fit of both. */
  readonly homes: readonly Home[];
  /** Lists of rods of which an engine can keep one at most, because of their masses. */
  readonly neverTogether: readonly (readonly StockRod[])[];
  /** Windows of mass by engine type, where there is more than one. */
  readonly windows: ReadonlyMap<string, readonly MassWindow[]>;
  /** The same windows, in place of those above, where cranks are filled as a whole (crank-fillings.ts). */
  readonly fillings: ReadonlyMap<string, readonly MassWindow[]>;
  /** Names of the case bores that more than one journal claims: each serves one of them. */
  readonly sharedBores: ReadonlySet<string>;
}

function provableLimits(stock: Stock): Map<string, ProvableLimits> {
  const limits = new Map<string, ProvableLimits>();
  for (const kind of stock.kinds) {
    if (isProvable(kind)) limits.set(keyOfKind(kind), kind);
  }
  return limits;
}

/** The shapes of one kind that some space allows, smallest size first. */
function shapesBySize(
  kind: string,
  shapes: readonly PairShape[],
  spaces: readonly Space[],
  rules: FitRules,
): Int32Array {
  const own = [...spaces.keys()].filter((space) => spaces[space]!.kind === kind);
  const open = [...shapes.keys()].filter(
    (shape) => shapes[shape]!.kind === kind && own.some((space) => rules.allows(space, shape)),
  );
  return Int32Array.from(open.sort((a, b) => shapes[a]!.size - shapes[b]!.size || a - b));
}

export interface ProblemOptions {
  /**
   * Whether alike journals of different engines are one class. A model of it is then a relaxation: its columns do not
   * say which engine a fit is for, and do not keep the mass windows of cranks.
   */
  readonly merge: boolean;
  /** Where given, rods go only to engines of their own groups, whatever their masses. */
  readonly groups?: MassGroups;
  /** Lists of rods of which an engine can keep one at most, for a stock whose masses are left out. */
  readonly neverTogether?: readonly (readonly StockRod[])[];
  /** Whether the fits of a crank whose rods are weighed come together, as one column of the model. */
  readonly wholeCranks?: boolean;
}

const NO_WINDOWS: ReadonlyMap<string, readonly MassWindow[]> = new Map();

/** @param stock in the order of names */
export function problemOf(stock: Stock, options: ProblemOptions): Problem {
  const limits = provableLimits(stock);
  const { groups } = options;
  const ownRod = (engine: number, rod: StockRod) => {
    const group = groups?.ofEngine(engine, rod.engineType);
    return !groups || (group !== undefined && groups.ofRod(rod).includes(group));
  };
  const places = new Map(stock.engines.map((engine, place) => [engine, place]));
  const kept = keptFits(stock, limits).filter(({ engine, rod }) => !rod || ownRod(places.get(engine)!, rod));
  const ran = homesOf(stock, limits).filter(({ engine, rod }) => ownRod(engine, rod));
  const keeping = new Set(kept.map(({ journal }) => journal));
  const homely = new Set(ran.map(({ journal }) => journal));
  // A rod that serves at one place only tells the journal of that place from all others.
  const bound = new Set(stock.rodsStay ? ran.map(({ journal }) => journal) : []);
  const shared = sharedCaseBores(stock);
  const windows = groups ? NO_WINDOWS : windowsOf(stock);
  const journals = journalClasses(stock.engines, (journal, engine, place) => {
    if (shared.has(journal.caseBore?.name ?? '')) return `${engine}/${place}`;
    if (bound.has(journal)) return `${engine}/${place}`;
    const canReturn = [keeping.has(journal), homely.has(journal)];
    // Where all that can return do (forced-fits.ts), a class of such journals is done.
    if (options.merge)
      return `${groups?.ofEngine(engine, journal.engineType)}/${stock.preferKeptPairs && canReturn}`;
    return canReturn.includes(true) ? `${engine}/${place}` : `${engine}`;
  });
  const rods = rodClasses(stock, groups?.ofRod);
  const shells = shellClasses(stock);
  const guards = new StockGuards(stock);
  const weighedHere = new Set((options.neverTogether ?? []).flat());
  const claims = new Map<StockRod, number>();
  for (const { rod } of ran) claims.set(rod, (claims.get(rod) ?? 0) + 1);
  const isApart = ({ rod }: Home) =>
    weighedHere.has(rod) || claims.get(rod)! > 1 || options.wholeCranks === true;
  const all = spacesOf(journals, rods, limits, ran, isApart).filter(
    ({ journal, rod }) => rod === undefined || ownRod(journals[journal]!.engines[0]!, rods[rod]!.rods[0]!),
  );
  const shapes: PairShape[] = [];
  for (const [kind, kindLimits] of limits) {
    const own = all.filter((space) => space.kind === kind);
    shapes.push(...shapesOf(shells, kind, kindLimits, own, guards, stock.newWithUsed));
  }
  const rulesOf = (spaces: readonly Space[]) => new FitRules(spaces, shapes, guards, stock);
  const first = rulesOf(all);
  const spaces = all.filter((space, place) =>
    shapes.some((shape, at) => shape.kind === space.kind && first.allows(place, at)),
  );
  const rules = rulesOf(spaces);
  const bySize = new Map([...limits.keys()].map((kind) => [kind, shapesBySize(kind, shapes, spaces, rules)]));
  return {
    stock,
    limits,
    journals,
    rods,
    shells,
    shapes,
    spaces,
    rules,
    bySize,
    kept,
    homes: spaces.flatMap(({ homes }) => homes ?? []),
    neverTogether: options.neverTogether ?? [],
    windows: options.wholeCranks ? NO_WINDOWS : windows,
    fillings: options.wholeCranks ? windows : NO_WINDOWS,
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

/** The greatest whole number of grains that every distance from the aim is a multiple of. */
export function distanceStep({ spaces, shapes, limits }: Problem): number {
  const differences = [...limits].flatMap(([kind, { aim }]) => {
    if (aim === undefined) return [];
    const wished = spaces.filter((space) => space.kind === kind).map(({ size }) => size - aim);
    const made = shapes.filter((shape) => shape.kind === kind).map(({ size }) => size);
    if (wished.length === 0 || made.length === 0) return [];
    // Any distance is the first of these differences, changed by some of the others.
    const within = (values: readonly number[]) => values.map((value) => value - values[0]!);
    return [wished[0]! - made[0]!, ...within(wished), ...within(made)];
  });
  return greatestCommonDivisor(differences);
}
