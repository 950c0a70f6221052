/**
 * Decomposition by kind of fit: the kinds of one engine type are searched apart where nothing is lost by it.
 *
 * Mains and big ends share no part. They are linked only by the choice of engines to complete. A kind is independent of
 * that choice where every journal of it that can be filled is filled.
 */
import type { AimName } from './aims.js';
import { onlyKindsOnGrid } from './grid.js';
import { type FoundSets, gapReasonOf, type Proof, proofOf, sumOfProofs } from './independent.js';
import { improveByKicks } from './kicks.js';
import { completeEngines, namedFits } from './named-fits.js';
import { compareText } from './order.js';
import { keyOfKind } from './part-classes.js';
import { FIRST_KICKS, FIRST_SHARE } from './stages.js';
import type { MatchedFit, StockEngine, StockJournal } from './stock.js';
import { type Started, start } from './whole-stock.js';

/**
 * On a grid some allowed fits are missing, so that a kind is known to be full only where each of its journals is
 * filled.
 */
function isFull({ stock, sets }: Started, kind: string): boolean {
  const own = [...sets.table.sites.keys()].filter((site) => sets.table.sites[site]!.kind === kind);
  if (!own.every((site) => sets.choices[site])) return false;
  return (
    stock.grid === 1 ||
    own.length === stock.inner.engines.reduce((sum, engine) => sum + count(engine, kind), 0)
  );
}

const count = ({ journals }: StockEngine, kind: string) =>
  journals.filter((journal) => keyOfKind(journal) === kind).length;

/**
 * The kinds that can be searched apart: the full ones. Where some kind is not full, only those full ones of which each
 * engine that can be completed has equally many journals: the choice of engines then makes no difference to them.
 */
function kindsAlone(started: Started, keys: readonly string[]): string[] {
  if (started.problem.sharedBores.size > 0) return [];
  const full = keys.filter((kind) => isFull(started, kind));
  const others = keys.filter((kind) => !full.includes(kind));
  if (others.length === 0) return full;
  const { engines } = started.stock.inner;
  const fillable = fillableOf(started);
  const canComplete = ({ journals, isHopeless }: StockEngine) =>
    !isHopeless && (started.stock.grid > 1 || journals.every((journal) => fillable.has(journal)));
  const worth = engines.filter(canComplete);
  return full.filter(
    (kind) =>
      new Set(worth.map((engine) => count(engine, kind))).size < 2 &&
      engines.every(
        (engine) => count(engine, kind) === 0 || others.some((other) => count(engine, other) > 0),
      ),
  );
}

function fillableOf({ sets }: Started): Set<StockJournal> {
  return new Set(sets.table.sites.map(({ journal }) => journal));
}

/**
 * The aims of engines and journals. Where other kinds are not full, an engine is complete where their journals are
 * filled, unless one of its journals of a full kind cannot be filled. The gap of the journals beyond is the gap of
 * these other kinds.
 */
function firstProofs(
  started: Started,
  fits: readonly MatchedFit[],
  others: FoundSets | undefined,
): { readonly proofs: Proof[]; readonly isSettled: boolean } {
  const { engines } = started.stock.inner;
  const complete = new Set(completeEngines(started.stock.inner, fits));
  const hopeless = new Set(engines.filter(({ isHopeless }) => isHopeless).map(({ name }) => name));
  const count = (own: readonly MatchedFit[], aim: AimName) =>
    own.filter(
      ({ engine }) =>
        !complete.has(engine) && (aim === 'filled journals beyond them' || !hopeless.has(engine)),
    ).length;
  const ofOthers = (aim: AimName) => others && proofOf(others.proofs, aim);
  const ofEngines = ofOthers('complete engines');
  const beyond = (aim: AimName): Proof => {
    const own = ofOthers(aim);
    const more = others ? (own?.bound ?? 0) - count(others.fits, aim) : 0;
    return { aim, bound: count(fits, aim) + more, gapStays: own?.gapStays };
  };
  const ofJournals = [
    ...(hopeless.size > 0 ? [beyond('filled journals of engines that could be completed')] : []),
    beyond('filled journals beyond them'),
  ];
  return {
    proofs: [
      {
        aim: 'complete engines',
        bound: ofEngines?.bound ?? complete.size,
        gapStays: ofEngines?.gapStays,
      },
      ...ofJournals,
    ],
    isSettled: ofJournals.every(({ aim, bound }) => bound === count(fits, aim)),
  };
}

