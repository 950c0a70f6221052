/** What a person does at the shelf, as peers of the matching: sets made part after part. */
import { fillBest, fillFirst } from '../../../src/maths/matching/fill.js';
import { FitTable } from '../../../src/maths/matching/fit-table.js';
import { orderStock } from '../../../src/maths/matching/order.js';
import { fillInOrder } from '../../../src/maths/matching/plain-search.js';
import { problemOf } from '../../../src/maths/matching/problem.js';
import { sitesOfEngines } from '../../../src/maths/matching/sites.js';
import type { Stock } from '../../../src/maths/matching/stock.js';
import { WorkingSets } from '../../../src/maths/matching/working-sets.js';
import { randomOf, shuffled } from '../../maths/matching/random-stock.js';

export interface Peers {
  /** First fit, engine by engine, parts put back where an engine is not completed. */
  readonly firstFit: number;
  /** The fit nearest to the aim, likewise. */
  readonly bestFit: number;
  /** First fit in so many random orders of engines and parts, the best of them. */
  readonly restarts: number;
}

export const RESTARTS = 50;

export function peersOf(stock: Stock, seed: number): Peers {
  const table = new FitTable(problemOf(orderStock(stock), { merge: false }));
  const engines = sitesOfEngines(table.sites);
  const random = randomOf(seed);
  const complete = (order: typeof engines, fill: typeof fillBest) => {
    const sets = new WorkingSets(table);
    fillInOrder(sets, order, fill);
    return sets.value().complete;
  };
  let restarts = 0;
  for (let time = 0; time < RESTARTS; time++) {
    const order = shuffled(random, engines).map((sites) => shuffled(random, sites));
    restarts = Math.max(restarts, complete(order, time % 2 === 0 ? fillFirst : fillBest));
  }
  return { firstFit: complete(engines, fillFirst), bestFit: complete(engines, fillBest), restarts };
}
