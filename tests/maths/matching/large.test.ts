/** The search of large stocks, on stocks small enough to try every set. */
import { describe, expect, test } from 'vitest';
import { windowsApart } from '../../../src/maths/matching/mass-groups.js';
import { ranksOf, rodsNeverTogether, withinMassSpread } from '../../../src/maths/matching/mass-windows.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import { bestByTryingAll } from './every-set.js';
import { randomOf, shuffledStock, tinyStock, wholeOf, workshopStock } from './random-stock.js';
import { valuesOf } from './values-of.js';

describe('tiny stocks searched as large ones are', () => {
  test('reach nothing better than is possible, and no bound is beyond the best', async () => {
    let [met, proved] = [0, 0];
    for (let seed = 4001; seed <= 4200; seed++) {
      const stock = tinyStock(seed);
      const best = bestByTryingAll(stock);
      const result = await matchStock(stock, { largeFrom: 0 });
      const [reached, bound] = [valuesOf(result, 'reached'), valuesOf(result, 'bound')];
      for (const [place, value] of best.entries()) {
        // Each bound is of sets that do as well at the earlier aims as those found.
        if (place > 0 && reached[place - 1] !== best[place - 1]) break;
        expect(reached[place], `seed ${seed}`).toBeGreaterThanOrEqual(value);
        expect(bound[place], `seed ${seed}`).toBeLessThanOrEqual(value);
      }
      if (String(reached) === String(best)) met++;
      if (String(reached) === String(bound)) proved++;
    }
    // The gap is seldom open.
    expect(met).toBeGreaterThan(190);
    expect(proved).toBeGreaterThan(180);
  });
});

test('a mass spread of mains says nothing', async () => {
  for (let seed = 4201; seed <= 4230; seed++) {
    const stock = tinyStock(seed);
    const spread = (massSpread: number | undefined) => ({
      ...stock,
      kinds: stock.kinds.map((kind) => ({
        ...kind,
        massSpread: kind.fit === 'main' ? massSpread : undefined,
      })),
      rods: stock.rods.map((rod) => ({ ...rod, mass: undefined })),
    });
    for (const largeFrom of [0, 250])
      expect(await matchStock(spread(3), { largeFrom })).toEqual(
        await matchStock(spread(undefined), { largeFrom }),
      );
  }
});

test('a case may have the name of a rod', async () => {
  const stock = workshopStock(2, {
    cranks: 14,
    pins: 3,
    mains: 1,
    rods: 45,
    shells: 88,
    wear: 6000,
    range: [28_000, 52_000],
  });
  const named = <Row extends object>(row: Row, place: number) => ({ ...row, name: `${place + 1}` });
  const alike = {
    ...stock,
    rods: stock.rods.map(named),
    engines: stock.engines.map((engine, place) => ({
      ...engine,
      journals: engine.journals.map((journal) => ({
        ...journal,
        caseBore: journal.caseBore && named(journal.caseBore, place),
      })),
    })),
  };
  const { fits } = await matchStock(alike, { largeFrom: 0, seconds: 5 });
  const rods = fits.flatMap(({ journal, bore }) => (journal.caseBore ? [] : [bore.name]));
  expect(new Set(rods).size).toBe(rods.length);
  expect(fits.length).toBeGreaterThan(rods.length);
});