/**
 * The bounds of a full kind where the other kinds have a gap: better sets of those may complete other engines, and so
 * leave journals of this kind out.
 * @param more the proof of the other kinds, with its gap
 */
function loosened({ stock }: Started, { fits, proofs }: FoundSets, more: Proof): FoundSets {
  const journals = stock.inner.engines.reduce((sum, engine) => sum + engine.journals.length, 0);
  const loose = (proof: Proof): Proof => {
    const { aim, bound } = proof;
    const gapStays = gapReasonOf([proof, more]);
    const most: readonly AimName[] = ['pairs kept together', 'rods that stay', 'fits in range'];
    if (most.includes(aim)) return { aim, bound: journals, gapStays };
    const isSum = aim === 'distance from the aim' || aim === 'price of bought shells';
    return { aim, bound: isSum ? 0 : bound, gapStays };
  };
  return { fits, proofs: proofs.map(loose) };
}

/** Independent stocks, and how the best sets of each, in the same order, make the best sets of all. */
export interface Parting {
  readonly parts: readonly Started[];
  readonly join: (found: readonly FoundSets[]) => FoundSets;
}

/** Parts a stock by kinds of fit, where nothing is lost by it. */
export function partedByKind(started: Started, remaining: () => number, largeFrom: number): Parting {
  const keys = [...new Set(started.problem.journals.map(keyOfKind))].sort(compareText);
  const areFull = () => keys.every((kind) => isFull(started, kind));
  if (keys.length > 1 && !areFull()) {
    const share = remaining() * (1 - FIRST_SHARE);
    improveByKicks(started.sets, {
      idle: FIRST_KICKS,
      remaining: () => remaining() - share,
      done: areFull,
    });
  }
  const alone = keys.length > 1 ? kindsAlone(started, keys) : [];
  if (alone.length === 0) return { parts: [started], join: ([found]) => found! };
  const before = namedFits(started.sets);
  const fillable = fillableOf(started);
  const isEmpty = (engine: number, place: number) =>
    !fillable.has(started.stock.inner.engines[engine]!.journals[place]!);
  const rest = new Set(keys.filter((kind) => !alone.includes(kind)));
  const stocks = alone.map((kind) => onlyKindsOnGrid(started.stock, new Set([kind])));
  if (rest.size > 0) stocks.push(onlyKindsOnGrid(started.stock, rest, isEmpty));
  const parts = stocks.map((part) => start(part, remaining, largeFrom, before));
  return { parts, join: (found) => joined(started, parts, found, rest.size > 0) };
}

/** @param isLastOpen whether the last of the parts holds the kinds that are not full */
function joined(
  started: Started,
  parts: readonly Started[],
  found: readonly FoundSets[],
  isLastOpen: boolean,
): FoundSets {
  const fits = found.flatMap((each) => each.fits);
  const first = firstProofs(started, fits, isLastOpen ? found.at(-1) : undefined);
  const sums = sumOfProofs(
    started.stock.inner,
    found.map((each, place) =>
      first.isSettled || place === found.length - 1
        ? each
        : loosened(parts[place]!, each, first.proofs.at(-1)!),
    ),
  );
  const later = sums.filter(({ aim }) => first.proofs.every((each) => each.aim !== aim));
  return { fits, proofs: [...first.proofs, ...later] };
}
