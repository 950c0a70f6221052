/**
 * Lexicographic optimisation: reach the best value of one aim, hold it as a row, go on with the next.
 *
 * Each aim begins with a linear bound. Where the sets at hand reach it, it is proved. Else whole-number programs over
 * the likeliest fits follow, and at last one over all columns that better sets could use: its bound is a proof.
 */
import type { Aim } from './aims.js';
import { forcedBy } from './forced-fits.js';
import { improve, likelyColumns } from './improve.js';
import { improveByKicks, improveByReunions } from './kicks.js';
import { knownBound, plainBound } from './known-bounds.js';
import { type LinearBound, linearBound, roundedUp, SLACK } from './linear-bound.js';
import type { Column, Model } from './model-columns.js';
import { UNLIMITED } from './model-rows.js';
import { type Filter, filterOf } from './pricing.js';
import { ColumnPool } from './quads.js';
import type { Solver } from './solver.js';
import { amountOf, type Reached, reachedOf, reducedCost, type Stage, stageOf } from './stage.js';
import { type Taken, Translator } from './taken.js';
import type { WorkingSets } from './working-sets.js';

/** Share of the time left that is reserved for the aims after the one at hand. */
export const LATER_SHARE = 0.2;
/** Most kicks without gain, one after the other: before a bound is known, and with a gap to close. */
export const FIRST_KICKS = 10;
export const MORE_KICKS = 400;
/** Share of the time that the first kicks may take, where the plain search leaves journals empty. */
export const FIRST_SHARE = 0.02;
/**
 * Most kicks in all before the programs. Programs are far better at filling journals, and somewhat at keeping pairs
 * together.
 */
const KICKS_OF: Partial<Record<Aim['amount'], number>> = { distance: 1_000, price: 1_000, kept: 200 };
/** The first whole-number programs: most nodes, and how many of the likeliest spaces they are of. */
const FIRST_NODES = 50;
const LIKELIEST_SPACES = [300, 2_000];

function valueOfTaken(aim: Aim, sets: readonly Taken[]): number {
  let value = 0;
  for (const { column, times } of sets) value += times * amountOf(aim, column);
  return value === 0 ? 0 : value;
}

export interface Search {
  readonly solver: Solver;
  readonly model: Model;
  readonly sets: WorkingSets;
  readonly remaining: () => number;
}

interface Open {
  readonly pool: ColumnPool;
  readonly aim: Aim;
  readonly stage: Stage;
  readonly linear: LinearBound;
  readonly columns: readonly Column[];
}

/**
 * The stage without the rows of mass lines: those of single cranks suffice for sets, the lines only improve a bound.
 */
function withoutLines({ places }: Model, stage: Stage): Stage {
  const rows = [...stage.rows];
  for (const row of places.massLines.rows) rows[row] = { lower: -UNLIMITED, upper: UNLIMITED };
  return { ...stage, rows };
}

/** What is proven of one aim, and whether a time limit ended its search. */
interface Closed {
  readonly bound: number;
  readonly isCut: boolean;
}

/**
 * Improves the sets for one aim until they reach its bound or the time is up.
 * @param known a bound that is proven already
 */
