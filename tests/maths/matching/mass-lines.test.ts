/** The runs of rods that hold all cranks: they never forbid sets, and they meet what the masses leave. */
import { describe, expect, test } from 'vitest';
import { MassLines } from '../../../src/maths/matching/mass-lines.js';
import { withinMassSpread } from '../../../src/maths/matching/mass-windows.js';
import { matchStock } from '../../../src/maths/matching/match.js';
import { orderStock } from '../../../src/maths/matching/order.js';
import { problemOf } from '../../../src/maths/matching/problem.js';
import { randomOf, shuffled, workshopStock } from './random-stock.js';

const SPREAD = 3;
const size = { cranks: 6, pins: 4, mains: 0, rods: 30, shells: 60, massSpread: SPREAD };

/** Cranks of one to four rods within the spread, drawn at random from those left. */
function drawCranks(masses: readonly number[], random: () => number): number[][] {
  const cranks: number[][] = [];
  let left = shuffled(random, [...masses.keys()]);
  while (left.length > 0 && cranks.length < size.cranks) {
    const [first, ...others] = left as [number, ...number[]];
    const crank = [first];
    const most = 1 + Math.floor(random() * size.pins);
    for (const rod of others) {
      const own = [...crank, rod].map((each) => masses[each]!);
      if (crank.length < most && withinMassSpread(own, SPREAD)) crank.push(rod);
    }
    cranks.push(crank);
    left = left.filter((rod) => !crank.includes(rod));
  }
  return cranks;
}

describe('the rows of the runs', () => {
  test('are kept by any cranks within the mass spread, of equal or unequal numbers of rods', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const problem = problemOf(orderStock(workshopStock(seed, size)), { merge: false });
      const limits: number[] = [];
      const lines = new MassLines(problem, (upper) => limits.push(upper) - 1);
      const rodOf = problem.rods.flatMap((each, rod) => each.rods.map(() => rod));
      const masses = problem.rods.flatMap(({ rods }) => rods.map(({ mass }) => mass!));
      const random = randomOf(seed);
      for (let draw = 0; draw < 10; draw++) {
        const cranks = drawCranks(masses, random).map((crank) => crank.map((place) => rodOf[place]!));
        const sums = limits.map(() => 0);
        const runs = lines.runsOf('A', cranks);
        expect(runs.length).toBe(cranks.length);
        for (const run of runs) for (const [row, value] of lines.ofRun(run)) sums[row]! += value;
        for (const rod of cranks.flat()) for (const [row, value] of lines.ofRod(rod)) sums[row]! += value;
        const broken = limits.flatMap((upper, row) =>
          sums[row]! > upper ? [{ seed, row, sum: sums[row] }] : [],
        );
        expect(broken).toEqual([]);
        const known = new Set(lines.runs.map((run) => JSON.stringify(run)));
        for (const run of runs) expect(known).toContain(JSON.stringify(run));
      }
    }
  });
});

test('scarce rods with a mass spread: the distance from the aim is proved', async () => {
  const scarce = { cranks: 5, pins: 4, mains: 0, rods: 22, shells: 46, massSpread: 2.5 };
  const stock = workshopStock(3, scarce);
  const forget = <Row extends object>(row: Row): Row => ({ ...row, ran: undefined });
  const { stages } = await matchStock({
    ...stock,
    rods: stock.rods.map(forget),
    shells: stock.shells.map(forget),
  });
  expect(stages.map(({ reached, bound }) => reached - bound)).toEqual([0, 0, 0, 0, 0]);
  expect(stages[2]!.reached).toBe(37_751);
});
