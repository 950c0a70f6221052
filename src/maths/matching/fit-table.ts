/** The fits of a problem as a search looks them up: whether a rod and two shells go on a journal, and at what cost. */
import { pricesOf } from './aims.js';
import { type FitCostWeights, weightsOf } from './fit-weights.js';
import { firstAtLeast, type PairGroup, type PairOfKind, pairGroupsOf } from './pair-groups.js';
import { BIG_END, keyOfKind, type ShellClass } from './part-classes.js';
import type { Problem } from './problem.js';
import { type Reunion, reunionsOf } from './reunions.js';
import { type Choice, homeSpacesOf, NO_ROD, type Site, sitesOf } from './sites.js';

export class FitTable {
  readonly sites: readonly Site[];
  readonly uppers: ReadonlyMap<string, readonly number[]>;
  readonly lowers: ReadonlyMap<string, readonly number[]>;
  readonly pairs: ReadonlyMap<string, readonly PairOfKind[]>;
  /** By kind: the classes of pairs that are used as one. */
  readonly asOne: ReadonlyMap<string, readonly number[]>;
  private readonly groups = new Map<string, readonly PairGroup[]>();
  readonly rodCount: Int32Array;
  readonly shellCount: Float64Array;
  readonly massRank: Int32Array;
  /**
   * By engine type: for each rank of mass the last one that shares a window with it; none for a type without a mass
   * spread.
   */
  readonly lastRank: ReadonlyMap<string, Int32Array>;
  readonly weights: FitCostWeights;
  private readonly shapeOf: Int32Array;
  private readonly shapeOfPair: Int32Array;
  /** Spaces by journal class and rod, and those whose rods stay by site and rod. */
  private readonly spaceOf: Int32Array;
  private readonly homeSpaceOf: readonly ReadonlyMap<number, number>[];
  private readonly hopeless: Uint8Array;
  private readonly offAim: Float64Array;
  private readonly hasAim: Uint8Array;
  private readonly shapeSize: Float64Array;
  private readonly shellPrice: Float64Array;
  /** Fits of parts that ran together, by class. */
  readonly together: readonly Reunion[];
  private readonly atSite: Reunion[][];
  private readonly rods: number;
  /** Classes of single halves; those of pairs come after them. */
  private readonly singles: number;

