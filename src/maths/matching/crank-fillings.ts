/**
 * Cranks filled as a whole: a filling is fits of one crank's big ends with rods of one window of mass.
 *
 * Dantzig-Wolfe decomposition (Decomposition principle for linear programs, 1960): one column is a whole filling, not a
 * single fit. So a linear program cannot take half a crank of one window and half of another, unless both fillings are
 * worth it. There are too many fillings to list. The best ones of each crank are priced anew for any duals, as the
 * cheapest assignment of its journals to the rods of each window.
 */
import { assign } from './assignment.js';
import type { MassWindow } from './mass-windows.js';
import type { Column, Model } from './model-columns.js';
import type { CrankRows } from './model-rows.js';
import type { PricedFit } from './pricing.js';
import type { StockJournal } from './stock.js';

export type FillingColumn = Column & { readonly meaning: { readonly is: 'filling' } };

/** A fit of parts that ran together, with its reduced cost. */
interface PricedKept {
  readonly column: Column;
  readonly reducedCost: number;
}

export interface PricedFilling {
  readonly crank: number;
  /** Without the duals of the crank's own rows. */
  readonly reducedCost: number;
  readonly fits: readonly (PricedFit | PricedKept)[];
  readonly isFull: boolean;
}

interface Crank {
  readonly rows: CrankRows;
  readonly pins: readonly { readonly journal: StockJournal; readonly journalClass: number }[];
}

/** Most fillings of one crank that join the program at a time, each of another window. */
const FILLINGS_AT_A_TIME = 3;

export class CrankFillings {
  private readonly cranks: readonly Crank[];
  /** The columns of parts that ran together on a crank, with the class of their rod. */
  private readonly kept = new Map<Column, { readonly journal: StockJournal; readonly rod: number }>();
  private readonly inside: ReadonlySet<number>;

  constructor(private readonly model: Model) {
    const { journals, rods, fillings, kept } = model.problem;
    this.cranks = model.places.fillings.map((rows) => ({
      rows,
      pins: [...journals.entries()].flatMap(
        ([journalClass, { engineType, caseBore, engines, journals: own }]) =>
          engineType === rows.engineType && !caseBore
            ? own.filter((_, at) => engines[at] === rows.engine).map((journal) => ({ journal, journalClass }))
            : [],
      ),
    }));
    this.inside = new Set(this.cranks.flatMap(({ pins }) => pins.map(({ journalClass }) => journalClass)));
    const rodClass = new Map(rods.flatMap((each, place) => each.rods.map((rod) => [rod, place] as const)));
    for (const column of model.columns) {
      if (column.meaning.is !== 'kept') continue;
      const { journal, rod } = kept[column.meaning.kept]!;
      if (rod && fillings.has(rod.engineType)) this.kept.set(column, { journal, rod: rodClass.get(rod)! });
    }
  }

  /** Whether fits of a journal class are part of fillings, and never columns of their own. */
  hold(journalClass: number): boolean {
    return this.inside.has(journalClass);
  }

  /** The same for the column of parts that ran together. */
  holdKept(column: Column): boolean {
    return this.kept.has(column);
  }

  get keptColumns(): Column[] {
    return [...this.kept.keys()];
  }

  /**
   * The best fillings of each crank, cheapest first.
   * @param fits the best of each space
   * @param completion the dual of a full crank
   */
  best(
    fits: readonly PricedFit[],
    kept: readonly PricedKept[],
    completion: (rows: CrankRows) => number,
  ): PricedFilling[][] {
    const { spaces, rods, journals } = this.model.problem;
    const byClass = journals.map((): (PricedFit | PricedKept)[] => []);
    const byJournal = new Map<StockJournal, { fit: PricedFit | PricedKept; rod: number }[]>();
    const addTo = (journal: StockJournal, fit: PricedFit | PricedKept, rod: number) =>
      byJournal.set(journal, [...(byJournal.get(journal) ?? []), { fit, rod }]);
    for (const fit of fits) {
      const { journal, rod, homes } = spaces[fit.space]!;
      if (homes) for (const home of homes) addTo(home.journal, fit, rod!);
      else byClass[journal]![rod!] = fit;
    }
    for (const fit of kept) {
      const { journal, rod } = this.kept.get(fit.column)!;
      addTo(journal, fit, rod);
    }
    return this.cranks.map(({ pins, rows }, crank) => {
      const choices = pins.map(({ journal, journalClass }): PricedChoice[] => {
        const all = [...byClass[journalClass]!];
        for (const { fit, rod } of byJournal.get(journal) ?? []) {
          if (fit.reducedCost < (all[rod]?.reducedCost ?? Number.POSITIVE_INFINITY)) all[rod] = fit;
        }
        return all
          .flatMap((fit, rod) =>
            fit ? { fit, rod, rank: rods[rod]!.massRank!, count: rods[rod]!.rods.length } : [],
          )
          .sort((a, b) => a.fit.reducedCost - b.fit.reducedCost);
      });
      const worth = completion(rows);
      const found: PricedFilling[] = [];
      for (const { own, least } of promising(this.model.problem.fillings.get(rows.engineType)!, choices)) {
        if (least - worth >= (found[FILLINGS_AT_A_TIME - 1]?.reducedCost ?? Number.POSITIVE_INFINITY)) break;
        found.push(...fillWindow(own, worth).map((each) => ({ crank, ...each })));
        found.sort((a, b) => a.reducedCost - b.reducedCost);
      }
      return found.slice(0, FILLINGS_AT_A_TIME);
    });
  }
}

