/**
 * A stock on a coarser grid, where it has too many different values to be searched in the time.
 *
 * There are two copies. The inner one restricts: largest is rounded up, smallest down, the variance to the careful
 * side, so that a fit which is allowed there is allowed for the parts themselves. The outer one relaxes, by the
 * opposite rounding: every allowed fit is allowed there, so that its bounds hold for the parts themselves. Sizes are
 * rounded to the nearest on both. Distances from the aim are counted on the grid.
 */
import { type Grain, roundToWhole } from '../grain.js';
import type { MeasuredPart } from '../uncertainty.js';
import { type IsEmpty, independentKinds, onlyKinds } from './independent.js';
import { keyOfKind, keyOfPart } from './part-classes.js';
import type { MatchedFit, Stock, TakenShell } from './stock.js';

/** Grids to choose from, finest first; 1,000 grains are 1 µm. */
const GRIDS: readonly Grain[] = [1, 10, 50, 100, 250, 500, 1000];
/** Most combinations of a space and a pair of shells that can be priced again for every change of the duals. */
const MOST_COMBINATIONS = 600_000_000;
const MOST_SPACES = 250_000;
/** Significant digits of a variance on a grid. */
const VARIANCE_DIGITS = 2;

export interface StockOnGrid {
  readonly grid: Grain;
  readonly inner: Stock;
  readonly outer: Stock;
}

const TERMS_OF_A_FIT = 4;

function expansionSquares({ ownExpansion, gaugeExpansion }: MeasuredPart): number {
  return ownExpansion ** 2 + (gaugeExpansion?.contribution ?? 0) ** 2;
}

type Round = (value: number) => number;

interface Rounding {
  readonly size: Round;
  readonly largest: Round;
  readonly smallest: Round;
  readonly variance: Round;
  /** What the terms of expansion of one part add to a fit, at most or at least, by the sum of their squares. */
  readonly expansion: Round;
}

const steps =
  (grid: Grain, round: Round): Round =>
  (value) =>
    round(value / grid) * grid;

function roundedVariance(variance: number, round: Round): number {
  if (variance === 0) return 0;
  const unit = 10 ** (Math.floor(Math.log10(variance)) + 1 - VARIANCE_DIGITS);
  return round(variance / unit) * unit;
}

/** @param careful whether it restricts, for the inner copy; else it relaxes */
function roundingOf(grid: Grain, careful: boolean, allowUndecided: boolean): Rounding {
  // Where undecided fits are allowed, a wider guard allows more.
  const wideGuard = careful !== allowUndecided;
  return {
    size: steps(grid, roundToWhole),
    largest: steps(grid, careful ? Math.ceil : Math.floor),
    smallest: steps(grid, careful ? Math.floor : Math.ceil),
    variance: (value) => roundedVariance(value, wideGuard ? Math.ceil : Math.floor),
    // The square of a sum of four terms is at most four times the sum of their squares.
    expansion: (value) => (wideGuard ? TERMS_OF_A_FIT * value : 0),
  };
}

function onGrid(stock: Stock, grid: Grain, careful: boolean): Stock {
  const round = roundingOf(grid, careful, stock.allowUndecided);
  const part = (each: MeasuredPart): MeasuredPart => ({
    size: round.size(each.size),
    largest: round.largest(each.largest),
    smallest: round.smallest(each.smallest),
    spots: each.spots,
    readVariance: each.readVariance,
    // On the grid the terms of expansion are counted with the temperature's, since they would tell parts apart.
    temperatureVariance: round.variance(each.temperatureVariance + round.expansion(expansionSquares(each))),
    ownExpansion: 0,
    gaugeExpansion: undefined,
    systematic: each.systematic,
  });
  const row = <Row extends { readonly part: MeasuredPart }>(each: Row): Row => ({
    ...each,
    part: part(each.part),
  });
  return {
    ...stock,
    kinds: stock.kinds.map((kind) => ({
      ...kind,
      aim: kind.aim === undefined ? undefined : round.size(kind.aim),
      // Rounding changes the difference of two sizes by up to one step of the grid.
      halfDifference:
        kind.halfDifference === undefined ? undefined : kind.halfDifference + (careful ? -grid : grid),
    })),
    engines: stock.engines.map((engine) => ({
      ...engine,
      journals: engine.journals.map((journal) => ({
        ...journal,
        part: journal.part && part(journal.part),
        caseBore: journal.caseBore && {
          ...journal.caseBore,
          part: journal.caseBore.part && part(journal.caseBore.part),
        },
      })),
    })),
    rods: stock.rods.map(row),
    shells: stock.shells.map(row),
    newShells: stock.newShells.map(row),
  };
}