  constructor(readonly problem: Problem) {
    const { journals, rods, shells, shapes, spaces, stock } = problem;
    this.rods = rods.length;
    this.singles = shells.filter(({ half }) => half !== 'pair').length;
    this.rodCount = Int32Array.from(rods, (rod) => rod.rods.length);
    this.shellCount = Float64Array.from(shells, ({ count }) => count);
    this.massRank = Int32Array.from(rods, ({ massRank }) => massRank ?? 0);
    this.shapeSize = Float64Array.from(shapes, ({ size }) => size);
    this.shapeOf = new Int32Array(this.singles ** 2).fill(-1);
    this.shapeOfPair = new Int32Array(shells.length - this.singles).fill(-1);
    this.spaceOf = new Int32Array(journals.length * (this.rods + 1)).fill(-1);
    this.offAim = new Float64Array(spaces.length);
    this.hasAim = new Uint8Array(spaces.length);
    for (const [place, { journal, rod = NO_ROD, size, limits }] of spaces.entries()) {
      if (!spaces[place]!.homes) this.spaceOf[journal * (this.rods + 1) + rod + 1] = place;
      this.offAim[place] = size - (limits.aim ?? 0);
      this.hasAim[place] = limits.aim === undefined ? 0 : 1;
    }
    const pairs = new Map<string, PairOfKind[]>();
    const used = new Set([...problem.bySize.values()].flatMap((own) => [...own]));
    for (const [place, shape] of shapes.entries()) {
      const own = pairs.get(shape.kind) ?? [];
      pairs.set(shape.kind, own);
      for (const { upper, lower } of shape.pairs) {
        if (used.has(place)) own.push({ upper, lower });
        if (shells[upper]!.half === 'pair') {
          this.shapeOfPair[upper - this.singles] = place;
          continue;
        }
        this.shapeOf[upper * this.singles + lower] = place;
        if (shells[upper]!.half === 'either' && shells[lower]!.half === 'either') {
          this.shapeOf[lower * this.singles + upper] = place;
        }
      }
    }
    this.pairs = pairs;
    const byKind = (...halves: ShellClass['half'][]) => {
      const lists = new Map<string, number[]>();
      for (const [place, shell] of shells.entries()) {
        const key = keyOfKind(shell);
        if (halves.includes(shell.half)) lists.set(key, [...(lists.get(key) ?? []), place]);
      }
      return lists;
    };
    this.uppers = byKind('upper', 'either');
    this.lowers = byKind('lower', 'either');
    this.asOne = byKind('pair');
    this.sites = sitesOf(problem);
    this.hopeless = Uint8Array.from(stock.engines, ({ isHopeless }) => Number(isHopeless === true));
    this.homeSpaceOf = homeSpacesOf(problem, this.sites);
    const prices = pricesOf(stock);
    this.shellPrice = Float64Array.from(shells, ({ bought }) =>
      bought ? prices.steps[stock.newShells.indexOf(bought)]! : 0,
    );
    this.lastRank = new Map(
      [...problem.windows].map(([engineType, windows]) => {
        const last = new Int32Array(windows.at(-1)!.last + 1);
        for (const { first, last: end } of windows) last.fill(end, first, end + 1);
        return [engineType, last];
      }),
    );
    this.weights = weightsOf(problem, this.sites.length, this.shellPrice);
    for (const [kind, own] of pairs) this.groups.set(kind, this.groupsOf(own));
    this.together = reunionsOf(problem, this.sites);
    this.atSite = this.sites.map(() => []);
    for (const reunion of this.together) this.atSite[reunion.site]!.push(reunion);
  }

  private groupsOf(pairs: readonly PairOfKind[]): PairGroup[] {
    return pairGroupsOf(
      pairs,
      ({ upper, lower }) => this.price(upper, lower),
      ({ upper, lower }) => this.shapeSize[this.shapeAt(upper, lower)]!,
    );
  }

  /** The fits of one journal whose parts ran together there. */
  togetherAt(site: number): readonly Reunion[] {
    return this.atSite[site]!;
  }

  /** Whether parts of these classes ran together on the journal. */
  isKept(site: number, rod: number, upper: number, lower: number): boolean {
    return this.atSite[site]!.some(
      (each) => each.rod === rod && each.upper === upper && each.lower === lower,
    );
  }

  /** The place of a journal's space with a rod; undefined where no shells make an allowed fit of it. */
  spaceAt(site: number, rod: number): number | undefined {
    const space = this.placeOfSpace(site, rod);
    return space < 0 ? undefined : space;
  }

  private placeOfSpace(site: number, rod: number): number {
    const homes = this.homeSpaceOf[site]!;
    const home = homes.size > 0 ? homes.get(rod) : undefined;
    return home ?? this.spaceOf[this.sites[site]!.journalClass * (this.rods + 1) + rod + 1]!;
  }

  /** Whether a rod of the class ran on the journal. */
  stays(site: number, rod: number): boolean {
    return this.homeSpaceOf[site]!.has(rod);
  }

  isHopeless(engine: number): boolean {
    return this.hopeless[engine] === 1;
  }

  shapeAt(upper: number, lower: number): number {
    if (upper >= this.singles) return upper === lower ? this.shapeOfPair[upper - this.singles]! : -1;
    return lower >= this.singles ? -1 : this.shapeOf[upper * this.singles + lower]!;
  }

  /** Whether both shells are a pair that is used as one. */
  isAsOne({ upper }: Choice): boolean {
    return upper >= this.singles;
  }

