/** Independent parts of a stock, and what is proven of all of them together. */
import { type AimName, aimsOf, pricesOf } from './aims.js';
import { keyOfKind } from './part-classes.js';
import type { FitKind, GapReason, MatchedFit, Stock } from './stock.js';

/** The proven best of one aim, in the units of the result. */
export interface Proof {
  readonly aim: AimName;
  readonly bound: number;
  /** Why the sets are short of the bound; undefined where they reach it. */
  readonly gapStays: GapReason | undefined;
}

export interface FoundSets {
  readonly fits: readonly MatchedFit[];
  readonly proofs: readonly Proof[];
}

/**
 * The kinds of fit, grouped where they meet in an engine or in a case bore that two journals claim. No part serves two
 * groups, and no engine has journals of two, so that the best sets of all are the best sets of each group.
 */
export function independentKinds({ engines }: Stock): Set<string>[] {
  const meetings = new Map<string, Set<string>>();
  const meet = (where: string, kind: string) =>
    meetings.set(where, (meetings.get(where) ?? new Set()).add(kind));
  for (const [place, { journals }] of engines.entries()) {
    for (const journal of journals) {
      meet(`engine ${place}`, keyOfKind(journal));
      if (journal.caseBore) meet(`bore ${journal.caseBore.name}`, keyOfKind(journal));
    }
  }
  let sets: Set<string>[] = [];
  for (const kinds of meetings.values()) {
    const met = sets.filter((set) => [...kinds].some((kind) => set.has(kind)));
    sets = [
      ...sets.filter((set) => !met.includes(set)),
      new Set([...met.flatMap((set) => [...set]), ...kinds]),
    ];
  }
  return sets;
}

/** What is proven of an aim; without hopeless engines the journals of the others are all there are. */
export function proofOf(proofs: readonly Proof[], aim: AimName): Proof | undefined {
  const own = proofs.find((proof) => proof.aim === aim);
  if (own || aim !== 'filled journals of engines that could be completed') return own;
  const all = proofs.find((proof) => proof.aim === 'filled journals beyond them');
  return all && { ...all, aim };
}

/** Why the sum of some proofs of one aim has a gap: `time` where it is the reason in one of them. */
export function gapReasonOf(proofs: readonly Proof[]): GapReason | undefined {
  const reasons = proofs.map(({ gapStays }) => gapStays);
  return reasons.includes('time') ? 'time' : reasons.find((reason) => reason !== undefined);
}

/** Whether a journal stays empty, by its place in the stock. */
export type IsEmpty = (engine: number, journal: number) => boolean;

/**
 * The stock of some kinds of fit alone.
 * @param isEmpty picks journals of other kinds that stay in it: they cannot be filled, so that their engines cannot be
 * completed
 */
export function onlyKinds(stock: Stock, keys: ReadonlySet<string>, isEmpty: IsEmpty = () => false): Stock {
  const own = <Row extends FitKind>(rows: readonly Row[]) => rows.filter((row) => keys.has(keyOfKind(row)));
  const engines = stock.engines
    .map((engine, place) => ({
      ...engine,
      journals: engine.journals.filter((journal, at) => keys.has(keyOfKind(journal)) || isEmpty(place, at)),
    }))
    .filter(({ journals }) => journals.length > 0);
  const types = new Set(engines.flatMap(({ journals }) => journals.map(({ engineType }) => engineType)));
  return {
    ...stock,
    kinds: own(stock.kinds),
    engines,
    rods: stock.rods.filter(({ engineType }) => types.has(engineType)),
    shells: own(stock.shells),
    newShells: own(stock.newShells),
  };
}

/**
 * What is proven of all together: every aim is a sum over independent parts. Where an earlier aim has a gap, a later
 * bound is of sets that do as well at that aim part by part.
 */
export function sumOfProofs(stock: Stock, found: readonly FoundSets[]): Proof[] {
  const aims = aimsOf(stock, { price: 1, distance: 1 });
  const sums = new Map<AimName, number>();
  const all = found.flatMap(({ proofs }) => aims.flatMap(({ name }) => proofOf(proofs, name) ?? []));
  for (const { aim, bound } of all) sums.set(aim, (sums.get(aim) ?? 0) + bound);
  const { perUnit } = pricesOf(stock);
  const price = sums.get('price of bought shells');
  // A sum of binary fractions, rounded back to the step in which the prices are typed.
  if (price !== undefined) sums.set('price of bought shells', Math.round(price * perUnit) / perUnit);
  return aims.map(({ name }) => ({
    aim: name,
    bound: sums.get(name) ?? 0,
    gapStays: gapReasonOf(all.filter(({ aim }) => aim === name)),
  }));
}
