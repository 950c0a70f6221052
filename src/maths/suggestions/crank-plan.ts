/** What would complete each crank that is left over, place by place. */
import type { FitKind, MatchedFit, Stock, StockEngine, StockJournal } from '../matching/stock.js';
import { massRange } from './mass-range.js';
import { cheapestPlan } from './place-plan.js';
import { compareCosts, type KindParts, type PlacePlan } from './plan.js';
import { Parts } from './pool.js';
import { type Regrind, regrindPlan, type Undersize } from './regrind.js';
import { SingleFitRules, sameKind } from './rules.js';

/** What a suggestion needs beyond the stock. */
export interface SuggestionFacts {
  /** Undefined for a kind without limits. */
  readonly partsOf: (kind: FitKind) => KindParts | undefined;
  /** The steps of a kind, in any order. */
  readonly undersizesOf: (kind: FitKind) => readonly Undersize[];
  /** The smallest reading of a journal that can be ground; undefined for one that cannot, or is not measured. */
  readonly groundFrom: (journal: StockJournal) => number | undefined;
}

export interface CrankPlan {
  readonly engine: StockEngine;
  readonly places: readonly PlacePlan[];
  readonly regrinds: readonly Regrind[];
  /** Empty journals that nothing here fills. */
  readonly open: readonly StockJournal[];
  /** The costs of the places added up, the count of regrinds after the walls that are not listed. */
  readonly cost: readonly number[];
}

export interface Matched {
  readonly fits: readonly MatchedFit[];
  readonly completeEngines: readonly string[];
}

/**
 * One plan for each engine that is not complete, in the order of the stock. Each plan is for that engine alone: two
 * plans may use the same part.
 */
export function crankPlans(stock: Stock, matched: Matched, facts: SuggestionFacts): CrankPlan[] {
  const complete = new Set(matched.completeEngines);
  const planner = new CrankPlanner(stock, matched, facts);
  return stock.engines.filter(({ name }) => !complete.has(name)).map((engine) => planner.plan(engine));
}

class CrankPlanner {
  private readonly rules: SingleFitRules;
  private readonly parts: Parts;
  private readonly fits: ReadonlyMap<StockJournal, MatchedFit>;
  private readonly massOf: ReadonlyMap<string, number | undefined>;

  constructor(
    stock: Stock,
    matched: Matched,
    private readonly facts: SuggestionFacts,
  ) {
    this.rules = new SingleFitRules(stock);
    this.parts = new Parts(stock, matched.fits, matched.completeEngines);
    this.fits = new Map(matched.fits.map((fit) => [fit.journal, fit]));
    this.massOf = new Map(
      stock.rods.map(({ engineType, name, mass }) => [`${engineType}\u0000${name}`, mass]),
    );
  }

  plan(engine: StockEngine): CrankPlan {
    const places: PlacePlan[] = [];
    const regrinds: Regrind[] = [];
    const open: StockJournal[] = [];
    let used: ReadonlyMap<object, number> = new Map();
    for (const kind of kindsOf(engine)) {
      const own = engine.journals.filter((journal) => sameKind(journal, kind));
      const empty = own.filter((journal) => !this.fits.has(journal));
      if (empty.length === 0) continue;
      let { found, taken } = this.fill(engine, kind, empty, used, false);
      if (found.length < empty.length) {
        const regrind = this.regrind(engine, kind, own, used);
        if (regrind) {
          regrinds.push(regrind);
          continue;
        }
        ({ found, taken } = this.fill(engine, kind, empty, used, true));
      }
      used = taken;
      places.push(...found);
      open.push(...empty.filter((journal) => !found.some((plan) => plan.journal === journal)));
    }
    const sum = (at: number) => places.reduce((total, { cost }) => total + cost[at]!, 0);
    const [unlisted, rods, walls, price, taken] = [0, 1, 2, 3, 4].map(sum);
    const ground = regrinds.reduce((total, regrind) => total + regrind.price, 0);
    const cost = [unlisted!, regrinds.length, rods!, walls!, price! + ground, taken!];
    return { engine, places, regrinds, open, cost };
  }

  private fill(
    engine: StockEngine,
    kind: FitKind,
    empty: readonly StockJournal[],
    before: ReadonlyMap<object, number>,
    unlisted: boolean,
  ): { found: PlacePlan[]; taken: ReadonlyMap<object, number> } {
    const used = new Map(before);
    const found: PlacePlan[] = [];
    const parts = this.facts.partsOf(kind);
    if (!parts) return { found, taken: used };
    // A crank that cannot be completed takes nothing from others.
    const completable = engine.journals.every((journal) => this.fits.has(journal) || journal.part);
    const pools = [false, ...(completable ? [true] : [])].map((fromOthers) =>
      this.parts.poolFor(kind, fromOthers),
    );
    const masses = this.masses(engine, kind);
    for (const journal of empty) {
      const mass = massRange(masses, parts.limits.massSpread);
      const plans = pools.flatMap(
        (pool) =>
          cheapestPlan(this.rules, parts, journal, { engine: engine.name, pool, used, mass }, unlisted) ?? [],
      );
      plans.sort((a, b) => compareCosts(a.cost, b.cost));
      const [plan] = plans;
      if (!plan) continue;
      found.push(plan);
      for (const entry of [plan.rod, plan.upper, plan.lower]) {
        if (entry) used.set(entry, (used.get(entry) ?? 0) + 1);
      }
      if (plan.rod?.row.mass !== undefined) masses.push(plan.rod.row.mass);
    }
    return { found, taken: used };
  }

  /** Of the rods that the crank has, where their masses must agree. */
  private masses({ journals }: StockEngine, kind: FitKind): number[] {
    return journals.flatMap((journal) => {
      const fit = this.fits.get(journal);
      if (!fit || journal.caseBore || !sameKind(journal, kind)) return [];
      return this.massOf.get(`${journal.engineType}\u0000${fit.bore.name}`) ?? [];
    });
  }

  private regrind(
    engine: StockEngine,
    kind: FitKind,
    journals: readonly StockJournal[],
    used: ReadonlyMap<object, number>,
  ): Regrind | undefined {
    const parts = this.facts.partsOf(kind);
    if (!parts) return undefined;
    return regrindPlan(this.rules, parts, this.facts.undersizesOf(kind), {
      journals: journals.map((journal) => ({
        journal,
        groundFrom: this.facts.groundFrom(journal),
        fit: this.fits.get(journal),
      })),
      engine: engine.name,
      pool: this.parts.poolFor(kind, true),
      used,
      masses: this.masses(engine, kind),
    });
  }
}

function kindsOf({ journals }: StockEngine): FitKind[] {
  return journals.filter(
    (journal, place) => journals.findIndex((other) => sameKind(other, journal)) === place,
  );
}
