/** From the sets of a search to counts of the columns of its own model, and back. */
import type { FitTable } from './fit-table.js';
import type { MassRun } from './mass-lines.js';
import { type Column, fitColumn, type Model } from './model-columns.js';
import { isPair, type PairColumn, type Quad, quadOf } from './quads.js';
import type { Reunion } from './reunions.js';
import { type Choice, NO_ROD } from './sites.js';
import type { WorkingSets } from './working-sets.js';

const runKey = ({ engineType, first, last }: MassRun) => `${first},${last},${engineType}`;

/** A column, and how many times it is taken. */
export interface Taken {
  readonly column: Column;
  readonly times: number;
}

/** Counts the use of parts that several kept fits name: each serves once, or as often as the stock has it. */
export class Claims {
  private readonly contested: ReadonlySet<number>;
  private readonly taken = new Map<number, number>();

  constructor(private readonly model: Model) {
    this.contested = new Set(model.places.contested.values());
  }

  /**
   * Takes the parts of a column, or none of them where one is used up.
   * @returns whether they are taken
   */
  take({ rows, values }: Column): boolean {
    const claimed = rows.flatMap((row, at) => (this.contested.has(row) ? [[row, values[at]!] as const] : []));
    const after = claimed.map(([row, value]) => [row, (this.taken.get(row) ?? 0) + value] as const);
    if (after.some(([row, value]) => value > this.model.rows[row]!.upper)) return false;
    for (const [row, value] of after) this.taken.set(row, value);
    return true;
  }
}

export class Translator {
  private readonly engines = new Map<number, Column>();
  private readonly windows: Column[] = [];
  private readonly runs = new Map<string, Column>();
  private readonly pairs = new Map<string, PairColumn>();
  private readonly kept = new Map<number, Column>();
  private readonly fits = new Map<string, Column>();

  constructor(
    private readonly model: Model,
    private readonly table: FitTable,
  ) {
    for (const column of model.columns) {
      const { meaning } = column;
      if (meaning.is === 'engine') this.engines.set(meaning.engine, column);
      else if (meaning.is === 'window') this.windows.push(column);
      else if (meaning.is === 'run') this.runs.set(runKey(meaning.run), column);
      else if (meaning.is === 'kept') this.kept.set(meaning.kept, column);
      else if (isPair(column)) {
        const { upper, lower } = column.meaning;
        this.pairs.set(`${upper},${lower}`, column);
        // A pair of two `either` halves is listed in one order only.
        if (!this.pairs.has(`${lower},${upper}`)) this.pairs.set(`${lower},${upper}`, column);
      }
    }
  }

  /** The column of a space with a shape, always the same object. */
  private fit(space: number, shape: number): Column {
    const key = `${space},${shape}`;
    const column = this.fits.get(key) ?? fitColumn(this.model, space, shape);
    this.fits.set(key, column);
    return column;
  }

  /** The column of parts that ran together; undefined where other journals have used up one of them. */
  private keptColumn(site: number, choice: Choice, claims: Claims): Column | undefined {
    for (const { kept, ...each } of this.table.togetherAt(site)) {
      if (each.rod !== choice.rod || each.upper !== choice.upper || each.lower !== choice.lower) continue;
      const column = this.kept.get(kept)!;
      if (claims.take(column)) return column;
    }
    return undefined;
  }

  private runsOf(sets: WorkingSets): MassRun[] {
    const cranks = new Map<string, Map<number, number[]>>();
    for (const [site, choice] of sets.choices.entries()) {
      if (!choice || choice.rod === NO_ROD) continue;
      const { engine, journal } = this.table.sites[site]!;
      const own = cranks.get(journal.engineType) ?? new Map<number, number[]>();
      cranks.set(journal.engineType, own.set(engine, [...(own.get(engine) ?? []), choice.rod]));
    }
    const { massLines } = this.model.places;
    return [...cranks].flatMap(([engineType, own]) => massLines.runsOf(engineType, [...own.values()]));
  }

  toTaken(sets: WorkingSets): Taken[] {
    const { table, model } = this;
    const times = new Map<Column, number>();
    const add = (column: Column) => times.set(column, (times.get(column) ?? 0) + 1);
    const claims = new Claims(model);
    for (const [site, choice] of sets.choices.entries()) {
      if (!choice) continue;
      const kept = this.keptColumn(site, choice, claims);
      if (kept) {
        add(kept);
        continue;
      }
      add(this.fit(table.spaceAt(site, choice.rod)!, table.shapeAt(choice.upper, choice.lower)));
      add(this.pairs.get(`${choice.upper},${choice.lower}`)!);
    }
    for (const [engine, column] of this.engines) if (sets.isCompleteEngine(engine)) add(column);
    for (const { engine, engineType, row } of model.places.oneWindow) {
      const rods = table.sites.flatMap((site, place) => {
        const choice = sets.choices[place];
        const own = site.engine === engine && site.journal.engineType === engineType;
        return own && choice && choice.rod !== NO_ROD ? [model.places.rodOnEngine(engine, choice.rod)!] : [];
      });
      const window = this.windows.find(
        ({ rows }) => rows.includes(row) && rods.every((rod) => rows.includes(rod)),
      );
      if (window) add(window);
    }
    for (const run of this.runsOf(sets)) add(this.runs.get(runKey(run))!);
    return [...times].map(([column, count]) => ({ column, times: count }));
  }

  /** The fits of parts that ran together behind some columns. */
  reunions(columns: readonly Column[]): Reunion[] {
    const wanted = new Set(columns.map(({ meaning }) => (meaning.is === 'kept' ? meaning.kept : -1)));
    return this.table.together.filter(({ kept }) => wanted.has(kept));
  }

  /** The filled journals as columns of the linear program. */
  quadsOf({ choices }: WorkingSets): Quad[] {
    return choices.flatMap((choice, site) => {
      if (!choice) return [];
      const pair = this.pairs.get(`${choice.upper},${choice.lower}`)!;
      return [quadOf(this.model, this.table.spaceAt(site, choice.rod)!, pair)];
    });
  }

  /** Replaces the sets at hand with those that a program found. */
  fromTaken(taken: readonly Taken[], sets: WorkingSets): void {
    const { spaces } = this.model.problem;
    const { sites, together } = this.table;
    for (const site of sets.choices.keys()) sets.put(site, undefined);
    const pairs = new Map<number, { upper: number; lower: number }[]>();
    for (const { column, times } of taken) {
      const { meaning } = column;
      if (meaning.is === 'kept') {
        const fit = together.find(({ kept }) => kept === meaning.kept)!;
        sets.put(fit.site, { rod: fit.rod, upper: fit.upper, lower: fit.lower });
      }
      if (meaning.is !== 'pair') continue;
      const own = pairs.get(meaning.shape) ?? [];
      for (let time = 0; time < times; time++) own.push({ upper: meaning.upper, lower: meaning.lower });
      pairs.set(meaning.shape, own);
    }
    for (const { column, times } of taken) {
      const { meaning } = column;
      if (meaning.is !== 'fit') continue;
      const { journal, rod = NO_ROD } = spaces[meaning.space]!;
      for (let time = 0; time < times; time++) {
        const site = sites.findIndex((each, place) => each.journalClass === journal && !sets.choices[place]);
        sets.put(site, { rod, ...pairs.get(meaning.shape)!.pop()! });
      }
    }
  }
}
