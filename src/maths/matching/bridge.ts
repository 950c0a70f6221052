/**
 * From the sets of a search to the columns of a model of classes, and back.
 *
 * The model may be of a copy of the stock (grid.ts), and its classes may be fewer than those of the search. Both
 * name the rows of the stock, and through these one is translated into the other.
 */
import { fillingColumn } from './crank-fillings.js';
import type { FitTable } from './fit-table.js';
import type { StockOnGrid } from './grid.js';
import { type Column, fitColumn, type Model } from './model-columns.js';
import { ModelSpaces, type Places, placesIn } from './model-spaces.js';
import { type ColumnPool, isPair, type PairColumn, type Quad, quadOf } from './quads.js';
import type { Reunion } from './reunions.js';
import { type Choice, NO_ROD } from './sites.js';
import type { Stock } from './stock.js';
import { Claims, type Taken } from './taken.js';
import type { WorkingSets } from './working-sets.js';

/** The rows of the outer copy, by the rows of the inner copy. */
export function twinsOf({ inner, outer }: StockOnGrid): ReadonlyMap<object, object> {
  const rows = ({ engines, rods, shells, newShells }: Stock) => [
    ...engines.flatMap(({ journals }) => journals),
    ...rods,
    ...shells,
    ...newShells,
  ];
  const others = rows(outer);
  return new Map(rows(inner).map((row, place) => [row, others[place]!]));
}

function addTimes<Value>(lists: Map<number, Value[]>, key: number, value: Value, times: number): void {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  for (let time = 0; time < times; time++) list.push(value);
}

export class Bridge {
  private readonly ofModel: Places;
  private readonly ofSearch: Places;
  private readonly siteOf: ReadonlyMap<object, number>;
  private readonly spaces: ModelSpaces;
  private readonly pair = new Map<string, PairColumn>();
  private readonly engines = new Map<number, Column>();
  /** By site: the fits of parts that ran together, with their columns. */
  private readonly kept = new Map<number, { readonly fit: Reunion; readonly column: Column }[]>();
  /** By crank that the model fills as a whole: its sites. */
  private readonly sitesOfCrank: readonly (readonly number[])[];

  /** @param twins the rows of the model's stock by those of the search's; one without a twin is the same in both */
  constructor(
    private readonly model: Model,
    private readonly table: FitTable,
    private readonly twins: ReadonlyMap<object, object>,
  ) {
    this.ofModel = placesIn(model.problem);
    this.ofSearch = placesIn(table.problem);
    this.siteOf = new Map(table.sites.map(({ journal }, place) => [this.twin(journal), place]));
    this.spaces = new ModelSpaces(model.problem, table, (row) => this.twin(row), this.ofModel);
    for (const column of model.columns) {
      if (column.meaning.is === 'engine') this.engines.set(column.meaning.engine, column);
      if (!isPair(column)) continue;
      const { upper, lower } = column.meaning;
      this.pair.set(`${upper},${lower}`, column);
      // A pair of two `either` halves is listed in one order only.
      if (!this.pair.has(`${lower},${upper}`)) this.pair.set(`${lower},${upper}`, column);
    }
    this.joinKept();
    this.sitesOfCrank = model.places.fillings.map(({ engine, engineType }) =>
      [...table.sites.keys()].filter((place) => {
        const site = table.sites[place]!;
        return site.engine === engine && site.journal.engineType === engineType && !site.journal.caseBore;
      }),
    );
  }

  private twin(row: object): object {
    return this.twins.get(row) ?? row;
  }

  private joinKept(): void {
    const { model, table } = this;
    const columns = new Map<object, Column[]>();
    for (const column of model.columns) {
      if (column.meaning.is !== 'kept') continue;
      const { journal } = model.problem.kept[column.meaning.kept]!;
      columns.set(journal, [...(columns.get(journal) ?? []), column]);
    }
    for (const fit of table.together) {
      const { journal, rod, upper, lower } = table.problem.kept[fit.kept]!;
      const rows = [rod, upper, lower].map((row) => row && this.twin(row));
      const column = columns.get(this.twin(journal))?.find(({ meaning }) => {
        const other = model.problem.kept[(meaning as { kept: number }).kept]!;
        return [other.rod, other.upper, other.lower].every((row, at) => row === rows[at]);
      });
      if (column) this.kept.set(fit.site, [...(this.kept.get(fit.site) ?? []), { fit, column }]);
    }
  }

  /** A journal with its parts as a column of the linear program; undefined where the model has no such fit. */
  private quadOf(site: number, choice: Choice): Quad | undefined {
    const { sites, problem } = this.table;
    const space = this.spaces.at(sites[site]!.journal, choice.rod);
    const [upper, lower] = [choice.upper, choice.lower].map((shell) => {
      const { shells, bought } = problem.shells[shell]!;
      return this.ofModel.shell.get(this.twin(bought ?? shells[0]!));
    });
    const pair = this.pair.get(`${upper},${lower}`);
    return space === undefined || !pair ? undefined : quadOf(this.model, space, pair);
  }

  /** The filled journals as columns of the linear program. */
  quadsOf({ choices }: WorkingSets): Quad[] {
    return choices.flatMap((choice, site) => (choice && this.quadOf(site, choice)) ?? []);
  }

