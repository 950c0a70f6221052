/**
 * The search of a stock: many small proofs instead of one large, wherever its parts have nothing to share.
 *
 * Engine types never share a part. Mains and big ends of one type meet only in the question which engines are
 * worth completing: where every journal that can be filled at all is filled, nothing is left to trade between them,
 * and each kind is solved by itself.
 */
import { mmOfGrain } from '../grain.js';
import { type Aim, aimsOf, greatestCommonDivisor, pricesOf } from './aims.js';
import { FitTable } from './fit-table.js';
import type { StockOnGrid } from './grid.js';
import { type Found, independentKinds, onlyKinds, type Proof, sumOfProofs } from './independent.js';
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
import type { MatchedFit, Stock } from './stock.js';
import { WorkingSets } from './working-sets.js';

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

/** The different ones of a property of the journals, in words. */
const inWords = ({ engines }: Stock, property: 'engineType' | 'fit') =>
  [...new Set(engines.flatMap(({ journals }) => journals.map((journal) => journal[property])))].join(', ');

/** Stocks that have nothing to share, one after the other, the time shared out among them. */
function finishAll(
  all: readonly Started[],
  remaining: () => number,
  onProgress: Progress,
  toldApartBy: 'engineType' | 'fit',
  finishOne: (started: Started, remaining: () => number, onProgress: Progress) => Found,
): Found[] {
  // The easy ones first: what they leave of their share of the time goes to the others.
  const inTurn = [...all].sort((a, b) => a.problem.gaps.length - b.problem.gaps.length);
  return inTurn.map((started, place) => {
    const others = inTurn.length - 1 - place;
    const rest = (remaining() * others) / (others + 1);
    const label = all.length > 1 ? `${inWords(started.stock.inner, toldApartBy)}: ` : '';
    return finishOne(
      started,
      () => remaining() - rest,
      (message) => onProgress(label + message),
    );
  });
}

/** The sets of an engine's kinds by themselves: every journal that can be filled is, so what is complete is settled. */
function finishByKind(
  { stock }: Started,
  keys: readonly string[],
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
  largeFrom: number,
): Found {
  const kinds = keys.map((key) => start(onlyKinds(stock, new Set([key])), remaining, largeFrom));
  const found = finishAll(kinds, remaining, onProgress, 'fit', (kind, left, tell) =>
    finish(kind, solver, left, tell),
  );
  const fits = found.flatMap((each) => each.fits);
  const complete = completeEngines(stock.inner, fits);
  const beyond = fits.filter(({ engine }) => !complete.includes(engine)).length;
  const met: Proof[] = [
    { aim: 'complete engines', bound: complete.length },
    { aim: 'filled journals beyond them', bound: beyond },
  ];
  return {
    fits,
    proofs: [
      ...met,
      ...sumOfProofs(stock.inner, found).filter(({ aim }) => met.every((each) => each.aim !== aim)),
    ],
  };
}

/** The sets of a stock whose engines may have something to share. */
function settle(
  started: Started,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
  largeFrom: number,
): Found {
  const keys = [...new Set(started.problem.journals.map(kindKey))].sort(compareText);
  const full = () => fillsAll(started);
  if (keys.length > 1 && !full()) {
    improveByKicks(started.sets, { idle: FIRST_KICKS, remaining, done: full });
  }
  if (keys.length > 1 && full()) return finishByKind(started, keys, solver, remaining, onProgress, largeFrom);
  return finish(started, solver, remaining, onProgress);
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
  const parts = independentKinds(stock.inner).map((kinds) => onlyKinds(stock, kinds));
  const all = (parts.length > 1 ? parts : [stock]).map((part) => start(part, remaining, largeFrom));
  const found = finishAll(all, remaining, onProgress, 'engineType', (started, left, tell) =>
    settle(started, solver, left, tell, largeFrom),
  );
  const fits = new Map(found.flatMap((each) => each.fits.map((fit) => [fit.journal, fit])));
  const journals = stock.inner.engines.flatMap((engine) => engine.journals);
  return {
    fits: journals.flatMap((journal) => fits.get(journal) ?? []),
    proofs: sumOfProofs(stock.inner, found),
  };
}
