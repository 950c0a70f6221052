/**
 * What the verdict of a part promises, on drawn readings: of parts that lie on a limit one in twenty is called beyond it,
 * and one in twenty within it.
 *
 * Source of the promise: ISO 14253-1:2017.
 */
import { describe, expect, test } from 'vitest';
import { drawsOf } from '../../scripts/simulate/draws.js';
import { outcomeOf } from '../../src/maths/conformity.js';
import { formGroups, formOf, type Spot } from '../../src/maths/form.js';
import { extremesGuards, formGuards, type Guards } from '../../src/maths/guards.js';
import { CERTAIN } from '../../src/maths/uncertainty.js';

const DRAWS = 20_000;
/** 5 %, and four standard deviations of such a count. */
const MOST = 0.05 + 4 * Math.sqrt((0.05 * 0.95) / DRAWS);
/** Standard deviations in grains: of one reading, and of all readings of a part together. */
const [SCATTER, COMMON] = [2000, 1500];
const SIZE = 42_000_000;

/** The spots of a part of so many stations and angles, each off from what it is. */
function read(stations: number, angles: number, sizeAt: (station: number, angle: number) => number): Spot[] {
  return Array.from({ length: stations * angles }, (_, at): Spot => {
    const [station, angle] = [Math.floor(at / angles), at % angles];
    return { station: `${station}`, angle, readings: [Math.round(sizeAt(station, angle))] };
  });
}

function shareOf(draw: () => { side: 'at least' | 'at most'; value: number; limit: number; guards: Guards }) {
  const counts = { passes: 0, fails: 0, undecided: 0 };
  for (let done = 0; done < DRAWS; done++) {
    counts[outcomeOf({ ...draw(), quantity: 'size', limitName: 'limit' })] += 1;
  }
  return { passes: counts.passes / DRAWS, fails: counts.fails / DRAWS };
}

describe.each([1, 2, 4, 6, 12])('a round and parallel part on its limits, %i spots', (count) => {
  const part = { ...CERTAIN, spots: count, readVariance: SCATTER ** 2, temperatureVariance: COMMON ** 2 };
  const guards = extremesGuards(0.95, part);

  test.each(['at least', 'at most'] as const)('%s', (side) => {
    const draws = drawsOf(30 + count);
    const { passes, fails } = shareOf(() => {
      const shift = draws.normal(COMMON);
      const { smallest, largest } = formOf(read(count, 1, () => SIZE + shift + draws.normal(SCATTER)));
      return { side, value: side === 'at least' ? smallest : largest, limit: SIZE, guards };
    });
    expect(passes).toBeLessThanOrEqual(MOST);
    expect(fails).toBeLessThanOrEqual(MOST);
    // Nor is the guard wider than it takes: it is of a normal distribution, which extremes are nearly of.
    expect(fails).toBeGreaterThan(0.03);
  });
});

describe.each([
  [1, 2],
  [2, 2],
  [4, 2],
  [1, 3],
  [3, 4],
])('a part out of round by its limit at every station: %i stations of %i angles', (stations, angles) => {
  const LIMIT = 30_000;

  test('is seldom called beyond it, and seldom within it', () => {
    const draws = drawsOf(50 + 10 * stations + angles);
    const truth = (angle: number) => SIZE + (angle === 0 ? LIMIT : 0);
    const { passes, fails } = shareOf(() => {
      const spots = read(stations, angles, (_, angle) => truth(angle) + draws.normal(SCATTER));
      const guards = formGuards(0.95, SCATTER ** 2, formGroups(spots, 'out of round'));
      return { side: 'at most', value: formOf(spots).outOfRound!, limit: LIMIT, guards };
    });
    expect(passes).toBeLessThanOrEqual(MOST);
    expect(fails).toBeLessThanOrEqual(MOST);
    // Pairs err to either side of their difference, by just what the guard allows for.
    if (angles === 2) expect(fails).toBeGreaterThan(0.04);
  });
});
