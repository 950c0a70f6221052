/**
 * Cranks filled as a whole: a filling is fits of one crank's big ends with rods of one window of mass.
 *
 * With a column for a filling, in place of one for each fit, a linear program cannot take half a crank of one
 * window and half of another unless both halves are worth it (Dantzig and Wolfe, Decomposition principle for
 * linear programs, 1960). There are too many to list: the best ones of each crank are found anew for
 * any duals, as the cheapest assignment of its journals to the rods of each window.
 */
import { assign } from './assignment.js';
import type { Column, Model } from './model-columns.js';
import type { CrankRows } from './model-rows.js';
import type { PricedFit } from './pricing.js';
import type { StockJournal } from './stock.js';

export type FillingColumn = Column & { readonly meaning: { readonly is: 'filling' } };

/** A fit of parts that ran together with what it costs at the duals at hand. */
export interface PricedKept {
  readonly column: Column;
  readonly reducedCost: number;
}

export interface PricedFilling {
  readonly crank: number;
  /** Before what the rows of the crank itself are worth. */
  readonly reducedCost: number;
  readonly fits: readonly (PricedFit | PricedKept)[];
  readonly isFull: boolean;
}

interface Crank {
  readonly rows: CrankRows;
  readonly pins: readonly { readonly journal: StockJournal; readonly journalClass: number }[];
  /** By window: the rod classes in it. */
  readonly windows: readonly (readonly number[])[];
}

/** How many fillings of one crank join the program at a time, each of another window. */
const FILLINGS_AT_A_TIME = 3;

export class CrankFillings {
  private readonly cranks: readonly Crank[];
  /** The columns of parts that ran together on a crank, with the class of their rod. */
  private readonly kept = new Map<Column, { readonly journal: StockJournal; readonly rod: number }>();
  private readonly inside: ReadonlySet<number>;

  constructor(private readonly model: Model) {
    const { journals, rods, fillings, kept } = model.problem;
    const windowsOf = new Map(
      [...fillings].map(([engineType, windows]) => [
        engineType,
        windows.map(({ first, last }) =>
          [...rods.keys()].filter((rod) => {
            const each = rods[rod]!;
            return each.engineType === engineType && first <= each.massRank! && each.massRank! <= last;
          }),
        ),
      ]),
    );
    this.cranks = model.places.fillings.map((rows) => ({
      rows,
      windows: windowsOf.get(rows.engineType)!,
      pins: [...journals.entries()].flatMap(([journalClass, { engineType, caseBore, engines, journals: own }]) =>
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

  /** Whether fits of a journal class are parts of fillings, never columns of their own. */
  hold(journalClass: number): boolean {
    return this.inside.has(journalClass);
  }

  /** The same of a fit of parts that ran together. */
  holdKept(column: Column): boolean {
    return this.kept.has(column);
  }

  get keptColumns(): Column[] {
    return [...this.kept.keys()];
  }

  /**
   * The best fillings of each crank, cheapest first.
   * @param fits the best of each gap
   * @param completion what a full crank is worth
   */
  best(
    fits: readonly PricedFit[],
    kept: readonly PricedKept[],
    completion: (rows: CrankRows) => number,
  ): PricedFilling[][] {
    const { gaps, rods } = this.model.problem;
    const ofGap = new Map(fits.map((fit) => [gaps[fit.gap]!.journal * rods.length + gaps[fit.gap]!.rod!, fit]));
    const ofJournal = new Map<StockJournal, Map<number, PricedKept>>();
    for (const fit of kept) {
      const { journal, rod } = this.kept.get(fit.column)!;
      const own = ofJournal.get(journal) ?? new Map<number, PricedKept>();
      if (fit.reducedCost < (own.get(rod)?.reducedCost ?? Number.POSITIVE_INFINITY)) own.set(rod, fit);
      ofJournal.set(journal, own);
    }
    return this.cranks.map(({ pins, windows, rows }, crank) => {
      // Row by row of the pins: the cheapest fit with each rod.
      const choices = pins.map(({ journal, journalClass }) => {
        const together = ofJournal.get(journal);
        return (rod: number) => {
          const [one, other] = [ofGap.get(journalClass * rods.length + rod), together?.get(rod)];
          return other && (!one || other.reducedCost < one.reducedCost) ? other : one;
        };
      });
      const worth = completion(rows);
      const found = windows.flatMap((own) => this.bestOf(own, choices, worth).map((each) => ({ crank, ...each })));
      found.sort((a, b) => a.reducedCost - b.reducedCost);
      return found.slice(0, FILLINGS_AT_A_TIME);
    });
  }

  private bestOf(
    window: readonly number[],
    choices: readonly ((rod: number) => PricedFit | PricedKept | undefined)[],
    completion: number,
  ): Omit<PricedFilling, 'crank'>[] {
    const { rods } = this.model.problem;
    const fits = choices.map((choice) => window.map(choice));
    const capacity = window.map((rod) => rods[rod]!.rods.length);
    const solve = (mayBeEmpty: boolean) => {
      const columns = window.length + Number(mayBeEmpty);
      const costs = Float64Array.from(
        fits.flatMap((own) => [
          ...own.map((fit) => fit?.reducedCost ?? Number.POSITIVE_INFINITY),
          ...(mayBeEmpty ? [0] : []),
        ]),
      );
      const places = assign({
        rows: fits.length,
        columns,
        costs,
        capacity: mayBeEmpty ? [...capacity, fits.length] : capacity,
      });
      if (!places) return [];
      const taken = fits.flatMap((own, pin) => own[places[pin]!] ?? []);
      const isFull = taken.length === fits.length;
      const sum = taken.reduce((total, { reducedCost }) => total + reducedCost, 0);
      return [{ fits: taken, isFull, reducedCost: sum - (isFull ? completion : 0) }];
    };
    return completion > 0 ? [...solve(true), ...solve(false)] : solve(true);
  }
}

/** @param parts columns of the fits in it */
export function fillingColumn({ one, complete }: CrankRows, crank: number, parts: readonly Column[], isFull: boolean): FillingColumn {
  const sums = new Map<number, number>([[one, 1]]);
  if (isFull && complete !== undefined) sums.set(complete, 1);
  const amounts: Record<string, number> = {};
  for (const part of parts) {
    for (const [at, row] of part.rows.entries()) sums.set(row, (sums.get(row) ?? 0) + part.values[at]!);
    for (const [amount, value] of Object.entries(part.amounts)) amounts[amount] = (amounts[amount] ?? 0) + value;
  }
  return {
    meaning: { is: 'filling', crank, parts },
    rows: [...sums.keys()],
    values: [...sums.values()],
    upper: 1,
    amounts,
  };
}