/** The number of different spaces, and of spaces with pairs, that a search of the stock would have. */
function countCombinations(stock: Stock): { spaces: number; combinations: number } {
  const kinds = new Map<string, { journals: Set<string>; mains: Set<string>; shells: Set<string> }>();
  const of = (key: string) => {
    const known = kinds.get(key) ?? { journals: new Set(), mains: new Set(), shells: new Set() };
    kinds.set(key, known);
    return known;
  };
  for (const journal of stock.engines.flatMap(({ journals }) => journals)) {
    if (!journal.part) continue;
    const key = keyOfPart(journal.part);
    if (!journal.caseBore) of(keyOfKind(journal)).journals.add(key);
    else if (journal.caseBore.part) of(keyOfKind(journal)).mains.add(key + keyOfPart(journal.caseBore.part));
  }
  for (const shell of [...stock.shells, ...stock.newShells])
    of(keyOfKind(shell)).shells.add(shell.half + keyOfPart(shell.part));
  const rods = new Set(stock.rods.map(({ part }) => keyOfPart(part))).size;
  let [spaces, combinations] = [0, 0];
  for (const { journals, mains, shells } of kinds.values()) {
    const own = journals.size * rods + mains.size;
    spaces += own;
    combinations += (own * shells.size ** 2) / 4;
  }
  return { spaces, combinations };
}

/** Whether each of the stock's independent kinds, searched apart, is small enough. */
function isSearchable(stock: Stock): boolean {
  return independentKinds(stock)
    .map((kinds) => countCombinations(onlyKinds(stock, kinds)))
    .every(({ spaces, combinations }) => spaces <= MOST_SPACES && combinations <= MOST_COMBINATIONS);
}

/** Some kinds of fit alone, on the same grid. */
export function onlyKindsOnGrid(
  { grid, inner, outer }: StockOnGrid,
  keys: ReadonlySet<string>,
  isEmpty?: IsEmpty,
): StockOnGrid {
  const own = onlyKinds(inner, keys, isEmpty);
  // The same object in both places says that there is no grid.
  return { grid, inner: own, outer: outer === inner ? own : onlyKinds(outer, keys, isEmpty) };
}

/**
 * The stock on the finest grid on which it can be searched, on the grain itself where possible. It stays on the grain
 * where undecided fits are allowed and there is a Service limit: no rounding restricts for certain then.
 * @param least the finest grid to try
 */
export function stockOnGrid(stock: Stock, least: Grain = 1): StockOnGrid {
  const fine = { grid: 1, inner: stock, outer: stock };
  if (stock.allowUndecided && stock.kinds.some(({ serviceLimit }) => serviceLimit !== undefined)) return fine;
  for (const grid of GRIDS) {
    if (grid < least) continue;
    const inner = grid === 1 ? stock : onGrid(stock, grid, true);
    if (!isSearchable(inner)) continue;
    return grid === 1 ? fine : { grid, inner, outer: onGrid(stock, grid, false) };
  }
  const grid = GRIDS.at(-1)!;
  return { grid, inner: onGrid(stock, grid, true), outer: onGrid(stock, grid, false) };
}

/** Fits of the rows of one copy, as fits of the rows at the same indices of another. */
export function unfolded(fits: readonly MatchedFit[], from: Stock, to: Stock): MatchedFit[] {
  if (from === to) return [...fits];
  const twins = new Map<object, object>();
  const pair = (a: readonly object[], b: readonly object[]) => {
    for (const [place, row] of a.entries()) twins.set(row, b[place]!);
  };
  const journals = ({ engines }: Stock) => engines.flatMap((engine) => engine.journals);
  pair(journals(from), journals(to));
  pair(from.rods, to.rods);
  pair(from.shells, to.shells);
  pair(from.newShells, to.newShells);
  const twin = <Row extends object>(row: Row) => twins.get(row) as Row;
  const rods = new Map(from.rods.map((rod) => [rod.part, rod]));
  const shell = (taken: TakenShell): TakenShell =>
    taken.from === 'new'
      ? { from: 'new', shell: twin(taken.shell) }
      : { from: 'stock', shell: twin(taken.shell) };
  return fits.map((fit) => {
    const journal = twin(fit.journal);
    const bore = journal.caseBore ?? twin(rods.get(fit.bore.part)!);
    const [upper, lower] = [shell(fit.upper), shell(fit.lower)];
    const parts = {
      bore: bore.part!,
      upper: upper.shell.part,
      lower: lower.shell.part,
      journal: journal.part!,
    };
    return {
      ...fit,
      journal,
      bore: { name: bore.name, part: bore.part!, ran: bore.ran },
      upper,
      lower,
      parts,
    };
  });
}
