/** What must not change, or only to the better, when a stock is written otherwise or grows. */
import { describe, expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { MatchResult, Stock } from '../../../src/maths/matching/stock.js';
import { CERTAIN } from '../../../src/maths/uncertainty.js';
import { pick, randomOf, tinyStock } from './random-stock.js';

const reached = ({ stages }: MatchResult) => stages.map((stage) => [stage.aim, stage.reached, stage.bound]);

/** The same parts under names that sort the other way round. */
function renamed(stock: Stock): Stock {
  const name = (row: { readonly name: string }, place: number, count: number) => ({
    ...row,
    name: `${String(count - place).padStart(3, '0')} of ${row.name}`,
  });
  const all = <Row extends { readonly name: string }>(rows: readonly Row[]): Row[] =>
    rows.map((row, place) => name(row, place, rows.length) as unknown as Row);
  return { ...stock, rods: all(stock.rods), shells: all(stock.shells) };
}

/** A rod and a shell that fit nothing. */
function withUseless(stock: Stock): Stock {
  const part = { size: 1000, largest: 1000, smallest: 1000, ...CERTAIN };
  const rod = { name: 'useless', engineType: 'A', part, mass: 612.3, ran: undefined };
  const shell = {
    name: 'useless',
    engineType: 'A',
    fit: 'big end',
    half: 'either',
    quantity: 5,
    part,
    ran: undefined,
  } as const;
  return { ...stock, rods: [rod, ...stock.rods], shells: [shell, ...stock.shells] };
}

/** One more of some rod and one more of each shell. */
function withMore(stock: Stock, seed: number): Stock {
  const random = randomOf(seed);
  const more = pick(random, stock.rods);
  return {
    ...stock,
    rods: [...stock.rods, { ...more, name: `${more.name} again`, ran: undefined }],
    shells: stock.shells.map((shell) => ({ ...shell, quantity: shell.quantity + 1 })),
  };
}

const seeds = Array.from({ length: 40 }, (_, place) => 4001 + place);

describe('the values reached and proved', () => {
  test('do not depend on the names of the parts', async () => {
    for (const seed of seeds) {
      const stock = tinyStock(seed);
      expect(reached(await matchStock(renamed(stock))), `seed ${seed}`).toEqual(
        reached(await matchStock(stock)),
      );
    }
  });

  test('do not change with parts that fit nothing', async () => {
    for (const seed of seeds) {
      const stock = tinyStock(seed);
      expect(reached(await matchStock(withUseless(stock))), `seed ${seed}`).toEqual(
        reached(await matchStock(stock)),
      );
    }
  });

  test('are of no fewer engines with more parts', async () => {
    let gained = 0;
    for (const seed of seeds) {
      const stock = tinyStock(seed);
      const [before] = reached(await matchStock(stock));
      const [after] = reached(await matchStock(withMore(stock, seed)));
      expect(after![1], `seed ${seed}`).toBeGreaterThanOrEqual(before![1] as number);
      if (after![1]! > before![1]!) gained++;
    }
    expect(gained).toBeGreaterThan(0);
  });
});
