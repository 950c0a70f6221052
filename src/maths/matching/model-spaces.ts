/** The classes of the rows of a problem, and the space of a journal with a rod as a model of classes has it. */
import type { FitTable } from './fit-table.js';
import type { Problem } from './problem.js';
import { NO_ROD } from './sites.js';
import type { StockRod } from './stock.js';

/** The class of each row, by the row. */
function placesOf(classes: readonly (readonly object[])[]): ReadonlyMap<object, number> {
  return new Map(classes.flatMap((rows, place) => rows.map((row) => [row, place] as const)));
}

/** The classes of the rows of a problem. */
export const placesIn = ({ journals, rods, shells }: Pick<Problem, 'journals' | 'rods' | 'shells'>) => ({
  journal: placesOf(journals.map((each) => each.journals)),
  rod: placesOf(rods.map((each) => each.rods)),
  shell: placesOf(shells.map((each) => (each.bought ? [each.bought] : each.shells))),
});

export type Places = ReturnType<typeof placesIn>;

/** The spaces of a model, by the journals and rods of the search. */
export class ModelSpaces {
  /** By journal class and rod class; those whose rods stay by journal and rod. */
  private readonly space: ReadonlyMap<string, number>;
  private readonly homeSpace = new Map<object, Map<object, number>>();
  /** By journal of the search: the rods that ran on it. */
  private readonly homes = new Map<object, object[]>();

  /** @param twin the row of the model's stock for one of the search's */
  constructor(
    { spaces }: Problem,
    private readonly table: FitTable,
    private readonly twin: (row: object) => object,
    private readonly places: Places,
  ) {
    this.space = new Map(
      spaces.flatMap(({ journal, rod, homes }, place) => (homes ? [] : [[`${journal},${rod}`, place]])),
    );
    for (const [place, { homes = [] }] of spaces.entries()) {
      for (const { journal, rod } of homes) {
        const own = this.homeSpace.get(journal) ?? new Map<object, number>();
        this.homeSpace.set(journal, own.set(rod, place));
      }
    }
    for (const { journal, rod } of table.problem.homes)
      this.homes.set(journal, [...(this.homes.get(journal) ?? []), rod]);
  }

  /** The space of a journal with a rod of some class: that of a rod which stays, where one of the class ran on it. */
  at(journal: object, rod: number): number | undefined {
    const own = this.twin(journal);
    const ofClass = (place: number | undefined) => this.space.get(`${this.places.journal.get(own)},${place}`);
    if (rod === NO_ROD) return ofClass(undefined);
    const { rods } = this.table.problem.rods[rod]!;
    const stays = this.homes.get(journal)?.find((row) => rods.includes(row as StockRod));
    const row = this.twin(stays ?? rods[0]!);
    return this.homeSpace.get(own)?.get(row) ?? ofClass(this.places.rod.get(row));
  }
}
