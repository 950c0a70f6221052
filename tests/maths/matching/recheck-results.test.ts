/** What the search finds passes the recheck, which shares nothing with it. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import { breachesOf } from '../../../src/maths/matching/recheck.js';
import type { Stock } from '../../../src/maths/matching/stock.js';
import { importsOf } from '../../architecture/check-layers.js';
import { ofType, tinyStock, together, workshopStock } from './random-stock.js';

describe('what the search finds passes, whatever the order of the rows:', () => {
  const passes = async (stock: Stock, options: Parameters<typeof matchStock>[1] = {}, seed = 1) => {
    const result = await matchStock(stock, options);
    expect(breachesOf(stock, result)).toEqual([]);
    const { engines, kinds, rods, shells, newShells } = stock;
    const reversed = {
      ...stock,
      engines: [...engines].reverse(),
      rods: [...rods].reverse(),
      shells: [...shells].reverse(),
      newShells: [...newShells].reverse(),
      kinds,
    };
    expect(breachesOf(reversed, result), `seed ${seed}`).toEqual([]);
    return result;
  };

  test('tiny stocks, searched as small and as large ones, with and without time', async () => {
    for (let seed = 6001; seed <= 6060; seed++) {
      await passes(tinyStock(seed), {}, seed);
      await passes(tinyStock(seed), { largeFrom: 0 }, seed);
      await passes(tinyStock(seed), { seconds: 0 }, seed);
    }
  });

  test('a shelf of two engine types with new shells and a mass spread', async () => {
    const size = { cranks: 3, pins: 3, mains: 2, rods: 10, shells: 12, massSpread: 3, newShells: true };
    const own = (type: string, seed: number) => ofType(type, workshopStock(seed, size));
    const { stages } = await passes(together(own('A', 1), own('B', 2)), { seconds: 10 });
    expect(stages.find(({ aim }) => aim === 'price of bought shells')!.reached).toBeGreaterThan(0);
  });

  test('a stock on a coarser grid', async () => {
    const size = { cranks: 40, pins: 4, mains: 0, rods: 165, shells: 360, step: 1 };
    const { grid, stages } = await passes(workshopStock(4, size), { seconds: 3 });
    expect(grid).toBeGreaterThan(1);
    expect(stages.find(({ aim }) => aim === 'distance from the aim')!.reached).toBeGreaterThan(0);
  });
});

test('the recheck shares nothing with the search: of the matching it imports its own files and types of data', () => {
  const folder = new URL('../../../src/maths/matching/', import.meta.url);
  const files = [
    'recheck.ts',
    'recheck-rows.ts',
    'recheck-sets.ts',
    'recheck-together.ts',
    'recheck-values.ts',
  ];
  const imported = files.flatMap((name) =>
    importsOf(name, readFileSync(fileURLToPath(new URL(name, folder)), 'utf8')),
  );
  const general = ['clearance', 'conformity', 'decimal', 'grain', 'guards', 'uncertainty'].map(
    (name) => `../${name}.js`,
  );
  const own = [...files.map((name) => `./${name.replace(/ts$/, 'js')}`), './stock.js'];
  expect([...new Set(imported)].filter((path) => ![...general, ...own].includes(path!))).toEqual([]);
  expect(importsOf('stock.ts', readFileSync(fileURLToPath(new URL('stock.ts', folder)), 'utf8'))).toEqual([
    '../clearance.js',
    '../grain.js',
    '../uncertainty.js',
  ]);
});
