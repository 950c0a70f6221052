/**
 * The search of a stock: as a whole, or kind by kind where the kinds have nothing to share.
 *
 * Mains and big ends meet only in the question which engines are worth completing. Where every journal
 * that can be filled at all is filled, nothing is left to trade between them, and each kind is
 * solved by itself: many small proofs instead of one large.
 */
import { type Aim, type AimName, aimsOf, greatestCommonDivisor, pricesOf } from './aims.js';
import { firstFits } from './first-fits.js';
import { type Model, modelOf } from './model-columns.js';
import { completableEngines } from './model-rows.js';
import { completeEngines, namedFits } from './named-fits.js';
import { compareText } from './order.js';
import { kindKey } from './part-classes.js';
import { type Problem, problemOf } from './problem.js';
import type { Solver } from './solver.js';
import { type Pursuit, plainBound, pursue, type Reached } from './stages.js';
import type { FitKind, MatchedFit, Stock, StockJournal } from './stock.js';

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
  readonly problem: Problem;
  readonly model: Model;
  readonly steps: Generator<Reached, Pursuit>;
}

type Progress = (message: string) => void;

/** The greatest whole number of grains that every distance from the aim is a multiple of. */
function distanceStep({ gaps, shapes, limits }: Problem): number {
  const differences = [...limits].flatMap(([kind, { aim }]) => {
    if (aim === undefined) return [];
    const wished = gaps.filter((gap) => gap.limits === limits.get(kind)).map(({ size }) => size - aim);
    const made = shapes.filter((shape) => shape.kind === kind).map(({ size }) => size);
    if (wished.length === 0 || made.length === 0) return [];
    // Any distance is |one of these differences|, moved by differences within each list.
    const within = (values: readonly number[]) => values.map((value) => value - values[0]!);
    return [wished[0]! - made[0]!, ...within(wished), ...within(made)];
  });
  return greatestCommonDivisor(differences);
}

function start(stock: Stock, solver: Solver, remaining: () => number): Started {
  const problem = problemOf(stock);
  const model = modelOf(problem);
  const aims: Aim[] = aimsOf(stock, {
    price: greatestCommonDivisor(model.prices.steps),
    distance: distanceStep(problem),
  });
  return { problem, model, steps: pursue({ solver, model, remaining }, aims, firstFits(model)) };
}

/** Pursues the aims that are left. */
function finish({ steps }: Started, onProgress: Progress): Pursuit {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    const { aim, reached, bound } = step.value;
    onProgress(`${aim.name}: ${reached === bound ? 'proved' : 'best found in the time'}`);
  }
}

/** A bound in steps of the minimised aim as the result states it. Adding 0 makes no −0. */
function proofOf({ model }: Started, { aim, bound }: Reached): Proof {
  const perUnit = aim.amount === 'price' ? model.prices.perUnit : 1;
  return { aim: aim.name, bound: (bound * aim.sign * aim.step) / perUnit + 0 };
}

export function searchWhole(
  stock: Stock,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
): Found {
  const started = start(stock, solver, remaining);
  const { sets, stages } = finish(started, onProgress);
  return {
    fits: namedFits(started.problem, sets),
    proofs: stages.map((stage) => proofOf(started, stage)),
  };
}

/** Whether the first two aims filled every journal that any fit could fill. */
function fillsAll({ model, steps }: Started): boolean {
  const [complete, beyond] = [steps.next().value as Reached, steps.next().value as Reached];
  if (complete.reached > plainBound(model, complete.aim)) return false;
  const { engines } = model.problem.stock;
  const completed = [...completableEngines(model.problem)];
  const filled = completed.reduce((sum, engine) => sum + engines[engine]!.journals.length, -beyond.reached);
  return filled === -plainBound(model, beyond.aim);
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

/** @returns undefined where some journal stays empty, or there is but one kind */
export function searchByKind(
  stock: Stock,
  solver: Solver,
  remaining: () => number,
  onProgress: Progress,
): Found | undefined {
  const journals = stock.engines.flatMap((engine) => engine.journals);
  const keys = [...new Set(journals.map(kindKey))].sort(compareText);
  if (keys.length < 2) return undefined;
  let rest = 0;
  const left = () => remaining() - rest;
  const kinds = keys.map((key) => start(ofKind(stock, key), solver, left));
  // The easy ones first: what they leave of their share of the time goes to the others.
  kinds.sort((a, b) => a.problem.gaps.length - b.problem.gaps.length);
  // A kind that cannot be filled is found out in a part of the time, so that the search as a whole keeps the rest.
  for (const kind of kinds) {
    rest = 0.7 * remaining();
    if (!fillsAll(kind)) return undefined;
  }
  const proofs: Proof[] = [];
  const filled = new Map<StockJournal, MatchedFit>();
  for (const [place, started] of kinds.entries()) {
    // The kinds still to come get their share of the time.
    rest = (remaining() * (kinds.length - 1 - place)) / (kinds.length - place);
    const { sets, stages } = finish(started, onProgress);
    proofs.push(...stages.map((stage) => proofOf(started, stage)));
    for (const fit of namedFits(started.problem, sets)) filled.set(fit.journal, fit);
  }
  const fits = journals.flatMap((journal) => filled.get(journal) ?? []);
  const complete = completeEngines(stock, fits);
  const beyond = fits.filter(({ engine }) => !complete.includes(engine)).length;
  return { fits, proofs: joinProofs(stock, proofs, complete.length, beyond) };
}
