/** Sets in the making: which rod and shells each journal has, and what is still free. */
import type { FitTable } from './fit-table.js';
import type { Sequence } from './random.js';
import { type Choice, NO_ROD } from './sites.js';

/**
 * Compared in this order: most complete engines, most journals of engines that could be completed, most journals
 * beyond, least cost.
 */
export interface SetsValue {
  readonly complete: number;
  readonly open: number;
  readonly beyond: number;
  readonly cost: number;
}

/** Below 0 where `a` is better. */
export function compareValues(a: SetsValue, b: SetsValue): number {
  return b.complete - a.complete || b.open - a.open || b.beyond - a.beyond || a.cost - b.cost;
}

export class WorkingSets {
  /** By site; undefined where the journal is empty. */
  readonly choices: readonly (Choice | undefined)[];
  private readonly chosen: (Choice | undefined)[];
  private readonly costs: Float64Array;
  private readonly rodUsed: Int32Array;
  private readonly shellUsed: Int32Array;
  private readonly sharedUsed = new Map<number, number>();
  /** Sites that must share one window of mass, by a key of engine and engine type. */
  private readonly cranks = new Map<string, number[]>();
  /** Journals and filled journals of each engine. */
  private readonly size: Int32Array;
  private readonly filled: Int32Array;
  private complete = 0;
  private inComplete = 0;
  private count = 0;
  private inHopeless = 0;
  private cost = 0;
  /** The choice before each change since `mark`. */
  private changes: { readonly site: number; readonly before: Choice | undefined }[] = [];

  constructor(readonly table: FitTable) {
    const { sites, problem } = table;
    this.chosen = sites.map(() => undefined);
    this.choices = this.chosen;
    this.costs = new Float64Array(sites.length);
    this.rodUsed = new Int32Array(table.rodCount.length);
    this.shellUsed = new Int32Array(table.shellCount.length);
    // A hopeless engine is never complete, though a part of its journals may be all that is searched.
    this.size = Int32Array.from(problem.stock.engines, ({ journals, isHopeless }) =>
      isHopeless ? -1 : journals.length,
    );
    this.filled = new Int32Array(this.size.length);
    for (const site of sites.keys()) {
      if (!table.weighs(site)) continue;
      const key = this.crankKey(site);
      const own = this.cranks.get(key);
      if (own) own.push(site);
      else this.cranks.set(key, [site]);
    }
  }

  private crankKey(site: number): string {
    return `${this.table.sites[site]!.engine},${this.table.engineTypeOf(site)}`;
  }

  freeRods(rod: number): number {
    return this.table.rodCount[rod]! - this.rodUsed[rod]!;
  }

  freeShells(shell: number): number {
    return this.table.shellCount[shell]! - this.shellUsed[shell]!;
  }

  bothFree(upper: number, lower: number): boolean {
    if (upper === lower) return this.freeShells(upper) > 1;
    return this.freeShells(upper) > 0 && this.freeShells(lower) > 0;
  }

  /** Whether the case bore of the journal is free. */
  boreIsFree(site: number): boolean {
    const { sharedBore } = this.table.sites[site]!;
    return sharedBore < 0 || (this.sharedUsed.get(sharedBore) ?? 0) === 0;
  }

  private use(site: number, { rod, upper, lower }: Choice, by: 1 | -1): void {
    if (rod !== NO_ROD) this.rodUsed[rod]! += by;
    this.shellUsed[upper]! += by;
    this.shellUsed[lower]! += by;
    const { sharedBore, engine } = this.table.sites[site]!;
    if (sharedBore >= 0) this.sharedUsed.set(sharedBore, (this.sharedUsed.get(sharedBore) ?? 0) + by);
    this.cost += by * this.costs[site]!;
    this.count += by;
    if (this.table.isHopeless(engine)) this.inHopeless += by;
    const size = this.size[engine]!;
    const whole = this.filled[engine] === size;
    this.filled[engine]! += by;
    const change = Number(this.filled[engine] === size) - Number(whole);
    this.complete += change;
    this.inComplete += change * size;
  }

  put(site: number, choice: Choice | undefined): void {
    const before = this.chosen[site];
    this.changes.push({ site, before });
    if (before) this.use(site, before, -1);
    this.chosen[site] = choice;
    if (!choice) return;
    this.costs[site] = this.table.cost(site, choice.rod, choice.upper, choice.lower);
    this.use(site, choice, 1);
  }

  /** Changes from here on can be undone. */
  mark(): void {
    this.changes = [];
  }

