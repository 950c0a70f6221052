/** Published values that matching can be held against; each source stands beside its numbers. */
import { describe, expect, test } from 'vitest';
import { clearanceOf } from '../../../src/maths/clearance.js';
import { grainOfMm } from '../../../src/maths/grain.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { Stock, StockEngine, StockRod, StockShell } from '../../../src/maths/matching/stock.js';
import { CERTAIN, type MeasuredPart } from '../../../src/maths/uncertainty.js';
import { randomOf, shuffled, shuffledStock } from './random-stock.js';

const between = (smallest: number, largest: number): MeasuredPart => ({
  smallest,
  largest,
  size: Math.round((smallest + largest) / 2),
  ...CERTAIN,
});

const kind = { engineType: 'A', fit: 'big end' };

function stockOf(
  limits: { min: number; max: number },
  journals: readonly (readonly [number, number])[],
  bores: readonly (readonly [number, number])[],
  walls: readonly (readonly [number, number])[],
  perEngine: number,
): Stock {
  const engines: StockEngine[] = [];
  for (const [place, [low, high]] of journals.entries()) {
    const name = `engine ${Math.floor(place / perEngine)}`;
    const journal = {
      ...kind,
      name: `journal ${place}`,
      position: `${place % perEngine}`,
      part: between(low, high),
      caseBore: undefined,
    };
    const own = engines.findIndex((engine) => engine.name === name);
    if (own < 0) engines.push({ name, journals: [journal] });
    else engines[own] = { name, journals: [...engines[own]!.journals, journal] };
  }
  const rods = bores.map(
    ([low, high], place): StockRod => ({
      name: `rod ${place}`,
      engineType: 'A',
      part: between(low, high),
      mass: undefined,
      ran: undefined,
    }),
  );
  const shells = walls.map(
    ([low, high], place): StockShell => ({
      ...kind,
      name: `shell ${place}`,
      half: 'either',
      quantity: 2,
      part: between(low, high),
      ran: undefined,
    }),
  );
  const aim = (limits.min + limits.max) / 2;
  return {
    kinds: [
      { ...kind, ...limits, serviceLimit: undefined, aim, halfDifference: undefined, massSpread: undefined },
    ],
    engines,
    rods,
    shells,
    newShells: [],
    confidence: 0.95,
    allowUndecided: false,
    allowWorn: false,
    preferKeptPairs: false,
    rodsStay: false,
    newWithUsed: true,
  };
}

/**
 * TM 10-3930-653-14&P, pp. 4-2: bore 87.200 to 87.250 mm, piston 87.165 to 87.215 mm, clearance .025 to
 * .045 mm. Worst cases of any piston in any bore are −.015 and .085; in five groups of .010, like groups
 * give the printed clearance exactly (printed inputs, the groups derived from them). The manual's parts
 * have no shells: the two walls here are of one size and the bores are wider by both.
 */
describe('five groups of the printed tolerances', () => {
  const wall = grainOfMm(1.5);
  const group = grainOfMm(0.01);
  const groups = [0, 1, 2, 3, 4];
  const bores = groups.map((each) => {
    const low = grainOfMm(87.2) + each * group;
    return [low + 2 * wall, low + group + 2 * wall] as const;
  });
  const pistons = groups.map((each) => {
    const low = grainOfMm(87.165) + each * group;
    return [low, low + group] as const;
  });
  const limits = { min: grainOfMm(0.025), max: grainOfMm(0.045) };
  const walls = groups.map(() => [wall, wall] as const);

  test('whole tolerances allow no fit: worst cases −.015 and .085', async () => {
    const bore = [grainOfMm(87.2) + 2 * wall, grainOfMm(87.25) + 2 * wall] as const;
    const piston = [grainOfMm(87.165), grainOfMm(87.215)] as const;
    const { tightest, loosest } = clearanceOf({
      bore: between(...bore),
      journal: between(...piston),
      upper: between(wall, wall),
      lower: between(wall, wall),
    });
    expect([tightest, loosest]).toEqual([grainOfMm(-0.015), grainOfMm(0.085)]);
    expect((await matchStock(stockOf(limits, [piston], [bore], walls, 1))).fits).toEqual([]);
  });

  test('five groups allow like to like alone, each at the printed .025 to .045', async () => {
    const stock = shuffledStock(randomOf(1), stockOf(limits, pistons, bores, walls, 5));
    const { fits, completeEngines, stages } = await matchStock(stock);
    expect(completeEngines).toEqual(['engine 0']);
    for (const { parts, journal, bore } of fits) {
      expect(bore.name.replace('rod', 'journal')).toBe(journal.name);
      expect(clearanceOf(parts)).toMatchObject({ tightest: limits.min, loosest: limits.max });
    }
    expect(stages.map(({ reached, bound }) => [reached, bound])).toEqual([
      [1, 1],
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
  });
});

/**
 * The principle of class marks (constructed, no vendor's table): bores 56.000 + .006 (i − 1) to + .006 i,
 * journals 52.500 − .006 j to − .006 (j − 1), walls of class i + j − 1: 1.7300 + .003 (s − 1) to + .003 s.
 * Every one of the 16 pairs of classes then runs at 34 to 52 µm.
 */
describe('class marks', () => {
  const marks = [1, 2, 3, 4];
  const bores = marks.map((i) => [grainOfMm(56 + 0.006 * (i - 1)), grainOfMm(56 + 0.006 * i)] as const);
  const journals = marks.map(
    (j) => [grainOfMm(52.5 - 0.006 * j), grainOfMm(52.5 - 0.006 * (j - 1))] as const,
  );
  const wall = (s: number) => [grainOfMm(1.73 + 0.003 * (s - 1)), grainOfMm(1.73 + 0.003 * s)] as const;
  const limits = { min: grainOfMm(0.034), max: grainOfMm(0.052) };

  test('each of the 16 pairs takes the shell of class i + j − 1 and runs at 34 to 52 µm', async () => {
    for (const i of marks) {
      for (const j of marks) {
        const walls = [1, 2, 3, 4, 5, 6, 7].map(wall);
        const { fits } = await matchStock(stockOf(limits, [journals[j - 1]!], [bores[i - 1]!], walls, 1));
        expect(fits).toHaveLength(1);
        expect(clearanceOf(fits[0]!.parts)).toMatchObject({ tightest: limits.min, loosest: limits.max });
        const shells = [fits[0]!.upper, fits[0]!.lower].map(
          ({ shell }) => shell.part.smallest + shell.part.largest,
        );
        const [low, high] = wall(i + j - 1);
        expect(shells[0]! + shells[1]!).toBe(2 * (low + high));
      }
    }
  });

  test('with shells of class 4 alone, 16 to 70 µm, only the pairs with i + j = 5 are made', async () => {
    const walls = marks.map(() => wall(4));
    const stock = stockOf(limits, shuffled(randomOf(2), journals), shuffled(randomOf(3), bores), walls, 4);
    const { fits, completeEngines } = await matchStock(stock);
    expect(completeEngines).toEqual(['engine 0']);
    for (const { parts } of fits) {
      expect(clearanceOf(parts)).toMatchObject({ tightest: limits.min, loosest: limits.max });
    }
    const worst = clearanceOf({
      bore: between(bores[0]![0], bores[3]![1]),
      journal: between(journals[3]![0], journals[0]![1]),
      upper: between(...wall(4)),
      lower: between(...wall(4)),
    });
    expect([worst.tightest, worst.loosest]).toEqual([grainOfMm(0.016), grainOfMm(0.07)]);
  });
});
