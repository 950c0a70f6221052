/** Sets in the making: which rod and shells each journal has, and what is still free. */
import { type Choice, type FitTable, NO_ROD } from './fit-table.js';
import type { Sequence } from './random.js';

/** Most complete engines, then most journals beyond them, then least cost. */
export interface SetsValue {
  readonly complete: number;
  readonly beyond: number;
  readonly cost: number;
}

/** Below 0 where `a` is better. */
export function compareValues(a: SetsValue, b: SetsValue): number {
  return b.complete - a.complete || b.beyond - a.beyond || a.cost - b.cost;
}

export class WorkingSets {
  /** By site; undefined where the journal is empty. */
  readonly choices: (Choice | undefined)[];
  private readonly rodUsed: Int32Array;
  private readonly shellUsed: Int32Array;
  private readonly sharedUsed = new Map<number, number>();
  /** Sites that must share one window of mass, by a key of engine and engine type. */
  private readonly cranks = new Map<string, number[]>();

  constructor(readonly table: FitTable) {
    this.choices = table.sites.map(() => undefined);
    this.rodUsed = new Int32Array(table.rodCount.length);
    this.shellUsed = new Int32Array(table.shellCount.length);
    for (const site of table.sites.keys()) {
      if (!table.weighs(site)) continue;
      const key = this.crankKey(site);
      this.cranks.set(key, [...(this.cranks.get(key) ?? []), site]);
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

  /** Whether the case bore of the journal serves no other. */
  boreIsFree(site: number): boolean {
    const { sharedBore } = this.table.sites[site]!;
    return sharedBore < 0 || (this.sharedUsed.get(sharedBore) ?? 0) === 0;
  }

  private count(site: number, { rod, upper, lower }: Choice, by: 1 | -1): void {
    if (rod !== NO_ROD) this.rodUsed[rod]! += by;
    this.shellUsed[upper]! += by;
    this.shellUsed[lower]! += by;
    const { sharedBore } = this.table.sites[site]!;
    if (sharedBore >= 0) this.sharedUsed.set(sharedBore, (this.sharedUsed.get(sharedBore) ?? 0) + by);
  }

  put(site: number, choice: Choice | undefined): void {
    const before = this.choices[site];
    if (before) this.count(site, before, -1);
    if (choice) this.count(site, choice, 1);
    this.choices[site] = choice;
  }

  copyFrom(other: readonly (Choice | undefined)[]): void {
    for (const site of this.choices.keys()) this.put(site, undefined);
    for (const [site, choice] of other.entries()) this.put(site, choice);
  }

  /** The lightest and heaviest rank of mass among the rods of a journal's crank, without its own; undefined without any. */
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

  /** Empties journals until the parts of a fit are free. @returns the journals emptied */
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

  isCompleteEngine(engine: number): boolean {
    const { sites, problem } = this.table;
    const filled = sites.filter((each, place) => each.engine === engine && this.choices[place]).length;
    return filled > 0 && filled === problem.stock.engines[engine]!.journals.length;
  }

  value(): SetsValue {
    const { table, choices } = this;
    const filled = new Map<number, number>();
    let [count, cost] = [0, 0];
    for (const [site, choice] of choices.entries()) {
      if (!choice) continue;
      count++;
      cost += table.cost(site, choice.rod, choice.upper, choice.lower);
      const { engine } = table.sites[site]!;
      filled.set(engine, (filled.get(engine) ?? 0) + 1);
    }
    let [complete, inComplete] = [0, 0];
    for (const [engine, own] of filled) {
      if (own !== table.problem.stock.engines[engine]!.journals.length) continue;
      complete++;
      inComplete += own;
    }
    return { complete, beyond: count - inComplete, cost };
  }
}
