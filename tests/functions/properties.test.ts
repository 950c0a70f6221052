/** What holds for any lengths, through the engine. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exact } from '../../src/maths/decimal.js';
import { type Grain, grainOfRatio, mmOfGrain } from '../../src/maths/grain.js';
import { grainOf, inUnit, type LengthUnit, toMm } from '../../src/maths/units.js';
import { evaluate } from './sheet.js';

/** A size between 20 and 120 mm, on the grain. */
const bores: fc.Arbitrary<Grain> = fc.integer({ min: 20_000_000, max: 120_000_000 });
const walls: fc.Arbitrary<Grain> = fc.integer({ min: 1_000_000, max: 5_000_000 });
const units: fc.Arbitrary<LengthUnit> = fc.constantFrom('mm', 'in', 'µm');
const RUNS = { numRuns: 150 };

describe('lengths', () => {
  test('mm to inch to mm returns the same grain', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), units, (grain, unit) => {
        expect(grainOf(inUnit(grain, unit), unit)).toBe(grain);
      }),
      { numRuns: 20_000 },
    );
  });

  test('a double is rounded as the decimal that names it', () => {
    const numbers = fc.oneof(
      fc.double({ min: -200, max: 200, noNaN: true }),
      // Decimals that lie on a half of a grain, or one unit of the eighth decimal beside it.
      fc.integer({ min: -90_000_000, max: 90_000_000 }).map((tens) => (tens * 100 + 50) / 1e8),
      fc.integer({ min: -9_000_000_000, max: 9_000_000_000 }).map((whole) => whole / 1e8),
      fc.double({ min: -1e12, max: 1e12, noNaN: true }),
    );
    fc.assert(
      fc.property(numbers, units, (value, unit) => {
        expect(grainOf(value, unit) + 0).toBe(grainOfRatio(toMm(exact(value), unit)) + 0);
      }),
      { numRuns: 20_000 },
    );
  });

  test('a size of one cell comes back from the engine in any unit', () => {
    fc.assert(
      fc.property(bores, fc.constantFrom('mm', 'in'), (grain, unit) => {
        const found = evaluate('=PART_SIZE(Cells!A1)', [[inUnit(grain, unit)]], { lengthUnit: unit });
        expect(grainOf(found as number, unit)).toBe(grain);
      }),
      RUNS,
    );
  });
});

describe('clearances', () => {
  const parts = fc.record({ bore: bores, upper: walls, lower: walls, journal: bores });

  test('are the exact difference of the four sizes', () => {
    fc.assert(
      fc.property(parts, ({ bore, upper, lower, journal }) => {
        const cells = [[bore, upper, lower, journal].map(mmOfGrain)];
        const found = evaluate('=SHELL_CLEARANCE(Cells!A1, Cells!B1, Cells!C1, Cells!D1)', cells);
        expect(found).toBe(mmOfGrain(bore - upper - lower - journal));
      }),
      RUNS,
    );
  });

  test('a larger bore never lowers one, whichever spot grows', () => {
    const cases = fc.record({
      spots: fc.array(bores, { minLength: 3, maxLength: 3 }),
      spot: fc.integer({ min: 0, max: 2 }),
      growth: fc.integer({ min: 1, max: 50_000 }),
      name: fc.constantFrom('SHELL_CLEARANCE', 'TIGHTEST_CLEARANCE', 'LOOSEST_CLEARANCE'),
    });
    fc.assert(
      fc.property(cases, ({ spots, spot, growth, name }) => {
        const of = (readings: readonly Grain[]) =>
          evaluate(`=${name}(Cells!A1:C1, 1.5, 1.5, 40)`, [readings.map(mmOfGrain)]) as number;
        expect(
          of(spots.map((value, place) => (place === spot ? value + growth : value))),
        ).toBeGreaterThanOrEqual(of(spots));
      }),
      RUNS,
    );
  });

  test('tightest ≤ mean ≤ loosest', () => {
    const spots = fc.array(bores, { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(spots, spots, (bore, journal) => {
        const cells = [bore.map(mmOfGrain), journal.map(mmOfGrain)];
        const last = (count: number) => String.fromCharCode(64 + count);
        const [tightest, mean, loosest] = ['TIGHTEST', 'SHELL', 'LOOSEST'].map((name) =>
          evaluate(
            `=${name}_CLEARANCE(Cells!A1:${last(bore.length)}1, 1.5, 1.5, Cells!A2:${last(journal.length)}2)`,
            cells,
          ),
        ) as [number, number, number];
        expect(tightest).toBeLessThanOrEqual(mean);
        expect(mean).toBeLessThanOrEqual(loosest);
      }),
      RUNS,
    );
  });
});

describe('FIT_STATUS', () => {
  const ORDER = ['tight', 'in range', 'within service limit', 'loose'];
  const status = (clearance: Grain, u: number) =>
    evaluate('=FIT_STATUS(Cells!A1, Cells!A1, 0.02, 0.06, Cells!B1, 0.1)', [
      [mmOfGrain(clearance), u],
    ]) as string;

  test('never goes back as the clearance grows', () => {
    const clearances = fc.integer({ min: 0, max: 150_000 });
    fc.assert(
      fc.property(clearances, clearances, fc.constantFrom(0, 0.001, 0.004), (one, other, u) => {
        const verdicts = [status(Math.min(one, other), u), status(Math.max(one, other), u)];
        const [low, high] = verdicts.map((verdict) => ORDER.indexOf(verdict));
        if (low! >= 0 && high! >= 0) expect(low).toBeLessThanOrEqual(high!);
        if (u === 0) expect(verdicts).not.toContain('undecided');
      }),
      RUNS,
    );
  });

  test('what a larger uncertainty proves, a smaller one proves as well', () => {
    const cases = fc.tuple(fc.integer({ min: 0, max: 150_000 }), fc.integer({ min: 0, max: 50 }));
    fc.assert(
      fc.property(cases, ([clearance, hundredths]) => {
        const u = hundredths / 1e4;
        const proved = status(clearance, u);
        if (proved !== 'undecided') expect(status(clearance, u / 2)).toBe(proved);
      }),
      RUNS,
    );
  });
});

describe('on a limit', () => {
  const EXACT = '=SHELL_CLEARANCE(45.0125, 1.4875, 1.4885, 42.0015)';

  test.each([[undefined], [17]])('0.035 is 0.035 with precisionRounding %s', (precisionRounding) => {
    const configuration = precisionRounding === undefined ? {} : { precisionRounding };
    expect(evaluate(EXACT, [], {}, configuration)).toBe(0.035);
    expect(evaluate(`${EXACT}=0.035`, [], {}, configuration)).toBe(true);
    const clearance = EXACT.slice(1);
    const on = (min: string, max: string) =>
      evaluate(`=FIT_STATUS(${clearance}, ${clearance}, ${min}, ${max})`, [], {}, configuration);
    expect(on('0.035', '0.05')).toBe('in range');
    expect(on('0.02', '0.035')).toBe('in range');
    expect(on('0.035001', '0.05')).toBe('tight');
    expect(on('0.02', '0.034999')).toBe('loose');
  });

  test('the same arithmetic by the engine’s own operators misses it', () => {
    expect(evaluate('=45.0125-1.4875-1.4885-42.0015=0.035', [], {}, { precisionRounding: 17 })).toBe(false);
  });
});
