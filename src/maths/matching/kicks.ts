/**
 * Better sets by taking some apart and putting them together again.
 *
 * A kick empties a few journals, or whole engines, fills them and any other empty one from what is
 * free, and lets the exchanges (reassign.ts) settle. It stands unless the sets are worse than before.
 * Iterated local search (Lourenço, Martin and Stützle, 2003), by a fixed sequence and a number
 * of kicks, so that it does not depend on the clock unless the time runs out.
 */
import { fillBest } from './fill.js';
import { type Reunion, sitesOfEngines } from './fit-table.js';
import { type Sequence, sequenceOf, shuffled } from './random.js';
import { reassign, sitesByKind } from './reassign.js';
import { compareValues, type SetsValue, type WorkingSets } from './working-sets.js';

export interface KickLimits {
  /** Kicks without any gain before the search gives up. */
  readonly idle: number;
  /** Seconds left. */
  readonly remaining: () => number;
  /** Whether nothing better is to be had. */
  readonly done: (value: SetsValue) => boolean;
}

/** Journals to empty: a few anywhere, or all of one to three engines. */
function chosen(sets: WorkingSets, engines: readonly (readonly number[])[], next: Sequence): number[] {
  const filled = [...sets.choices.keys()].filter((site) => sets.choices[site]);
  if (next() < 0.6) return shuffled(next, filled).slice(0, 1 + Math.floor(next() * 4));
  return shuffled(next, engines)
    .slice(0, 1 + Math.floor(next() * 3))
    .flat()
    .filter((site) => sets.choices[site]);
}

/** Brings parts that ran together back to their journal. @returns the journals emptied for it */
function reunite(sets: WorkingSets, { site, rod, upper, lower }: Reunion, next: Sequence): number[] {
  const fit = { rod, upper, lower };
  sets.put(site, undefined);
  const out = sets.makeRoom(site, fit, next);
  if (sets.fits(site, fit)) sets.put(site, fit);
  return [site, ...out];
}

function anyApart(sets: WorkingSets, next: Sequence): Reunion | undefined {
  const apart = sets.table.together.filter((fit) => sets.choices[fit.site] && !sets.isChosen(fit.site, fit));
  return apart[Math.floor(next() * apart.length)];
}

function kick(sets: WorkingSets, engines: readonly (readonly number[])[], next: Sequence): void {
  const empty = [...sets.choices.keys()].filter((site) => !sets.choices[site]);
  let out: number[] = [];
  const apart = next() < 0.4 ? anyApart(sets, next) : undefined;
  if (apart) out = reunite(sets, apart, next);
  else {
    out = chosen(sets, engines, next);
    for (const site of out) sets.put(site, undefined);
  }
  // The journals that were empty go first as often as not.
  const order = next() < 0.5 ? [...shuffled(next, empty), ...out] : shuffled(next, [...out, ...empty]);
  for (const site of order) if (!sets.choices[site]) fillBest(sets, site);
}

/** Exchanges until none helps. */
function settle(sets: WorkingSets, kinds: ReadonlyMap<string, readonly number[]>, next: Sequence): SetsValue {
  let value = sets.value();
  for (;;) {
    reassign(sets, kinds, next());
    const after = sets.value();
    if (compareValues(after, value) >= 0) return after;
    value = after;
  }
}

/** Brings back all of some parts that ran together, one after the other; stands unless the sets are worse than before. */
export function improveByReunions(sets: WorkingSets, reunions: readonly Reunion[]): void {
  const kinds = sitesByKind(sets.table);
  const next = sequenceOf(2);
  let [best, kept] = [sets.value(), [...sets.choices]];
  const out: number[] = [];
  for (const fit of reunions) if (!sets.isChosen(fit.site, fit)) out.push(...reunite(sets, fit, next));
  for (const site of out) if (!sets.choices[site]) fillBest(sets, site);
  if (compareValues(settle(sets, kinds, next), best) > 0) sets.copyFrom(kept);
  [best, kept] = [sets.value(), [...sets.choices]];
  for (const fit of reunions) {
    if (sets.isChosen(fit.site, fit)) continue;
    for (const site of reunite(sets, fit, next)) if (!sets.choices[site]) fillBest(sets, site);
    const value = settle(sets, kinds, next);
    if (compareValues(value, best) <= 0) [best, kept] = [value, [...sets.choices]];
    else sets.copyFrom(kept);
  }
}

export function improveByKicks(sets: WorkingSets, { idle, remaining, done }: KickLimits): SetsValue {
  const kinds = sitesByKind(sets.table);
  const engines = sitesOfEngines(sets.table);
  const next = sequenceOf(1);
  let best = settle(sets, kinds, next);
  let kept = [...sets.choices];
  for (let tries = 0; tries < idle && !done(best) && remaining() > 0; tries++) {
    kick(sets, engines, next);
    const value = settle(sets, kinds, next);
    const order = compareValues(value, best);
    if (order <= 0) {
      if (order < 0) tries = 0;
      [best, kept] = [value, [...sets.choices]];
    } else sets.copyFrom(kept);
  }
  return best;
}
