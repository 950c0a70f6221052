/**
 * The greedy start: engine by engine, each journal gets the first or the best free parts, and an engine that cannot be
 * completed puts its parts back. Its sets are the first incumbent.
 */

import { fillBest, fillFirst } from './fill.js';
import { sitesOfEngines } from './sites.js';
import { compareValues, type WorkingSets } from './working-sets.js';

/**
 * Fills engine after engine, in the order given; one that cannot be completed puts its parts back. Then it fills what
 * can be filled of those.
 * @param engines the sites of each
 * @param isOver whether to stop
 */
export function fillInOrder(
  sets: WorkingSets,
  engines: readonly (readonly number[])[],
  fill: typeof fillBest,
  isOver: () => boolean = () => false,
): void {
  const partly: (readonly number[])[] = [];
  for (const sites of engines) {
    if (isOver()) return;
    const own = sites.filter((site) => !sets.choices[site]);
    const all = own.every((site) => fill(sets, site));
    if (all && sets.isCompleteEngine(sets.table.sites[sites[0]!]!.engine)) continue;
    for (const site of own) sets.put(site, undefined);
    partly.push(own);
  }
  for (const site of partly.flat()) {
    if (isOver()) return;
    fill(sets, site);
  }
}

/** Fills the journals whose parts ran together there with these parts. */
function fillTogether(sets: WorkingSets): void {
  const { table } = sets;
  for (const site of table.sites.keys()) {
    const own = table.togetherAt(site).find((fit) => sets.fits(site, fit));
    if (own) sets.put(site, { rod: own.rod, upper: own.upper, lower: own.lower });
  }
}

/**
 * The best of a few plain searches: one of them begins with what ran together.
 * @param remaining seconds left; the first search is made in any case
 */
export function plainSearch(sets: WorkingSets, remaining: () => number): void {
  const engines = sitesOfEngines(sets.table.sites);
  const byCount = [...engines].sort((a, b) => a.length - b.length);
  let best: { choices: WorkingSets['choices']; value: ReturnType<WorkingSets['value']> } | undefined;
  for (const [fill, order, isTogether] of [
    [fillFirst, engines],
    [fillBest, engines, true],
    [fillBest, engines],
    [fillBest, byCount],
    [fillBest, [...engines].reverse()],
  ] as const) {
    if (best && remaining() <= 0) break;
    for (const site of sets.choices.keys()) sets.put(site, undefined);
    // The first search is never cut short, so that there are sets without any time.
    const whole = best === undefined;
    if (isTogether) fillTogether(sets);
    fillInOrder(sets, order, fill, () => !whole && remaining() <= 0);
    const value = sets.value();
    if (!best || compareValues(value, best.value) < 0) best = { choices: [...sets.choices], value };
  }
  if (best) sets.copyFrom(best.choices);
}
