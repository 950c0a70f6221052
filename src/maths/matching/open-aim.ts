/** One aim of a large stock while it has a gap: its value, its bound, and ways to improve the sets. */
import type { Aim } from './aims.js';
import { aimValueOf, tryOut } from './counts.js';
import type { Improved, SearchLimits } from './improve.js';
import type { Wish } from './mass-groups.js';
import { REGROUPINGS, type Regrouping } from './mass-regroups.js';
import type { Column } from './model-columns.js';
import type { Bounded } from './relaxation.js';
import { type LargeSearch, type ModelSide, regroupedSide, rodsApart, rodsKept } from './sides.js';
import { type Reached, reachedOf } from './stage.js';

/** Share of the time left that a linear bound may take. */
const BOUND_SHARE = 0.6;

/** Share of the time left that a whole-number program may take. */
const PROGRAM_SHARE = 0.5;

/** Into so many batches the rods wished for are divided. */
const BATCHES = 8;

export class OpenAim {
  /** No sets do better, in steps of the aim. */
  bound = Number.NEGATIVE_INFINITY;
  /** Whether a time limit ended a linear bound or a program. */
  isCut = false;

  /**
   * @param aims the aim at hand, behind those before it
   * @param held what those before it reached
   * @param left seconds left for this aim
   * @param nodes most nodes of each whole-number program
   */
  constructor(
    private readonly search: LargeSearch,
    readonly aims: readonly Aim[],
    private readonly held: readonly Reached[],
    readonly left: () => number,
    private readonly nodes?: number,
  ) {}

  get aim(): Aim {
    return this.aims.at(-1)!;
  }

  /** The value of the sets for the aim at hand. */
  value(): number {
    return aimValueOf(this.aim, this.search.sets);
  }

  /** Their values for all aims so far. */
  values(): number[] {
    return this.aims.map((aim) => aimValueOf(aim, this.search.sets));
  }

  /** Takes a lower bound. */
  prove(bound: number): void {
    this.bound = Math.max(this.bound, Math.ceil(bound));
  }

  isOpen(): boolean {
    return this.value() > this.bound && this.left() > 0;
  }

  /** What the aim reached by now, and what is proved of it. */
  reached(): Reached {
    return reachedOf(this.aim, this.value(), this.bound, this.isCut || this.left() <= 0);
  }

  boundOf({ relaxation, bridge }: ModelSide): Bounded | undefined {
    for (const quad of bridge.quadsOf(this.search.sets)) relaxation.pool.add(quad);
    bridge.fillingsOf(this.search.sets, relaxation.pool);
    // The programs and kicks that follow need some of the time.
    const rest = this.left() * (1 - BOUND_SHARE);
    const bounded = relaxation.bound(this.aim, this.held, this.value(), () => this.left() - rest);
    if (bounded?.linear.isCut ?? true) this.isCut = true;
    return bounded;
  }

  private limits(): SearchLimits {
    return {
      seconds: this.left() * PROGRAM_SHARE,
      ...(this.nodes !== undefined && { nodes: this.nodes }),
    };
  }

  private take({ bridge }: ModelSide, { sets: taken, isCut }: Improved): void {
    const { sets } = this.search;
    if (isCut) this.isCut = true;
    if (!taken) return;
    tryOut(
      sets,
      () => bridge.fromTaken(taken, sets),
      () => this.values(),
    );
  }

  /**
   * Whole-number programs over the fits in the pool: first those that sets at the bound could use, then those that
   * any better sets could.
   */
  improveByPrograms(side: ModelSide, bounded: Bounded): void {
    const best = Math.ceil(bounded.linear.bound);
    for (const tight of [true, false]) {
      if (!this.isOpen() || this.value() <= best) return;
      const start = tight ? [] : side.bridge.toTaken(this.search.sets);
      const value = tight ? best : this.value() - 1;
      this.take(side, side.relaxation.program(bounded, value, start, this.limits()));
    }
  }

  /**
   * A whole-number program over all fits of many spaces.
   * @returns a lower bound of the side's model
   */
  improveWidely(side: ModelSide, bounded: Bounded, spaces: number): number {
    const best = Math.ceil(bounded.linear.bound);
    if (!this.isOpen() || this.value() <= best) return best;
    const start = side.bridge.toTaken(this.search.sets);
    const found = side.relaxation.wideProgram(bounded, this.value(), start, spaces, this.limits());
    this.take(side, found);
    return Math.ceil(found.bound);
  }

  private tryGroups(wishes: readonly Wish[], how: Regrouping): void {
    if (!this.isOpen()) return;
    const side = regroupedSide(this.search, wishes, how);
    const bounded = this.boundOf(side);
    if (bounded) this.improveByPrograms(side, bounded);
  }

  /** Tries other groups of masses that allow the sets at hand, for all wished rods at once. */
  regroupAtOnce(outer: ModelSide, columns: readonly Column[]): void {
    const { sets } = this.search;
    if (sets.table.problem.windows.size === 0) return;
    for (const how of REGROUPINGS) this.tryGroups(rodsKept(outer, sets, columns), how);
  }

  /** The same, and then batch by batch for the wished rods that are still apart, until no batch helps. */
  regroupAll(outer: ModelSide, columns: readonly Column[]): void {
    const { sets } = this.search;
    if (sets.table.problem.windows.size === 0) return;
    this.regroupAtOnce(outer, columns);
    for (let before = Number.POSITIVE_INFINITY; this.isOpen() && this.value() < before; ) {
      before = this.value();
      const apart = rodsApart(outer, sets, columns);
      const size = Math.max(1, Math.ceil(apart.length / BATCHES));
      for (let start = 0; start < apart.length; start += size)
        this.tryGroups(apart.slice(start, start + size), 'fullest');
    }
  }
}
