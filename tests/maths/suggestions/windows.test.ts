import { describe, expect, test } from 'vitest';
import type { Stock } from '../../../src/maths/matching/stock.js';
import { SingleFitRules } from '../../../src/maths/suggestions/rules.js';
import { intersect, type Sensitivity, windowOf } from '../../../src/maths/suggestions/windows.js';
import type { MeasuredPart } from '../../../src/maths/uncertainty.js';
import { pick, type Random, randomOf, wholeOf } from '../matching/random-stock.js';
import { measuredBy } from './facts.js';

const PLACES = ['bore', 'upper', 'lower', 'journal'] as const;

const MIC = { gauge: 'mic', maxError: 100, isConstant: true };
const measures = [
  measuredBy([], 0),
  measuredBy([MIC], 900),
  measuredBy([{ gauge: 'other', maxError: 60, isConstant: true }, MIC], 400),
  measuredBy([{ gauge: 'third', maxError: 150, isConstant: false }], 900),
];

function roughly(random: Random, size: number): MeasuredPart {
  const part = pick(random, measures)(size + wholeOf(random, -900, 900));
  return {
    ...part,
    smallest: part.size - wholeOf(random, 0, 200),
    largest: part.size + wholeOf(random, 0, 200),
  };
}

function rulesOf(random: Random) {
  const kind = { engineType: 'A', fit: 'big end' };
  const min = 2000 + wholeOf(random, 0, 999);
  const max = min + wholeOf(random, 100, 3000);
  const serviceLimit = random() < 0.5 ? max + wholeOf(random, 0, 900) : undefined;
  const limits = {
    ...kind,
    min,
    max,
    serviceLimit,
    aim: undefined,
    halfDifference: undefined,
    massSpread: undefined,
  };
  const stock: Stock = {
    kinds: [limits],
    engines: [],
    rods: [],
    shells: [],
    newShells: [],
    confidence: pick(random, [0.5, 0.95, 0.9999]),
    allowUndecided: random() < 0.3,
    allowWorn: false,
    preferKeptPairs: false,
    rodsStay: false,
    newWithUsed: true,
  };
  return { rules: new SingleFitRules(stock), limits };
}

describe('a window holds every allowed size and no other', () => {
  test.each([
    ['bore', 1],
    ['upper', -1],
    ['journal', -1],
    ['both walls', -2],
  ] as const)('%s', (place, sensitivity: Sensitivity) => {
    const random = randomOf(7);
    let [wide, none] = [0, 0];
    for (let round = 0; round < 60; round++) {
      const { rules, limits } = rulesOf(random);
      const nominal = { bore: 51_004_000, upper: 1_500_000, lower: 1_500_000, journal: 48_000_000 };
      const given = Object.fromEntries(
        PLACES.map((each) => [each, roughly(random, nominal[each])]),
      ) as Record<(typeof PLACES)[number], MeasuredPart>;
      const measure = pick(random, measures);
      const fitWith = (size: number) =>
        place === 'both walls'
          ? { ...given, upper: measure(size), lower: measure(size) }
          : { ...given, [place]: measure(size) };
      const window = windowOf(rules, limits, fitWith, sensitivity);
      // All sizes within reach of the range, one grain after the other.
      const middle = nominal[place === 'both walls' ? 'upper' : place];
      const allowed: number[] = [];
      for (let size = middle - 6500; size <= middle + 6500; size++) {
        const parts = fitWith(size);
        const loosest =
          parts.bore.largest - parts.upper.smallest - parts.lower.smallest - parts.journal.smallest;
        // Beside a Service limit an undecided fit is allowed again, which is not what anybody looks for.
        if (rules.suits(parts, limits) && loosest - rules.guardsOf(parts).outside <= limits.max)
          allowed.push(size);
      }
      expect(window, `round ${round}`).toEqual(
        allowed.length === 0 ? undefined : { from: allowed[0], to: allowed.at(-1) },
      );
      if (window) {
        wide++;
        expect(allowed).toHaveLength(window.to - window.from + 1);
      } else none++;
    }
    expect(Math.min(wide, none)).toBeGreaterThan(2);
  });
});

test('two windows meet where they share a size', () => {
  expect(intersect({ from: 1, to: 5 }, { from: 5, to: 9 })).toEqual({ from: 5, to: 5 });
  expect(intersect({ from: 1, to: 4 }, { from: 5, to: 9 })).toBeUndefined();
});
