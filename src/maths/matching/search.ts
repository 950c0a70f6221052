/**
 * The search of a stock: as a whole, or kind by kind where the kinds have nothing to share.
 *
 * Mains and big ends meet only in the question which engines are worth completing. Where every journal
 * that can be filled at all is filled, nothing is left to trade between them, and each kind is
 * solved by itself: many small proofs instead of one large.
 */
import { mmOfGrain } from '../grain.js';
import { type Aim, type AimName, aimsOf, greatestCommonDivisor, pricesOf } from './aims.js';
import { FitTable } from './fit-table.js';
import type { StockOnGrid } from './grid.js';
import { improveByKicks } from './kicks.js';
import { pursueLarge } from './large.js';
import { modelOf } from './model-columns.js';
import { completeEngines, namedFits } from './named-fits.js';
import { compareText } from './order.js';
import { kindKey } from './part-classes.js';
import { plainSearch } from './plain-search.js';
import { distanceStep, type Problem, problemOf } from './problem.js';
import { putFits } from './put-fits.js';
import type { Solver } from './solver.js';
import { FIRST_KICKS, pursue, type Reached } from './stages.js';
import type { FitKind, MatchedFit, Stock, StockJournal } from './stock.js';
import { WorkingSets } from './working-sets.js';

/** The proven best of one aim, in the units of the result. */
export interface Proof {
  readonly aim: AimName;
  readonly bound: number;
}

export interface Found {
  readonly fits: readonly MatchedFit[];
  readonly proofs: readonly Proof[];
}

interface Started {
  readonly stock: StockOnGrid;
  readonly problem: Problem;
  readonly sets: WorkingSets;
  readonly large: boolean;
}

type Progress = (message: string) => void;

/** From here on journals of different engines are one class, and only the linear bound proves. */
const LARGE_JOURNALS = 250;

function journalCount(stock: Stock): number {
  return stock.engines.reduce((sum, { journals }) => sum + journals.length, 0);
}

/** Up to so many cranks a stock below the general limit is never large: its proofs are worth their time. */
const PROVED_CRANKS = 10;

/** Of stocks with a mass spread, whose whole-number programs would have a window for every crank. */
const LARGE_WEIGHED = 80;

/** The problem of a stock with the sets of the plain search. */
function start(stock: StockOnGrid, remaining: () => number, largeFrom: number): Started {
  const { kinds, engines } = stock.inner;
  const weighed = engines.length > PROVED_CRANKS && kinds.some(({ massSpread }) => massSpread !== undefined);
  const from = weighed ? Math.min(largeFrom, LARGE_WEIGHED) : largeFrom;
  const large = stock.grid > 1 || journalCount(stock.inner) >= from;
  const problem = problemOf(stock.inner, { merge: large });
  const sets = new WorkingSets(new FitTable(problem));
  plainSearch(sets, remaining);
  return { stock, problem, sets, large };
}

const isProved = ({ reached, bound }: Reached) => reached === bound;

/** An aim's steps in the units of the result: minimised ones turned back; adding 0 makes no −0. */
function amountOf({ amount, sign, step }: Aim, steps: number, pricePerUnit: number): number {
  return (steps * sign * step) / (amount === 'price' ? pricePerUnit : 1) + 0;
}

/** Whether a large stock is worth a second search with every crank by itself: all that the masses of its rods allow. */
function isWorthAll({ grid, inner }: StockOnGrid): boolean {
  const journals = journalCount(inner);
  const weighed = inner.kinds.some(({ massSpread }) => massSpread !== undefined);
  return weighed && grid === 1 && journals >= LARGE_WEIGHED && journals < LARGE_JOURNALS;
}

/** The same sets, with the journals of different engines in classes of their own. */
function setsApart(stock: Stock, sets: WorkingSets): WorkingSets {
  const own = new WorkingSets(new FitTable(problemOf(stock, { merge: false })));
  putFits(own, new Set(stock.engines.map(({ name }) => name)), namedFits(sets), (row) => row);
  return own;
}

