import { describe, expect, test } from 'vitest';
import type { Stock, StockJournal } from '../../../src/maths/matching/stock.js';
import { OpenFits } from '../../../src/maths/suggestions/open-fits.js';
import { bestByTryingAll } from '../matching/every-set.js';
import { tinyStock } from '../matching/random-stock.js';

/** The stock with one journal alone, and of the rest what is given. */
function alone(stock: Stock, journal: StockJournal, others: Partial<Stock> = {}): Stock {
  return { ...stock, engines: [{ name: 'alone', journals: [journal] }], ...others };
}

const canBeFilled = (stock: Stock) => bestByTryingAll(stock)[0] === -1;
const LOOSE = (stock: Stock): Partial<Stock> => ({
  kinds: stock.kinds.map((kind) => ({ ...kind, halfDifference: undefined })),
});

describe('against every set that could be tried', () => {
  const stocks = Array.from({ length: 250 }, (_, place) => ({
    seed: place + 1,
    stock: tinyStock(place + 1),
  }));
  const journals = stocks.flatMap(({ seed, stock }) =>
    stock.engines.flatMap((engine) =>
      engine.journals.filter(({ part }) => part).map((journal) => ({ seed, stock, journal })),
    ),
  );

  test('what stands in the way of a journal', () => {
    const seen = new Map<string, number>();
    for (const { seed, stock, journal } of journals) {
      const obstacle = new OpenFits(stock).obstacleOf(journal);
      seen.set(obstacle, (seen.get(obstacle) ?? 0) + 1);
      const fills = canBeFilled(alone(stock, journal));
      expect(obstacle === 'taken', `seed ${seed}, ${journal.name}: ${obstacle}`).toBe(fills);
      const loose = canBeFilled(alone(stock, journal, LOOSE(stock)));
      if (obstacle === 'half difference' || obstacle === 'no fit') {
        expect(obstacle === 'half difference', `seed ${seed}, ${journal.name}`).toBe(loose);
      }
    }
    expect([...seen.keys()].sort()).toEqual([
      'half difference',
      'no fit',
      'no lower shell',
      'no mass',
      'no rod',
      'no upper shell',
      'taken',
    ]);
  });

  test('the rods that are open to a journal', () => {
    let open = 0;
    for (const { seed, stock, journal } of journals) {
      if (journal.caseBore) continue;
      const fits = new OpenFits(stock);
      const tried = stock.rods.filter((rod) => canBeFilled(alone(stock, journal, { rods: [rod] })));
      expect(fits.rodsFor(journal), `seed ${seed}, ${journal.name}`).toEqual(tried);
      expect(stock.rods.filter((rod) => fits.isOpenToRod(journal, rod))).toEqual(tried);
      open += tried.length;
    }
    expect(open).toBeGreaterThan(50);
  });

  test('the shells that are open to a journal, half by half', () => {
    let open = 0;
    for (const { seed, stock, journal } of journals) {
      const fits = new OpenFits(stock);
      for (const side of ['upper', 'lower'] as const) {
        const tried = stock.shells.filter((shell) => {
          if (shell.half !== side && shell.half !== 'either') return false;
          // The shell on its side, whatever else there is on the other.
          const onSide = { ...shell, half: side, quantity: 1 };
          const turned = <Row extends { half: string }>(rows: readonly Row[]) =>
            rows
              .filter(({ half }) => half !== side)
              .map((row) => ({ ...row, half: side === 'upper' ? 'lower' : 'upper' }) as Row);
          const rest = stock.shells.filter((other) => other !== shell);
          const second =
            shell.quantity > 1 ? [{ ...shell, name: 'second', quantity: shell.quantity - 1 }] : [];
          const shells = [onSide, ...turned([...rest, ...second])];
          return canBeFilled(alone(stock, journal, { shells, newShells: turned(stock.newShells) }));
        });
        expect(fits.shellsFor(journal, side), `seed ${seed}, ${journal.name}, ${side}`).toEqual(tried);
        open += tried.length;
      }
    }
    expect(open).toBeGreaterThan(100);
  });
});
