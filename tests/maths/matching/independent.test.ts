/** Engine types share no part: the best sets of a shelf of several are the best of each (plain logic, no source). */
import { describe, expect, test } from 'vitest';
import { independentKinds } from '../../../src/maths/matching/independent.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import { ofType, together, workshopStock } from './random-stock.js';

const SIZE = { cranks: 3, pins: 3, mains: 2, rods: 9, shells: 18, wear: 4500, newShells: true };

describe('engine types', () => {
  test.each([1, 2, 3, 4, 5, 6])('are matched as well together as alone (seed %i)', async (seed) => {
    const [a, b] = [ofType('A', workshopStock(seed, SIZE)), ofType('B', workshopStock(seed + 100, SIZE))];
    const [one, other, both] = [await matchStock(a), await matchStock(b), await matchStock(together(b, a))];
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
    const stock = together(ofType('A', workshopStock(1, SIZE)), ofType('B', workshopStock(2, SIZE)));
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
