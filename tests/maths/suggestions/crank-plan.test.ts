import { describe, expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { Stock, StockNewShell } from '../../../src/maths/matching/stock.js';
import { crankPlans } from '../../../src/maths/suggestions/crank-plan.js';
import type { Window } from '../../../src/maths/suggestions/windows.js';
import { bestByTryingAll } from '../matching/every-set.js';
import { tinyStock } from '../matching/random-stock.js';
import { withPlan } from './add-parts.js';
import { factsOf } from './facts.js';

const ENDS = [({ from }: Window) => from, ({ to }: Window) => to];

/** Stocks of which matching may not buy; every second one has shells on offer all the same. */
function offered(seed: number): { stock: Stock; newShells: readonly StockNewShell[] } {
  const stock = tinyStock(seed);
  return { stock: { ...stock, newShells: [] }, newShells: seed % 2 === 0 ? stock.newShells : [] };
}

describe('with the parts of a plan added, matching completes one engine more', () => {
  const kinds = new Set<string>();

  for (let from = 1; from <= 60; from += 20) {
    test(`tiny stocks ${from} to ${from + 19}`, async () => {
      for (let seed = from; seed < from + 20; seed++) {
        const { stock, newShells } = offered(seed);
        const matched = await matchStock(stock);
        const facts = factsOf(stock, { newShells });
        for (const plan of crankPlans(stock, matched, facts)) {
          if (plan.open.length > 0 || plan.places.length === 0) continue;
          for (const { added } of plan.places) for (const { is } of added) kinds.add(is);
          for (const at of ENDS) {
            const again = await matchStock(withPlan(stock, plan, facts, at));
            expect(again.completeEngines.length, `seed ${seed}, ${plan.engine.name}`).toBeGreaterThan(
              matched.completeEngines.length,
            );
          }
        }
      }
    });
  }

  test('and every kind of addition was among them', () => {
    expect([...kinds].sort()).toEqual(['new shell', 'rod', 'rod and walls', 'wall', 'walls']);
  });
});

test('no set of a single journal costs less than its plan', () => {
  let [bought, found] = [0, 0];
  for (let seed = 1; seed <= 1200; seed++) {
    const whole = tinyStock(seed);
    const [engine] = whole.engines;
    const [journal] = engine!.journals;
    if (!journal?.part) continue;
    const stock = { ...whole, newShells: [], engines: [{ ...engine!, journals: [journal] }] };
    const [complete, , third = 0] = bestByTryingAll({ ...stock, newShells: whole.newShells });
    const cents = whole.newShells.length > 0 ? third : 0;
    const nothing = { fits: [], completeEngines: [] };
    const [plan] = crankPlans(stock, nothing, factsOf(stock, { newShells: whole.newShells }));
    const [place] = plan!.places;
    const isFromStock = place?.added.every(({ is }) => is === 'new shell') ?? false;
    expect(isFromStock, `seed ${seed}`).toBe(complete === -1);
    if (!isFromStock) continue;
    found++;
    expect(Math.round(100 * place!.cost[3]), `seed ${seed}`).toBe(cents);
    if (place!.added.length > 0) bought++;
  }
  expect(found).toBeGreaterThan(300);
  expect(bought).toBeGreaterThan(20);
});