  private keptColumn(site: number, sets: WorkingSets, claims: Claims): Column | undefined {
    return this.kept.get(site)?.find(({ fit, column }) => sets.isChosen(site, fit) && claims.take(column))
      ?.column;
  }

  /**
   * Adds to the pool the fillings of those cranks that the model fills as a whole. A fit that it does not have is
   * left out.
   */
  fillingsOf(sets: WorkingSets, pool: ColumnPool): void {
    const claims = new Claims(this.model);
    const columnOf = (site: number, choice: Choice) => {
      const quad = this.quadOf(site, choice);
      return this.keptColumn(site, sets, claims) ?? (quad && pool.add(quad).column);
    };
    for (const [crank, sites] of this.sitesOfCrank.entries()) {
      const parts = sites.flatMap((site) => {
        const choice = sets.choices[site];
        return (choice && columnOf(site, choice)) ?? [];
      });
      const rows = this.model.places.fillings[crank]!;
      if (parts.length > 0) pool.addFilling(fillingColumn(rows, crank, parts, parts.length === sites.length));
    }
  }

  /** The sets as counts of columns; an empty list where the model lacks one of their fits. */
  toTaken(sets: WorkingSets): Taken[] {
    const times = new Map<Column, number>();
    const add = (column: Column) => times.set(column, (times.get(column) ?? 0) + 1);
    const fits = new Map<string, Column>();
    const claims = new Claims(this.model);
    for (const [site, choice] of sets.choices.entries()) {
      if (!choice) continue;
      const kept = this.keptColumn(site, sets, claims);
      if (kept) {
        add(kept);
        continue;
      }
      const quad = this.quadOf(site, choice);
      if (!quad) return [];
      const key = `${quad.space},${quad.shape}`;
      const fit = fits.get(key) ?? fitColumn(this.model, quad.space, quad.shape);
      fits.set(key, fit);
      add(fit);
      add(quad.pair);
    }
    for (const [engine, column] of this.engines) if (sets.isCompleteEngine(engine)) add(column);
    return [...times].map(([column, count]) => ({ column, times: count }));
  }

  /** The fits of parts that ran together behind columns of the model. */
  reunions(columns: readonly Column[]): Reunion[] {
    const wanted = new Set(columns);
    return [...this.kept.values()]
      .flat()
      .filter(({ column }) => wanted.has(column))
      .map(({ fit }) => fit);
  }

  /**
   * Replaces the sets at hand with those that a program found. The model must be of the search's own rows.
   * Alike journals of different engines are told apart here: the engines to be completed come first.
   */
  fromTaken(taken: readonly Taken[], sets: WorkingSets): void {
    const { sites } = this.table;
    const { spaces, kept, rods: classes } = this.model.problem;
    for (const site of sets.choices.keys()) sets.put(site, undefined);
    const served = new Set<object>();
    const wanted = new Set<number>();
    const pairs = new Map<number, PairColumn[]>();
    for (const { column, times } of taken) {
      const { meaning } = column;
      if (meaning.is === 'engine') wanted.add(meaning.engine);
      if (isPair(column)) addTimes(pairs, column.meaning.shape, column, times);
      if (meaning.is !== 'kept') continue;
      const { journal, rod } = kept[meaning.kept]!;
      const site = this.siteOf.get(journal)!;
      const { fit } = this.kept.get(site)!.find((each) => each.column === column)!;
      sets.put(site, { rod: fit.rod, upper: fit.upper, lower: fit.lower });
      if (rod) served.add(rod);
    }
    const byJournal = new Map<number, { readonly space: number; readonly shape: number }[]>();
    const putRod = (site: number, shape: number, rod: number) => {
      const { upper, lower } = pairs.get(shape)!.shift()!.meaning;
      sets.put(site, { rod, upper: this.shellOf(upper), lower: this.shellOf(lower) });
    };
    // Rods that stay next: their journals are theirs.
    for (const { column, times } of taken) {
      const { meaning } = column;
      if (meaning.is !== 'fit') continue;
      const { homes = [], journal } = spaces[meaning.space]!;
      const open = homes.filter(
        (home) => !served.has(home.rod) && !sets.choices[this.siteOf.get(home.journal)!],
      );
      open.sort((a, b) => Number(wanted.has(b.engine)) - Number(wanted.has(a.engine)));
      for (const home of open.slice(0, times)) {
        served.add(home.rod);
        putRod(this.siteOf.get(home.journal)!, meaning.shape, this.ofSearch.rod.get(home.rod)!);
      }
      addTimes(byJournal, journal, meaning, times - Math.min(open.length, times));
    }
    const rods = classes.map((each) => each.rods.filter((rod) => !served.has(rod)));
    const put = (site: number) => {
      const fit = byJournal.get(this.ofModel.journal.get(sites[site]!.journal)!)?.shift();
      if (!fit) return;
      const { rod } = spaces[fit.space]!;
      putRod(site, fit.shape, rod === undefined ? NO_ROD : this.ofSearch.rod.get(rods[rod]!.shift()!)!);
    };
    for (const first of [true, false]) {
      for (const [site, { engine }] of sites.entries()) {
        if (wanted.has(engine) === first && !sets.choices[site]) put(site);
      }
    }
  }

  private shellOf(shell: number): number {
    const { shells, bought } = this.model.problem.shells[shell]!;
    return this.ofSearch.shell.get(bought ?? shells[0]!)!;
  }
}
