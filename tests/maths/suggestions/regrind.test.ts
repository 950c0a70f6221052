import { describe, expect, test } from 'vitest';
import { matchStock } from '../../../src/maths/matching/match.js';
import type { Stock, StockJournal, StockNewShell } from '../../../src/maths/matching/stock.js';
import { crankPlans } from '../../../src/maths/suggestions/crank-plan.js';
import type { Window } from '../../../src/maths/suggestions/windows.js';
import { CERTAIN } from '../../../src/maths/uncertainty.js';
import { withPlan } from './add-parts.js';
import { factsOf, measuredBy } from './facts.js';

/** Grains of a length in mm. */
const mm = (length: number) => Math.round(length * 1_000_000);

const KIND = { engineType: 'A', fit: 'big end' };
const MIC = measuredBy([{ gauge: 'mic', maxError: 1000, isConstant: true }], 200 ** 2);
const BORE_GAUGE = measuredBy([{ gauge: 'bore gauge', maxError: 800, isConstant: true }], 200 ** 2);

const pin = (position: number, size: number): StockJournal => ({
  ...KIND,
  name: `pin ${position}`,
  position: `${position}`,
  part: MIC(mm(size)),
  caseBore: undefined,
});

/** Bore 51.04, walls of about 1.5 for pins of 48.00: a clearance of 0.04. */
function stockOf(pins: readonly number[], rods: readonly number[]): Stock {
  return {
    kinds: [
      {
        ...KIND,
        min: mm(0.025),
        max: mm(0.055),
        serviceLimit: undefined,
        aim: undefined,
        halfDifference: undefined,
        massSpread: undefined,
      },
    ],
    engines: [{ name: 'c', journals: pins.map((size, place) => pin(place + 1, size)) }],
    rods: rods.map((size, place) => ({
      name: `rod ${place + 1}`,
      engineType: 'A',
      part: BORE_GAUGE(mm(size)),
      mass: undefined,
      ran: undefined,
    })),
    shells: [],
    newShells: [],
    confidence: 0.95,
    allowUndecided: false,
    allowWorn: false,
    preferKeptPairs: false,
    rodsStay: false,
    newWithUsed: true,
  };
}

/** A shell of a step, thicker by half of what is ground away. */
const shell = (mark: string, wall: number, price = 9): StockNewShell => ({
  ...KIND,
  mark,
  half: 'either',
  part: {
    size: mm(wall),
    smallest: mm(wall) - mm(0.001),
    largest: mm(wall) + mm(0.001),
    ...CERTAIN,
  },
  price,
});

const STEPS = [
  { step: '0.50', from: mm(47.48), to: mm(47.5), newShells: [shell('U50', 1.75)] },
  { step: '0.25', from: mm(47.73), to: mm(47.75), newShells: [shell('U25', 1.625)] },
];

/** The bores that rods of the type may have. */
const BORES: Window = { from: mm(51.02), to: mm(51.06) };

const plansOf = async (stock: Stock, undersizes = STEPS) => {
  const matched = await matchStock(stock);
  const newShells = undersizes.flatMap((step) => step.newShells);
  return { matched, facts: factsOf(stock, { undersizes, newShells, boreRange: BORES }) };
};

describe('grinding to the next undersize', () => {
  test('is for all journals of the fit, and completes the crank at both ends of its window', async () => {
    const stock = stockOf([47.9, 47.92, 47.94], [51.04, 51.035, 51.03]);
    const { matched, facts } = await plansOf(stock);
    const [plan] = crankPlans(stock, matched, facts);
    expect(plan).toMatchObject({ places: [], open: [] });
    const [regrind] = plan!.regrinds;
    expect(regrind).toMatchObject({ step: '0.25', price: 54 });
    expect(regrind!.places.map(({ journal }) => journal.name).sort()).toEqual(['pin 1', 'pin 2', 'pin 3']);
    expect(regrind!.window.from).toBeGreaterThanOrEqual(mm(47.73));
    expect(regrind!.window.to).toBeLessThanOrEqual(mm(47.75));
    for (const at of [({ from }: Window) => from, ({ to }: Window) => to]) {
      const again = await matchStock(withPlan(stock, plan!, facts, at));
      expect(again.completeEngines).toEqual(['c']);
    }
    const outside = await matchStock(withPlan(stock, plan!, facts, ({ from }) => from - 1));
    expect(outside.completeEngines).toEqual([]);
  });

  test('passes over a step that a journal is too small for', async () => {
    const stock = stockOf([47.9, 47.74, 47.72], [51.04, 51.035, 51.03]);
    const { matched, facts } = await plansOf(stock);
    expect(crankPlans(stock, matched, facts)[0]!.regrinds[0]!.step).toBe('0.50');
  });

  test('never grinds a journal to more than it measures', async () => {
    const stock = stockOf([47.9, 47.74], [51.04, 51.04]);
    const { matched, facts } = await plansOf(stock);
    const [regrind] = crankPlans(stock, matched, facts)[0]!.regrinds;
    expect(regrind).toMatchObject({ step: '0.25' });
    expect(regrind!.window.to).toBeLessThanOrEqual(mm(47.74));
  });

  test.each([
    ['no rod is left for an empty journal', stockOf([47.9, 47.92], [51.04]), STEPS],
    ['a journal is not measured', stockOf([47.9, 47.92], [51.04, 51.04]), STEPS],
    [
      'no shells are sold for a step',
      stockOf([47.9], [51.04]),
      STEPS.map((step) => ({ ...step, newShells: [] })),
    ],
    [
      'the shells of a step are too thick',
      stockOf([47.9], [51.04]),
      STEPS.map((step) => ({ ...step, newShells: [shell('X', 1.9)] })),
    ],
  ])('is not suggested where %s', async (name, stock, steps) => {
    const [engine] = stock.engines;
    const [first, ...others] = engine!.journals;
    const unmeasured = {
      ...stock,
      engines: [{ ...engine!, journals: [{ ...first!, part: undefined }, ...others] }],
    };
    const given = name.includes('not measured') ? unmeasured : stock;
    const { matched, facts } = await plansOf(given, steps);
    expect(crankPlans(given, matched, facts)[0]!.regrinds).toEqual([]);
  });

  test('is passed over where parts that can be had fill the crank', async () => {
    const stock = stockOf([48, 48], [51.04, 51.04]);
    const { matched } = await plansOf(stock);
    const facts = factsOf(stock, { undersizes: STEPS, newShells: [shell('STD', 1.5)], boreRange: BORES });
    const [plan] = crankPlans(stock, matched, facts);
    expect(plan!.regrinds).toEqual([]);
    expect(plan!.places.flatMap(({ added }) => added)).toHaveLength(4);
  });
});