  /** Back to the last mark. */
  undo(): void {
    const changes = this.changes.reverse();
    this.changes = [];
    for (const { site } of changes) if (this.chosen[site]) this.put(site, undefined);
    // Of several changes of a site the first holds what it had at the mark.
    const first = new Map(changes.map(({ site, before }) => [site, before]));
    for (const [site, before] of first) this.put(site, before);
    this.changes = [];
  }

  copyFrom(other: readonly (Choice | undefined)[]): void {
    for (const site of this.choices.keys()) this.put(site, undefined);
    for (const [site, choice] of other.entries()) this.put(site, choice);
  }

  /**
   * The lightest and heaviest rank of mass among the rods of a journal's crank, without its own; undefined without
   * any.
   */
  private ranksOfOthers(site: number, self: boolean): readonly [number, number] | undefined {
    let [lightest, heaviest] = [Number.POSITIVE_INFINITY, -1];
    for (const other of this.cranks.get(this.crankKey(site))!) {
      const choice = this.choices[other];
      if (!choice || (other === site && !self)) continue;
      const rank = this.table.massRank[choice.rod]!;
      lightest = Math.min(lightest, rank);
      heaviest = Math.max(heaviest, rank);
    }
    return heaviest < 0 ? undefined : [lightest, heaviest];
  }

  /** The ranks of mass that the other rods of its crank leave open to a journal, both ends included. */
  openRanks(site: number): readonly [number, number] {
    if (!this.table.weighs(site)) return [0, Number.POSITIVE_INFINITY];
    const reach = this.table.reachOf(site);
    const others = this.ranksOfOthers(site, false);
    if (!others) return [0, reach.length - 1];
    const [lightest, heaviest] = others;
    return [this.table.lightestReaching(site, heaviest), reach[lightest]!];
  }

  /**
   * One window of mass that holds all rods of the journal's crank, the same for each of its journals.
   * @param lean 0 for the lightest such window, 1 for the heaviest
   */
  windowOf(site: number, lean: number): readonly [number, number] {
    const ranks = this.table.weighs(site) ? this.ranksOfOthers(site, true) : undefined;
    if (!ranks) return [0, Number.POSITIVE_INFINITY];
    const [lightest, heaviest] = ranks;
    const least = this.table.lightestReaching(site, heaviest);
    const first = least + Math.round(lean * (lightest - least));
    return [first, this.table.reachOf(site)[first]!];
  }

  isChosen(site: number, { rod, upper, lower }: Choice): boolean {
    const now = this.choices[site];
    return now?.rod === rod && now.upper === upper && now.lower === lower;
  }

  /** Whether the journal, now empty, can be filled so with what is free. */
  fits(site: number, { rod, upper, lower }: Choice): boolean {
    const { table } = this;
    const [first, last] = this.openRanks(site);
    const rodIsFree =
      rod === NO_ROD ||
      (this.freeRods(rod) > 0 && table.massRank[rod]! >= first && table.massRank[rod]! <= last);
    return (
      rodIsFree &&
      this.bothFree(upper, lower) &&
      this.boreIsFree(site) &&
      Number.isFinite(table.cost(site, rod, upper, lower))
    );
  }

  /**
   * Empties journals until the parts of a fit are free.
   * @returns the journals emptied
   */
  makeRoom(site: number, { rod, upper, lower }: Choice, next: Sequence): number[] {
    const out: number[] = [];
    const take = (isFree: () => boolean, holds: (choice: Choice) => boolean) => {
      while (!isFree()) {
        const holders = [...this.choices.entries()].filter(
          ([other, choice]) => other !== site && choice && holds(choice),
        );
        const holder = holders[Math.floor(next() * holders.length)];
        if (!holder) return;
        this.put(holder[0], undefined);
        out.push(holder[0]);
      }
    };
    if (rod !== NO_ROD)
      take(
        () => this.freeRods(rod) > 0,
        (choice) => choice.rod === rod,
      );
    take(
      () => this.bothFree(upper, lower),
      (choice) =>
        [upper, lower].some(
          (shell) =>
            this.freeShells(shell) < 1 + Number(upper === lower) &&
            (choice.upper === shell || choice.lower === shell),
        ),
    );
    return out;
  }

  /** Whether every journal is filled. */
  isFull(): boolean {
    return this.count === this.chosen.length;
  }

  isCompleteEngine(engine: number): boolean {
    const size = this.size[engine]!;
    return size > 0 && this.filled[engine] === size;
  }

  value(): SetsValue {
    const beyond = this.count - this.inComplete;
    return { complete: this.complete, open: beyond - this.inHopeless, beyond, cost: this.cost };
  }
}