describe('rods in groups of masses', () => {
  test('hold as many cranks of rods as any windows apart from each other', () => {
    const random = randomOf(7);
    for (let time = 0; time < 200; time++) {
      const masses = Array.from({ length: 12 }, () => wholeOf(random, 0, 15) / 10);
      const { windows, rankOf } = ranksOf(masses, 0.3);
      const counts = new Array<number>(windows.at(-1)!.last + 1).fill(0);
      for (const mass of masses) counts[rankOf(mass)]!++;
      const found = windowsApart(counts, windows, 2);
      const cranksOf = (first: number, last: number) =>
        Math.floor(counts.slice(first, last + 1).reduce((sum, count) => sum + count, 0) / 2);
      // Every way to cut the ranks into runs.
      let most = 0;
      for (let cuts = 0; cuts < 2 ** (counts.length - 1); cuts++) {
        let [first, cranks] = [0, 0];
        for (let last = 0; last < counts.length; last++) {
          if (last < counts.length - 1 && !((cuts >> last) & 1)) continue;
          if (windows.some((window) => window.first <= first && last <= window.last))
            cranks += cranksOf(first, last);
          first = last + 1;
        }
        most = Math.max(most, cranks);
      }
      expect(found.reduce((sum, { first, last }) => sum + cranksOf(first, last), 0)).toBe(most);
      for (const [place, { first, last }] of found.entries()) {
        expect(windows.some((window) => window.first <= first && last <= window.last)).toBe(true);
        if (place > 0) expect(first).toBeGreaterThan(found[place - 1]!.last);
      }
    }
  });

  test('complete a shelf of 64 cranks whose rods differ by no more than 3 g', async () => {
    const size = { cranks: 64, pins: 4, mains: 0, rods: 333, shells: 1280, massSpread: 3 };
    const { stages } = await matchStock(workshopStock(1, size), { seconds: 4 });
    expect(stages[0]).toEqual({ aim: 'complete engines', reached: 64, bound: 64 });
  });
});

test('a shelf with a mass spread gives one result in any order of its rows', async () => {
  const stock = workshopStock(6, { cranks: 12, pins: 4, mains: 0, rods: 62, shells: 240, massSpread: 3 });
  const names = async (rows: typeof stock) =>
    (await matchStock(rows, { largeFrom: 0 })).fits.map(({ journal, bore, parts }) => [
      journal.name,
      bore.name,
      parts.upper,
      parts.lower,
    ]);
  expect(await names(shuffledStock(randomOf(9), stock))).toEqual(await names(stock));
});

describe('rods that ran on one crank', () => {
  test('are told apart where their masses let it keep one of them at most', () => {
    const stock = workshopStock(5, { cranks: 12, pins: 4, mains: 0, rods: 48, shells: 20, massSpread: 3 });
    const lists = rodsNeverTogether(stock);
    expect(lists.length).toBeGreaterThan(0);
    const pairs = new Set<string>();
    for (const list of lists) {
      for (const a of list) {
        for (const b of list) {
          if (a === b) continue;
          expect(a.ran!.engine).toBe(b.ran!.engine);
          expect(withinMassSpread([a.mass!, b.mass!], 3)).toBe(false);
          pairs.add(`${a.name}/${b.name}`);
        }
      }
    }
    for (const a of stock.rods) {
      for (const b of stock.rods) {
        if (a.ran?.engine !== b.ran?.engine || withinMassSpread([a.mass!, b.mass!], 3)) continue;
        expect(pairs, `${a.name} and ${b.name}`).toContain(`${a.name}/${b.name}`);
      }
    }
  });
});

describe('a few engines at a time', () => {
  test('no sets beat the bound of the exact search, nor its sets the bound of theirs', async () => {
    const size = { cranks: 12, pins: 3, mains: 0, rods: 37, shells: 75, wear: 9000 };
    for (const massSpread of [undefined, 3]) {
      const stock = workshopStock(1, {
        ...size,
        range: [28_000, 52_000],
        ...(massSpread !== undefined && { massSpread }),
      });
      const [large, exact] = [
        await matchStock(stock, { largeFrom: 0, seconds: 2 }),
        await matchStock(stock, { seconds: 2 }),
      ];
      const first = (result: typeof large) => result.stages[0]!;
      expect(first(large).reached, `spread ${massSpread}`).toBeLessThanOrEqual(first(exact).bound);
      expect(first(exact).reached, `spread ${massSpread}`).toBeLessThanOrEqual(first(large).bound);
      expect(first(large).reached).toBeGreaterThan(0);
    }
  });

  test('25 cranks whose rods differ by no more than 3 g: every aim is proved', async () => {
    const size = { cranks: 25, pins: 4, mains: 0, rods: 130, shells: 500, massSpread: 3 };
    const { stages } = await matchStock(workshopStock(6, size), { seconds: 45 });
    // The rods that stay, of equally near sets that keep as many pairs, take longer.
    const others = stages.filter(({ aim }) => aim !== 'rods that stay');
    for (const { aim, reached, bound } of others) expect(reached, aim).toBe(bound);
    expect(others.at(-1)!.reached).toBe(5);
  });
});
