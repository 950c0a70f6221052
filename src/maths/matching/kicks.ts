/**
 * Iterated local search (Lourenço, Martin and Stützle, 2003).
 *
 * A kick empties a few journals, or whole engines, fills them and any other empty one from the free parts, and repeats
 * the exchanges (reassign.ts) until none helps. It is taken back where the sets are worse than before. The sequence of
 * kicks is fixed and their number limited, so that the result does not depend on the clock unless the time ends.
 */
import { fillBest, fillByLot } from './fill.js';
import { type Sequence, sequenceOf, shuffled } from './random.js';
import { reassign, sitesByKind } from './reassign.js';
import type { Reunion } from './reunions.js';
import { sitesOfEngines } from './sites.js';
import { compareValues, type SetsValue, type WorkingSets } from './working-sets.js';

export interface KickLimits {
  /** Most kicks without gain, one after the other. */
  readonly idle: number;
  /** Most kicks in all; no limit where left out. */
  readonly most?: number;
  /** Seconds left. */
  readonly remaining: () => number;
  /** Whether the sets cannot be improved. */
  readonly done: (value: SetsValue) => boolean;
}

/** Most journals in one exchange; more take too long. */
const BLOCK = 120;

/** Random draws to fill a journal that no free parts fit. */
const LOTS = 12;

/** Most rounds in which parts that ran together are brought back. */
const REUNION_ROUNDS = 5;

/** The sets with what is worked out once for all kicks. */
class Ground {
  readonly engines: readonly (readonly number[])[];
  private readonly all: readonly number[];
  private readonly whole: ReadonlyMap<string, readonly number[]>;

  constructor(readonly sets: WorkingSets) {
    this.engines = sitesOfEngines(sets.table.sites);
    this.all = [...sets.table.sites.keys()];
    this.whole = sitesByKind(sets.table, this.all);
  }

  /** The journals to exchange parts among, by kind: those given, and others at random. */
  block(sites: readonly number[], next: Sequence): ReadonlyMap<string, readonly number[]> {
    if (this.all.length <= BLOCK) return this.whole;
    const block = new Set(sites);
    while (block.size < BLOCK) block.add(this.any(next));
    return sitesByKind(
      this.sets.table,
      [...block].sort((a, b) => a - b),
    );
  }

  any(next: Sequence): number {
    return Math.floor(next() * this.all.length);
  }

  anyEngine(next: Sequence): readonly number[] {
    return this.engines[Math.floor(next() * this.engines.length)]!;
  }
}

/** Journals to empty: a few anywhere, or all of one to three engines. */
function toEmpty(ground: Ground, next: Sequence): number[] {
  const count = 1 + Math.floor(next() * 4);
  if (next() < 0.6) return Array.from({ length: count }, () => ground.any(next));
  return Array.from({ length: Math.min(count, 3) }, () => ground.anyEngine(next)).flat();
}

/**
 * Brings parts that ran together back to their journal.
 * @returns the journals emptied for it
 */
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

/** The empty journals of up to three engines that are not complete. */
function emptySites({ sets, engines }: Ground, next: Sequence): number[] {
  const open = engines.filter((sites) => sites.some((site) => !sets.choices[site]));
  const some = open.length <= 3 ? open : shuffled(next, open).slice(0, 3);
  return some.flat().filter((site) => !sets.choices[site]);
}

/** @returns the journals that it touched */
function kick(ground: Ground, next: Sequence): number[] {
  const { sets } = ground;
  const empty = sets.isFull() ? [] : emptySites(ground, next);
  const apart = next() < 0.4 ? anyApart(sets, next) : undefined;
  let out: number[] = [];
  if (apart) out = reunite(sets, apart, next);
  else {
    out = toEmpty(ground, next);
    for (const site of out) sets.put(site, undefined);
  }
  // In half of the kicks the journals that were empty before are filled first.
  const order = next() < 0.5 ? [...empty, ...out] : shuffled(next, [...out, ...empty]);
  for (const site of order) {
    if (sets.choices[site] || fillBest(sets, site)) continue;
    const block = ground.block([site], next).get(sets.table.sites[site]!.kind)!;
    fillByLot(sets, site, block, LOTS, next);
  }
  return order;
}

/** Exchanges until none helps. */
function settle(sets: WorkingSets, block: ReadonlyMap<string, readonly number[]>, next: Sequence): SetsValue {
  let value = sets.value();
  for (;;) {
    reassign(sets, block, next());
    const after = sets.value();
    if (compareValues(after, value) >= 0) return after;
    value = after;
  }
}

/**
 * Makes a change, and takes it back where the sets are worse than before.
 * @returns below 0 for a gain
 */
function attempt(ground: Ground, next: Sequence, change: () => readonly number[]): number {
  const { sets } = ground;
  const before = sets.value();
  sets.mark();
  const touched = change();
  const order = compareValues(settle(sets, ground.block(touched, next), next), before);
  if (order > 0) sets.undo();
  return order;
}

/** Brings back parts that ran together: first all at once, then one by one those that are still apart. */
export function improveByReunions(
  sets: WorkingSets,
  reunions: readonly Reunion[],
  remaining: () => number,
): void {
  const ground = new Ground(sets);
  const next = sequenceOf(2);
  const bringBack = (fits: readonly Reunion[]) =>
    attempt(ground, next, () => {
      const apart = fits.filter((fit) => !sets.isChosen(fit.site, fit));
      const out = apart.flatMap((fit) => reunite(sets, fit, next));
      for (const site of out) if (!sets.choices[site]) fillBest(sets, site);
      return out;
    });
  if (reunions.length <= BLOCK) bringBack(reunions);
  for (let gained = true, round = 0; gained && round < REUNION_ROUNDS; round++) {
    gained = false;
    for (const fit of reunions) {
      if (remaining() <= 0) return;
      if (!sets.isChosen(fit.site, fit) && bringBack([fit]) < 0) gained = true;
    }
  }
}

export function improveByKicks(
  sets: WorkingSets,
  { idle, most = Number.POSITIVE_INFINITY, remaining, done }: KickLimits,
): void {
  if (sets.choices.length === 0) return;
  const ground = new Ground(sets);
  const next = sequenceOf(1);
  for (let start = 0; start < sets.choices.length && remaining() > 0; start += BLOCK) {
    const sites = Array.from({ length: BLOCK }, (_, at) => start + at).filter(
      (site) => site < sets.choices.length,
    );
    attempt(ground, next, () => sites);
  }
  let idleFor = 0;
  for (let tries = 0; tries < most && idleFor < idle; tries++) {
    if (done(sets.value()) || remaining() <= 0) return;
    const gained = attempt(ground, next, () => kick(ground, next)) < 0;
    idleFor = gained ? 0 : idleFor + 1;
  }
}
