/** Rods that all make a fit on its limit, and a matching that takes any of them that is called `in range`. */
import { drawsOf } from './draws.js';
import { MIN, readFit, stepOf } from './judge.js';
import { judgeByMaths } from './judge-by-maths.js';
import type { SetUp } from './set-ups.js';
import { drawFit, Workshop } from './workshop.js';

/** How many rods there are to choose from. */
export const CHOICES = [1, 2, 5, 10] as const;

export interface BestOfCounts {
  readonly setUp: SetUp;
  readonly cases: number;
  /** Cases with a false set, by how many rods there were. */
  readonly falseSets: Record<(typeof CHOICES)[number], number>;
}

const RODS = Math.max(...CHOICES);
/** Places of the limit between two steps of the gauges. */
const PLACES = 20;

/** One journal and one pair of shells, measured once; every rod by the same gauges. */
export function bestOfCounts(setUp: SetUp, cases: number, seed: number): BestOfCounts {
  const draws = drawsOf(seed);
  const counts: BestOfCounts = { setUp, cases, falseSets: { 1: 0, 2: 0, 5: 0, 10: 0 } };
  for (let done = 0; done < cases; done++) {
    const shift = ((done % PLACES) * stepOf(setUp)) / PLACES;
    const workshop = new Workshop(setUp, draws);
    const target = { tightest: MIN + shift };
    const first = drawFit(draws, setUp, target);
    const read = readFit(workshop, first);
    const others = Array.from({ length: RODS - 1 }, () => drawFit(draws, setUp, target, first));
    const all = [read, ...others.map((fit) => ({ ...read, bore: readFit(workshop, fit).bore }))];
    const taken = all.findIndex((own) => judgeByMaths(setUp, own, setUp.gauges, shift).status === 'in range');
    for (const rods of CHOICES) if (taken >= 0 && taken < rods) counts.falseSets[rods] += 1;
  }
  return counts;
}