  /** Whether an allowed fit is in range: all are, unless fits within the service limit are allowed. */
  isInRange(site: number, { rod, upper, lower }: Choice): boolean {
    const { rules, stock } = this.problem;
    return !stock.allowWorn || rules.isInRange(this.spaceAt(site, rod)!, this.shapeAt(upper, lower));
  }

  private offOf(space: number, shape: number): number {
    return this.hasAim[space] === 0 ? 0 : Math.abs(this.offAim[space]! - this.shapeSize[shape]!);
  }

  /** In steps of the prices' last decimal. */
  price(upper: number, lower: number): number {
    return this.shellPrice[upper]! + this.shellPrice[lower]!;
  }

  /** How far an allowed fit is off the aim. */
  distance(site: number, { rod, upper, lower }: Choice): number {
    return this.offOf(this.spaceAt(site, rod)!, this.shapeAt(upper, lower));
  }

  /** All aims of a single fit as one whole number (fit-weights.ts); infinite where the fit is not allowed. */
  cost(site: number, rod: number, upper: number, lower: number): number {
    const space = this.placeOfSpace(site, rod);
    const shape = this.shapeAt(upper, lower);
    const { rules, stock } = this.problem;
    if (space < 0 || shape < 0 || !rules.allows(space, shape)) return Number.POSITIVE_INFINITY;
    const { price, distance, distanceStep, kept, stayed, inRange } = this.weights;
    let own = kept !== 0 && this.isKept(site, rod, upper, lower) ? kept : 0;
    if (stayed !== 0 && this.stays(site, rod)) own += stayed;
    if (stock.allowWorn && inRange !== 0 && rules.isInRange(space, shape)) own += inRange;
    return (this.offOf(space, shape) / distanceStep) * distance + this.price(upper, lower) * price - own;
  }

  /**
   * Visits the pairs for a journal in a rod: the cheapest price first, of one price the nearest to the aim first.
   * @param visit takes a pair, and a lower bound of what it and all later ones of its price cost; true skips these
   */
  visitPairs(site: number, rod: number, visit: (pair: PairOfKind, least: number) => boolean): void {
    const space = this.spaceAt(site, rod);
    if (space === undefined) return;
    const { price, distance, distanceStep, kept, stayed, inRange } = this.weights;
    const scale = this.hasAim[space] === 0 ? 0 : distance;
    const most = kept + inRange + (this.stays(site, rod) ? stayed : 0);
    for (const group of this.groups.get(this.sites[site]!.kind) ?? []) {
      const { sizes, pairs } = group;
      const wished = this.offAim[space]!;
      let up = firstAtLeast(sizes, wished);
      let down = up - 1;
      const off = (at: number) =>
        at < 0 || at >= sizes.length ? Number.POSITIVE_INFINITY : Math.abs(sizes[at]! - wished);
      while (up < sizes.length || down >= 0) {
        const at = off(up) <= off(down) ? up++ : down--;
        if (visit(pairs[at]!, group.price * price + (off(at) / distanceStep) * scale - most)) break;
      }
    }
  }

  engineTypeOf(site: number): string {
    return this.sites[site]!.journal.engineType;
  }

  /** The rods that some of the journals can take. */
  rodsOf(sites: readonly number[]): Set<number> {
    const rods = new Set<number>();
    for (const list of new Set(sites.map((site) => this.sites[site]!.rods)))
      for (const rod of list) rods.add(rod);
    return rods;
  }

  /** For each rank of mass the last one that may share a crank with it. */
  reachOf(site: number): Int32Array {
    return this.lastRank.get(this.engineTypeOf(site))!;
  }

  /** The lightest rank of mass that may share a crank with another. */
  lightestReaching(site: number, rank: number): number {
    const reach = this.reachOf(site);
    let first = rank;
    while (first > 0 && reach[first - 1]! >= rank) first--;
    return first;
  }

  /** Whether the journal's rod counts for the mass spread. */
  weighs(site: number): boolean {
    const { journal } = this.sites[site]!;
    return journal.fit === BIG_END && !journal.caseBore && this.lastRank.has(journal.engineType);
  }
}
