/**
 * The aims of a large stock.
 *
 * Its sets come from the same search as those of a small one. Its bounds come from a linear program
 * in which journals of equal values are one class whatever their engine, so that it grows with the
 * kinds of parts and not with their number; the mass of rods is left out of it, which can only make
 * the bound better than what is possible, never worse. No whole-number program is tried.
 */
import { type Aim, greatestCommonDivisor } from './aims.js';
import { type FitTable, NO_ROD, type Reunion } from './fit-table.js';
import type { StockOnGrid } from './grid.js';
import { improveByKicks, improveByReunions } from './kicks.js';
import { linearBound } from './linear-bound.js';
import { type Column, type Model, modelOf } from './model-columns.js';
import type { ShellClass } from './part-classes.js';
import { distanceStep, type Problem, problemOf } from './problem.js';
import { isPair, type PairColumn, Pool, type Quad, quadOf } from './quads.js';
import type { Solver } from './solver.js';
import { FIRST_KICKS, LATER_SHARE, MORE_KICKS, plainBound, type Reached, stageOf } from './stages.js';
import type { Stock } from './stock.js';
import type { WorkingSets } from './working-sets.js';

/** The stock as if the masses of its rods played no part. */
function withoutMasses(stock: Stock): Stock {
  const weighed = new Set(
    stock.kinds.filter(({ massSpread }) => massSpread !== undefined).map(({ engineType }) => engineType),
  );
  return {
    ...stock,
    kinds: stock.kinds.map((kind) => ({ ...kind, massSpread: undefined })),
    rods: stock.rods.filter(({ engineType, mass }) => mass !== undefined || !weighed.has(engineType)),
  };
}

/** The rows of the outer copy by those of the inner. */
function twinsOf({ inner, outer }: StockOnGrid): ReadonlyMap<object, object> {
  const rows = ({ engines, rods, shells, newShells }: Stock) => [
    ...engines.flatMap(({ journals }) => journals),
    ...rods,
    ...shells,
    ...newShells,
  ];
  const others = rows(outer);
  return new Map(rows(inner).map((row, place) => [row, others[place]!]));
}

/** From the classes of the search to those of the bound, which has fewer. */
class Bridge {
  private readonly journal = new Map<object, number>();
  private readonly rod = new Map<object, number>();
  private readonly shell = new Map<object, number>();
  private readonly gap = new Map<string, number>();
  private readonly pair = new Map<string, PairColumn>();

  constructor(
    private readonly model: Model,
    private readonly table: FitTable,
    private readonly twins: ReadonlyMap<object, object>,
  ) {
    const { journals, rods, shells, gaps } = model.problem;
    for (const [place, each] of shells.entries()) {
      for (const own of [...each.shells, ...(each.bought ? [each.bought] : [])]) this.shell.set(own, place);
    }
    for (const [place, each] of journals.entries())
      for (const own of each.journals) this.journal.set(own, place);
    for (const [place, each] of rods.entries()) for (const own of each.rods) this.rod.set(own, place);
    for (const [place, { journal, rod }] of gaps.entries()) this.gap.set(`${journal},${rod}`, place);
    for (const column of model.columns) {
      if (!isPair(column)) continue;
      const { upper, lower } = column.meaning;
      this.pair.set(`${upper},${lower}`, column);
      if (!this.pair.has(`${lower},${upper}`)) this.pair.set(`${lower},${upper}`, column);
    }
  }

  private shellOf({ shells, bought }: ShellClass): number {
    return this.shell.get(bought ? this.twins.get(bought)! : this.twins.get(shells[0]!)!)!;
  }

  /** The filled journals as columns of the linear program. */
  quadsOf({ choices }: WorkingSets): Quad[] {
    const { sites, problem } = this.table;
    return choices.flatMap((choice, site) => {
      if (!choice) return [];
      const rod =
        choice.rod === NO_ROD ? undefined : this.rod.get(this.twins.get(problem.rods[choice.rod]!.rods[0]!)!);
      const gap = this.gap.get(`${this.journal.get(this.twins.get(sites[site]!.journal)!)},${rod}`)!;
      const [upper, lower] = [choice.upper, choice.lower].map((shell) =>
        this.shellOf(problem.shells[shell]!),
      );
      return [quadOf(this.model, gap, this.pair.get(`${upper},${lower}`)!)];
    });
  }

