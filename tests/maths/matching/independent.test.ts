/** Engine types share no part: the best sets of a shelf of several are the best of each (plain logic, no source). */
import { describe, expect, test } from 'vitest';
import { independentKinds } from '../../../src/maths/matching/independent.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { Stock } from '../../../src/maths/matching/stock.js';
import { workshopStock } from './random-stock.js';

/** A scarce stock of one engine type, with names of its own. */
function shelfOf(engineType: string, seed: number): Stock {
  const stock = workshopStock(seed, {
    cranks: 3,
    pins: 3,
    mains: 2,
    rods: 9,
    shells: 18,
    wear: 450,
    newShells: true,
  });
  const own = <Row extends object>(row: Row) => ({ ...row, engineType });
  const named = <Row extends { name: string; ran?: { engine: string; position: string } | undefined }>(
    row: Row,
  ) => ({
    ...row,
    name: engineType + row.name,
    ran: row.ran && { ...row.ran, engine: engineType + row.ran.engine },
  });
  return {
    ...stock,
    kinds: stock.kinds.map(own),
    engines: stock.engines.map(({ name, journals }) => ({
      name: engineType + name,
      journals: journals.map((journal) => ({
        ...named(own(journal)),
        caseBore: journal.caseBore && named(journal.caseBore),
      })),
    })),
    rods: stock.rods.map(own).map(named),
    shells: stock.shells.map(own).map(named),
    newShells: stock.newShells.map(own),
  };
}

function together(a: Stock, b: Stock): Stock {
  return {
    ...a,
    kinds: [...a.kinds, ...b.kinds],
    engines: [...b.engines, ...a.engines],
    rods: [...a.rods, ...b.rods],
    shells: [...b.shells, ...a.shells],
    newShells: [...a.newShells, ...b.newShells],
  };
}

describe('engine types', () => {
  test.each([1, 2, 3, 4, 5, 6])('are matched as well together as alone (seed %i)', async (seed) => {
    const [a, b] = [shelfOf('A', seed), shelfOf('B', seed + 100)];
    const [one, other, both] = [await matchStock(a), await matchStock(b), await matchStock(together(a, b))];
    const names = ({ fits }: typeof both) =>
      fits.map(({ journal, bore, upper, lower }) => [
        journal.name,
        bore.name,
        ...[upper, lower].map(({ shell }) => ('name' in shell ? shell.name : shell.mark)),
      ]);
    expect(names(both)).toEqual([...names(one), ...names(other)]);
    for (const [place, { aim, reached, bound }] of both.stages.entries()) {
      const [own, others] = [one.stages[place]!, other.stages[place]!];
      expect([aim, aim]).toEqual([own.aim, others.aim]);
      expect(reached).toBeCloseTo(own.reached + others.reached, 9);
      expect(bound).toBe(reached);
    }
  });

  test('that meet in one engine, or in a case bore, are not parted', () => {
    const stock = together(shelfOf('A', 1), shelfOf('B', 2));
    expect(independentKinds(stock).map(({ size }) => size)).toEqual([2, 2]);
    const [first, ...others] = stock.engines;
    const last = others.pop()!;
    const joined = { name: 'both', journals: [...first!.journals, ...last.journals] };
    expect(independentKinds({ ...stock, engines: [...others, joined] })).toHaveLength(1);
    const bores = [first!, last].map((engine) => ({
      ...engine,
      journals: engine.journals.map((journal) => ({
        ...journal,
        caseBore: journal.caseBore && { ...journal.caseBore, name: 'the same' },
      })),
    }));
    expect(independentKinds({ ...stock, engines: [...others, ...bores] })).toHaveLength(1);
  });
});
