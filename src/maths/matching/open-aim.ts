/** One aim of a large stock while its sets are short of the bound: what they amount to, and ways to better them. */
import type { Aim } from './aims.js';
import { aimValueOf, tryOut } from './counts.js';
import type { Improved, SearchLimits } from './improve.js';
import type { Wish } from './mass-groups.js';
import { REGROUPINGS, type Regrouping } from './mass-regroups.js';
import type { Column } from './model-columns.js';
import type { Bounded } from './relaxation.js';
import { type LargeSearch, type ModelSide, regroupedSide, rodsApart, rodsKept } from './sides.js';
import { type Reached, reachedOf } from './stage.js';

/** Share of the time left that a bound may take. */
const BOUND_SHARE = 0.6;

/** Share of the time left that a whole-number program may take. */
const PROGRAM_SHARE = 0.5;

/** The rods wished for are tried in so many parts. */
const BATCHES = 8;

export class OpenAim {
  /** No sets do better, in steps of the aim. */
  bound = Number.NEGATIVE_INFINITY;
  /** Whether the time ended a bound or a program before it was done. */
  isCut = false;

  /**
   * @param aims the aim at hand, after those that go before it
   * @param held what these have reached
   * @param left seconds
   * @param nodes of each whole-number program, at most
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

  /** What the sets at hand amount to for the aim. */
  value(): number {
    return aimValueOf(this.aim, this.search.sets);
  }

  /** The same for every aim so far. */
  values(): number[] {
    return this.aims.map((aim) => aimValueOf(aim, this.search.sets));
  }

  /** Takes note of a value that no sets are below. */
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
    // What the bound leaves open is the programs' and the kicks': they get their share.
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

  /** Whole-number programs over the fits of the linear ones: first those that sets at the bound could use, then all that could help. */
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
   * A whole-number program over all fits of a good many spaces.
   * @returns a value that no sets of the side's model are below, better ones than those at hand before
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

  /** Other groups about the sets at hand, for all wished rods at once. */
  regroupAtOnce(outer: ModelSide, columns: readonly Column[]): void {
    const { sets } = this.search;
    if (sets.table.problem.windows.size === 0) return;
    for (const how of REGROUPINGS) this.tryGroups(rodsKept(outer, sets, columns), how);
  }

  /** The same, and then for some of the wished rods not had yet, until none helps. */
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
