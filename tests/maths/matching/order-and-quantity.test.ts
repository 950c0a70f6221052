import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { MatchedFit, MatchResult, TakenShell } from '../../../src/maths/matching/stock.js';
import { randomOf, shuffledStock, tinyStock, workshopStock } from './random-stock.js';

const shellName = (taken: TakenShell) =>
  taken.from === 'new' ? `new ${taken.shell.mark}` : taken.shell.name;

function namesOf({ fits }: MatchResult): string[] {
  return fits.map((fit) =>
    [fit.engine, fit.journal.name, fit.bore.name, shellName(fit.upper), shellName(fit.lower)].join(' / '),
  );
}

describe('one stock gives the same sets in any order of its rows', () => {
  test('tiny stocks, each in three orders', async () => {
    let filled = 0;
    for (let seed = 1001; seed <= 1060; seed++) {
      const stock = tinyStock(seed);
      const names = namesOf(await matchStock(stock));
      filled += names.length;
      for (let order = 0; order < 2; order++) {
        const other = shuffledStock(randomOf(seed * 7 + order), stock);
        expect(namesOf(await matchStock(other)), `seed ${seed}`).toEqual(names);
      }
    }
    expect(filled).toBeGreaterThan(60);
  });

  test('three cranks of a workshop', async () => {
    const stock = workshopStock(3, { cranks: 3, pins: 4, mains: 2, rods: 16, shells: 40, massSpread: 4 });
    // Time enough on any machine: only a search cut short by the clock may end with other sets.
    const options = { seconds: 600 };
    const names = namesOf(await matchStock(stock, options));
    expect(names).toHaveLength(18);
    expect(namesOf(await matchStock(shuffledStock(randomOf(5), stock), options))).toEqual(names);
  });
});

function usesOf(fits: readonly MatchedFit[]): Map<string, number> {
  const uses = new Map<string, number>();
  for (const { bore, upper, lower } of fits) {
    const shells = [upper, lower]
      .filter(({ from }) => from === 'stock')
      .map((taken) => `shell ${shellName(taken)}`);
    for (const part of [`bore ${bore.name}`, ...shells]) uses.set(part, (uses.get(part) ?? 0) + 1);
  }
  return uses;
}

test('no part is used more often than it is there', async () => {
  let used = 0;
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 1_000_000 }), async (seed) => {
      const stock = tinyStock(seed);
      const quantities = new Map(stock.shells.map(({ name, quantity }) => [`shell ${name}`, quantity]));
      for (const [part, times] of usesOf((await matchStock(stock)).fits)) {
        used++;
        expect(times, part).toBeLessThanOrEqual(quantities.get(part) ?? 1);
      }
    }),
    { numRuns: 80, seed: 20 },
  );
  expect(used).toBeGreaterThan(80);
});

test('every journal is filled at most once and complete engines are those with no journal left', async () => {
  for (let seed = 2001; seed <= 2040; seed++) {
    const stock = tinyStock(seed);
    const { fits, completeEngines } = await matchStock(stock);
    expect(new Set(fits.map(({ journal }) => journal.name)).size).toBe(fits.length);
    const complete = stock.engines.filter(
      ({ name, journals }) =>
        journals.length > 0 && journals.length === fits.filter(({ engine }) => engine === name).length,
    );
    expect([...completeEngines].sort()).toEqual(complete.map(({ name }) => name).sort());
  }
});