/** The cheapest fit of a journal with one class of rods. */
interface PricedChoice {
  readonly fit: PricedFit | PricedKept;
  readonly rod: number;
  readonly rank: number;
  readonly count: number;
}

/**
 * The windows with the fits that their cheapest fillings choose from, the most promising window first.
 * @param choices of each journal, cheapest first
 * @returns by journal as many fits as the crank has journals, since the cheapest filling needs no others; and a lower
 * bound of what a filling costs
 */
function promising(
  windows: readonly MassWindow[],
  choices: readonly (readonly PricedChoice[])[],
): { readonly own: readonly (readonly PricedChoice[])[]; readonly least: number }[] {
  const rated = windows.map(({ first, last }) => {
    const own = choices.map((all) => {
      const near: PricedChoice[] = [];
      for (const each of all) {
        if (near.length === choices.length) break;
        if (first <= each.rank && each.rank <= last) near.push(each);
      }
      return near;
    });
    const least = own.reduce((sum, [cheapest]) => sum + Math.min(0, cheapest?.fit.reducedCost ?? 0), 0);
    return { own, least };
  });
  return rated.sort((a, b) => a.least - b.least);
}

/** The cheapest filling of some journals, and the cheapest full one where a full crank is worth something. */
function fillWindow(
  own: readonly (readonly PricedChoice[])[],
  completion: number,
): Omit<PricedFilling, 'crank'>[] {
  const counts = new Map(own.flat().map(({ rod, count }) => [rod, count]));
  const columns = new Map([...counts.keys()].map((rod, column) => [rod, column]));
  const solve = (mayBeEmpty: boolean) => {
    const width = columns.size + Number(mayBeEmpty);
    const costs = new Float64Array(own.length * width).fill(Number.POSITIVE_INFINITY);
    for (const [pin, fits] of own.entries()) {
      for (const { rod, fit } of fits) costs[pin * width + columns.get(rod)!] = fit.reducedCost;
      if (mayBeEmpty) costs[(pin + 1) * width - 1] = 0;
    }
    const capacity = mayBeEmpty ? [...counts.values(), own.length] : [...counts.values()];
    const places = assign({ rows: own.length, columns: width, costs, capacity });
    if (!places) return [];
    const fits = own.flatMap(
      (all, pin) => all.find(({ rod }) => columns.get(rod) === places[pin])?.fit ?? [],
    );
    const isFull = fits.length === own.length;
    const sum = fits.reduce((total, { reducedCost }) => total + reducedCost, 0);
    return [{ fits, isFull, reducedCost: sum - (isFull ? completion : 0) }];
  };
  return completion > 0 ? [...solve(true), ...solve(false)] : solve(true);
}

/** @param parts columns of the fits in it */
export function fillingColumn(
  { one, complete }: CrankRows,
  crank: number,
  parts: readonly Column[],
  isFull: boolean,
): FillingColumn {
  const sums = new Map<number, number>([[one, 1]]);
  if (isFull && complete !== undefined) sums.set(complete, 1);
  const amounts: Record<string, number> = {};
  for (const part of parts) {
    for (const [at, row] of part.rows.entries()) sums.set(row, (sums.get(row) ?? 0) + part.values[at]!);
    for (const [amount, value] of Object.entries(part.amounts))
      amounts[amount] = (amounts[amount] ?? 0) + value;
  }
  return {
    meaning: { is: 'filling', crank, parts },
    rows: [...sums.keys()],
    values: [...sums.values()],
    upper: 1,
    amounts,
  };
}