function close(
  { solver, model, sets, remaining }: Search,
  translator: Translator,
  { aim, stage, linear, columns, pool }: Open,
  known: number,
): Closed {
  let bound = Math.max(known, Math.ceil(linear.bound));
  let { isCut } = linear;
  const value = () => valueOfTaken(aim, translator.toTaken(sets));
  const isOpen = () => remaining() > 0 && value() > bound;
  const kick = (idle: number, most: number) =>
    improveByKicks(sets, { idle, most, remaining, done: () => value() <= bound });
  if (isOpen() && linear.likely.length > 0) {
    improveByReunions(sets, translator.reunions(linear.likely), remaining);
  }
  const most = KICKS_OF[aim.amount] ?? 0;
  if (isOpen() && most > 0) kick(MORE_KICKS, most);
  const programs = [
    ...LIKELIEST_SPACES.map((spaces) => ({ nodes: FIRST_NODES, spaces })),
    { nodes: undefined, spaces: Number.POSITIVE_INFINITY },
  ];
  for (const { nodes, spaces } of programs) {
    if (!isOpen()) break;
    const taken = translator.toTaken(sets);
    const reached = valueOfTaken(aim, taken);
    const better = reached - 1 - linear.bound + SLACK;
    const useful = likelyColumns({ model, stage, columns, sets: taken, linear, pool }, better, spaces);
    const limits = { seconds: remaining(), ...(nodes !== undefined && { nodes }) };
    const program = nodes === undefined ? stage : withoutLines(model, stage);
    const kept = ({ meaning }: Column) => program === stage || meaning.is !== 'run';
    const found = improve(
      solver,
      { model, stage: program },
      { others: useful.others.filter(kept), fits: useful.fits },
      taken.filter(({ column }) => kept(column)),
      bound,
      limits,
    );
    if (found.isCut) isCut = true;
    if (found.sets && valueOfTaken(aim, found.sets) < reached) {
      translator.fromTaken(found.sets, sets);
      kick(FIRST_KICKS, FIRST_KICKS);
    }
    if (useful.complete) bound = Math.min(value(), Math.max(bound, roundedUp(found.bound)));
  }
  return { bound, isCut };
}

/** Reduced-cost fixing: the columns that sets reaching the aim could use, and the filter of such fits. */
export function narrow(
  model: Model,
  stage: Stage,
  { bound, duals }: LinearBound,
  columns: readonly Column[],
  reached: number,
): { columns: Column[]; filter: Filter } {
  const most = reached - bound + SLACK;
  return {
    columns: columns.filter((column) => reducedCost(stage, column, duals) <= most),
    filter: filterOf(model, duals, stage.fitWeights(duals), most),
  };
}

/**
 * Pursues the aims in order, beginning with the sets at hand; yields what each reached.
 * @param known what another search has proven of the first aims (known-bounds.ts)
 */
export function* pursue(
  search: Search,
  aims: readonly Aim[],
  known: readonly Reached[] = [],
): Generator<Reached, void> {
  const { solver, model, sets, remaining } = search;
  const translator = new Translator(model, sets.table);
  const pool = new ColumnPool();
  let columns = model.columns;
  const filters: Filter[] = [];
  const stages: Reached[] = [];
  const value = (aim: Aim) => valueOfTaken(aim, translator.toTaken(sets));
  improveByKicks(sets, {
    idle: FIRST_KICKS,
    remaining,
    done: ({ complete }) => {
      const taken = translator.toTaken(sets);
      return aims.every((aim) => valueOfTaken(aim, taken) <= plainBound(model, aim, complete, []));
    },
  });
  for (const [place, aim] of aims.entries()) {
    const stage = stageOf(model, aim, stages, filters);
    const plain = plainBound(model, aim, sets.value().complete, stages);
    let bound = Math.max(plain, knownBound(aim, known, stages) ?? plain);
    // Later aims need some of the time.
    const rest = place === aims.length - 1 ? 0 : remaining() * LATER_SHARE;
    const left = () => remaining() - rest;
    let isCut = false;
    if (value(aim) > bound && left() > 0) {
      for (const quad of translator.quadsOf(sets)) pool.add(quad);
      const linear = linearBound({
        solver,
        model,
        stage,
        columns,
        pool,
        reached: value(aim),
        remaining: left,
      });
      if (linear) {
        const open = { aim, stage, linear, columns, pool };
        ({ bound, isCut } = close({ ...search, remaining: left }, translator, open, bound));
        const narrowed = narrow(model, stage, linear, columns, value(aim));
        columns = narrowed.columns;
        filters.push(narrowed.filter);
      } else isCut = true;
    }
    const reached = reachedOf(aim, value(aim), bound, isCut || left() <= 0);
    stages.push(reached);
    const forced = forcedBy(model, aim, reached.reached);
    if (forced) {
      columns = columns.filter(forced.isOpen);
      filters.push(forced.filter);
    }
    yield reached;
  }
}