function finish(
  { stock, problem, sets, large }: Started,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
): { readonly fits: MatchedFit[]; readonly proofs: Proof[] } {
  const prices = pricesOf(stock.inner);
  const aims = aimsOf(stock.inner, {
    price: greatestCommonDivisor(prices.steps),
    distance: distanceStep(problem),
  });
  const show = ({ aim, reached, bound }: Reached) => {
    const amount = (steps: number) => amountOf(aim, steps, prices.perUnit);
    const shown = (steps: number) =>
      aim.amount === 'distance' ? `${mmOfGrain(amount(steps))} mm` : `${amount(steps)}`;
    onProgress(
      reached === bound
        ? `${aim.name}: ${shown(reached)}, proved`
        : `${aim.name}: found ${shown(reached)}, proven best ${shown(bound)}`,
    );
  };
  const run = (steps: Iterable<Reached>, isEnough: (each: Reached) => boolean = () => false) => {
    const stages: Reached[] = [];
    for (const each of steps) {
      show(each);
      stages.push(each);
      if (isEnough(each)) break;
    }
    return stages;
  };
  const crankByCrank = (own: WorkingSets, known: readonly Reached[] = []) =>
    run(pursue({ solver, model: modelOf(own.table.problem), sets: own, remaining }, aims, known));
  const twice = large && isWorthAll(stock);
  let found = sets;
  let stages = large
    ? run(pursueLarge({ solver, stock, sets, remaining }, aims), (each) => twice && !isProved(each))
    : crankByCrank(sets);
  if (twice && !stages.every(isProved)) {
    if (remaining() > 0) onProgress('not all is proved: once more, with every crank by itself');
    found = setsApart(stock.inner, sets);
    stages = crankByCrank(found, stages);
  }
  const proofs = stages.map(({ aim, bound }) => ({
    aim: aim.name,
    bound: amountOf(aim, bound, prices.perUnit),
  }));
  return { fits: namedFits(found), proofs };
}

/** Whether every journal that any fit could fill is filled. */
function fillsAll({ problem, sets }: Started): boolean {
  return sets.choices.every((choice) => choice !== undefined) && problem.sharedBores.size === 0;
}

/** The stock of one kind of fit alone. */
function ofKind(stock: Stock, key: string): Stock {
  const engines = stock.engines.map((engine) => ({
    ...engine,
    journals: engine.journals.filter((journal) => kindKey(journal) === key),
  }));
  const own = <Row extends FitKind>(rows: readonly Row[]) => rows.filter((row) => kindKey(row) === key);
  return {
    ...stock,
    kinds: own(stock.kinds),
    engines,
    shells: own(stock.shells),
    newShells: own(stock.newShells),
  };
}

/** Sum of the kinds' bounds; the first two aims are met in full. */
function joinProofs(stock: Stock, proofs: readonly Proof[], complete: number, filled: number): Proof[] {
  const sums = new Map<AimName, number>();
  for (const { aim, bound } of proofs) sums.set(aim, (sums.get(aim) ?? 0) + bound);
  sums.set('complete engines', complete);
  sums.set('filled journals beyond them', filled);
  const { perUnit } = pricesOf(stock);
  const price = sums.get('price of bought shells');
  // A sum of decimals: back to the step that the prices are typed in.
  if (price !== undefined) sums.set('price of bought shells', Math.round(price * perUnit) / perUnit);
  return aimsOf(stock, { price: 1, distance: 1 }).map(({ name }) => ({
    aim: name,
    bound: sums.get(name) ?? 0,
  }));
}

/** Kind by kind, the time shared out among them. */
function searchByKind(
  stock: StockOnGrid,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
  keys: readonly string[],
  largeFrom: number,
): Found {
  const journals = stock.inner.engines.flatMap((engine) => engine.journals);
  let rest = 0;
  const left = () => remaining() - rest;
  const kinds = keys.map((key) => {
    const own = { grid: stock.grid, inner: ofKind(stock.inner, key) };
    // Where both are one, they stay one.
    const outer = stock.outer === stock.inner ? own.inner : ofKind(stock.outer, key);
    return start({ ...own, outer }, left, largeFrom);
  });
  // The easy ones first: what they leave of their share of the time goes to the others.
  kinds.sort((a, b) => a.problem.gaps.length - b.problem.gaps.length);
  const proofs: Proof[] = [];
  const filled = new Map<StockJournal, MatchedFit>();
  for (const [place, started] of kinds.entries()) {
    // The kinds still to come get their share of the time.
    rest = (remaining() * (kinds.length - 1 - place)) / (kinds.length - place);
    const found = finish(started, solver, left, onProgress);
    proofs.push(...found.proofs);
    for (const fit of found.fits) filled.set(fit.journal, fit);
  }
  const fits = journals.flatMap((journal) => filled.get(journal) ?? []);
  const complete = completeEngines(stock.inner, fits);
  const beyond = fits.filter(({ engine }) => !complete.includes(engine)).length;
  return { fits, proofs: joinProofs(stock.inner, proofs, complete.length, beyond) };
}

/**
 * The best sets and what is proven of them.
 * @param largeFrom so many journals make a stock large
 */
export function search(
  stock: StockOnGrid,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
  largeFrom = LARGE_JOURNALS,
): Found {
  const started = start(stock, remaining, largeFrom);
  const keys = [...new Set(started.problem.journals.map(kindKey))].sort(compareText);
  const full = () => fillsAll(started);
  if (keys.length > 1 && !full()) {
    improveByKicks(started.sets, { idle: FIRST_KICKS, remaining, done: full });
  }
  if (keys.length > 1 && full()) {
    return searchByKind(stock, solver, remaining, onProgress, keys, largeFrom);
  }
  return finish(started, solver, remaining, onProgress);
}