  /** The fits of parts that ran together behind columns of the bound. */
  reunions(columns: readonly Column[]): Reunion[] {
    const key = (problem: Problem, kept: number) => {
      const { journal, rod, upper, lower } = problem.kept[kept]!;
      return [journal, rod, upper, lower].map((row) => row && (this.twins.get(row) ?? row)) as [
        object,
        ...unknown[],
      ];
    };
    const wanted = new Map<object, (readonly unknown[])[]>();
    for (const { meaning } of columns) {
      if (meaning.is !== 'kept') continue;
      const parts = key(this.model.problem, meaning.kept);
      wanted.set(parts[0], [...(wanted.get(parts[0]) ?? []), parts]);
    }
    return this.table.together.filter(({ kept }) => {
      const parts = key(this.table.problem, kept);
      return wanted.get(parts[0])?.some((each) => each.every((part, place) => part === parts[place]));
    });
  }
}

/** What the sets amount to for an aim, in its steps, minimised. */
function countOf({ amount, sign, step }: Aim, sets: WorkingSets): number {
  const { table, choices } = sets;
  const { complete, beyond } = sets.value();
  if (amount === 'completeEngines') return 0 - complete;
  if (amount === 'filledBeyond') return 0 - beyond;
  const sum = choices.reduce((total, choice, site) => {
    if (!choice) return total;
    if (amount === 'price') return total + table.price(choice.upper, choice.lower);
    if (amount === 'distance') return total + table.distance(site, choice);
    return total + Number(table.isKept(site, choice.rod, choice.upper, choice.lower));
  }, 0);
  return (sign * sum) / step + 0;
}

export interface LargeSearch {
  readonly solver: Solver;
  readonly stock: StockOnGrid;
  readonly sets: WorkingSets;
  readonly remaining: () => number;
}

/** Pursues the aims in order, beginning with the sets at hand; pauses after each. */
export function* pursueLarge(search: LargeSearch, given: readonly Aim[]): Generator<Reached, void> {
  const { solver, stock, sets, remaining } = search;
  const model = modelOf(problemOf(withoutMasses(stock.outer), { merge: true }));
  const step = distanceStep(model.problem);
  // The bound has fits that the search has not: its distances may need a smaller step.
  const aims = given.map((aim) =>
    aim.amount === 'distance' ? { ...aim, step: greatestCommonDivisor([aim.step, step]) } : aim,
  );
  const bridge = new Bridge(model, sets.table, twinsOf(stock));
  const pool = new Pool();
  const stages: Reached[] = [];
  const plain = (aim: Aim) => plainBound(model, aim, sets.value().complete);
  const improve = (idle: number, left: () => number, isDone: () => boolean) =>
    improveByKicks(sets, { idle, remaining: left, done: isDone });
  const allDone = () => aims.every((aim) => countOf(aim, sets) <= plain(aim));
  improve(FIRST_KICKS, () => remaining() * (1 - LATER_SHARE), allDone);
  for (const [place, aim] of aims.entries()) {
    let bound = plain(aim);
    const rest = place === aims.length - 1 ? 0 : remaining() * LATER_SHARE;
    const left = () => remaining() - rest;
    const isOpen = () => countOf(aim, sets) > bound && left() > 0;
    if (isOpen()) {
      for (const quad of bridge.quadsOf(sets)) pool.add(quad);
      const stage = stageOf(model, aim, stages, []);
      const linear = linearBound(solver, model, stage, model.columns, pool, countOf(aim, sets), left);
      if (linear) bound = Math.max(bound, Math.ceil(linear.bound));
      if (linear && isOpen()) improveByReunions(sets, bridge.reunions(linear.likely), left);
      if (isOpen()) improve(MORE_KICKS, left, () => !isOpen());
    }
    const reached = countOf(aim, sets);
    stages.push({ aim, reached, bound });
    yield { aim, reached, bound };
  }
}
