/**
 * One engine measured in both ways: bores bare with the walls of their shells, and bores with the shells in. Invented
 * sizes; the bearing is the bore less both walls, and gauges read it with errors within their own.
 */
import { expect, test } from 'vitest';
import { seeded } from '../../../scripts/demo/random.js';
import { assess, type Plain, type Sheets, table } from '../book-of.js';

type Cells = Readonly<Record<string, Plain>>;

const PLACES = [1, 2, 3, 4, 5, 6, 7, 8];
/** Clearances from well under the range to well over it, mm. */
const CLEARANCES = [0.006, 0.0165, 0.024, 0.03, 0.036, 0.0435, 0.047, 0.06];
const LIMITS = { 'Engine type': 'X', Fit: 'big end', 'Clearance min': 0.018, 'Clearance max': 0.045 };
const GAUGES = table(
  { Gauge: 'mic', 'Max error': 0.002, Resolution: 0.001, Repeatability: 0.0005 },
  { Gauge: 'bore gauge', 'Max error': 0.002, Resolution: 0.001, Repeatability: 0.0005 },
  { Gauge: 'ball', 'Max error': 0.001, Resolution: 0.001, Repeatability: 0.0003 },
);

const mm = (value: number) => Number(value.toFixed(3));

function engine(error: () => number): { readonly bare: Sheets; readonly withShells: Sheets } {
  const rows = (row: (n: number) => Cells) =>
    table(...PLACES.map((n) => ({ Engine: 'E', Position: n, ...row(n) })));
  const journal = (n: number) => 42 - CLEARANCES[n - 1]!;
  const shared = {
    Limits: table(LIMITS),
    Gauges: GAUGES,
    Journals: rows((n) => ({ Part: `J${n}`, Fit: 'big end', Gauge: 'mic', 'A 0': mm(journal(n) + error()) })),
  };
  const wall =
    (half: string): ((n: number) => Cells) =>
    (n) => ({ Part: `${half}${n}`, Half: half, Gauge: 'ball', 'Wall 1': mm(1.5 + error() / 2) });
  const halves = ['upper', 'lower'].map((half) => rows(wall(half)));
  return {
    bare: {
      ...shared,
      Rods: rows((n) => ({ Part: `R${n}`, Gauge: 'bore gauge', 'A 0': mm(45 + error()) })),
      Shells: [...halves[0]!, ...halves[1]!.slice(1)],
    },
    withShells: {
      ...shared,
      Rods: rows((n) => ({
        Part: `R${n}`,
        'Shells in': 'yes',
        Gauge: 'bore gauge',
        'A 0': mm(42 + error()),
      })),
    },
  };
}

test('no fit that one way proves good is proved bad by the other, and clearances agree within both U', () => {
  const proved = { 'in range': 0, tight: 0, loose: 0 };
  for (let seed = 1; seed <= 50; seed++) {
    const random = seeded(seed);
    // Up to 1 µm either way, half of what the gauges may err by, in whole tenths of a micrometre.
    const { bare, withShells } = engine(() => random.between(-10, 10) / 10_000);
    const [one, other] = [assess(bare).fits, assess(withShells).fits];
    for (const [at, fit] of one.entries()) {
      const twin = other[at]!;
      const apart = Math.abs(fit.clearance!.clearance - twin.clearance!.clearance);
      expect(apart).toBeLessThanOrEqual(Math.hypot(fit.clearanceU!, twin.clearanceU!));
      // Verdicts differ by `undecided` at most: the walls bring an uncertainty of their own.
      if (fit.status !== 'undecided' && twin.status !== 'undecided') {
        expect(twin.status).toBe(fit.status);
        proved[fit.status as keyof typeof proved] += 1;
      }
    }
  }
  expect(Object.values(proved).every((count) => count > 20)).toBe(true);
});
