/** What a suggestion needs besides a stock, for the seeded stocks of the matching's tests. */
import type { FitKind, Stock, StockNewShell } from '../../../src/maths/matching/stock.js';
import type { SuggestionFacts } from '../../../src/maths/suggestions/crank-plan.js';
import { goesOn, SingleFitRules, sameKind } from '../../../src/maths/suggestions/rules.js';
import type { Measure, Window } from '../../../src/maths/suggestions/windows.js';
import type { SystematicSource } from '../../../src/maths/uncertainty.js';

/** A gauge whose random part grows with the size, as the term of temperature does. */
export function measuredBy(systematic: readonly SystematicSource[], spotVariance: number): Measure {
  return (size) => ({
    size,
    largest: size,
    smallest: size,
    systematic,
    spotVariance: spotVariance + (0.5 * 11.5e-6 * size) ** 2,
  });
}

const MIC = { gauge: 'mic', maxError: 100 };
const BORE_GAUGE = measuredBy([{ gauge: 'bore gauge', maxError: 80 }, MIC], 1200);
const BALL_MIC = measuredBy([{ gauge: 'ball mic', maxError: 70 }], 400);
const OUTSIDE_MIC = measuredBy([MIC], 900);

export interface Given {
  readonly newShells?: readonly StockNewShell[];
  readonly boreRange?: Window;
  readonly undersizes?: readonly { step: string; from: number; to: number; newShells: StockNewShell[] }[];
}

const bothSides = (shells: readonly StockNewShell[]) => ({
  upper: shells.filter(({ half }) => goesOn(half, 'upper')),
  lower: shells.filter(({ half }) => goesOn(half, 'lower')),
});

const ANY: Window = { from: 0, to: Number.POSITIVE_INFINITY };

export function factsOf(
  stock: Stock,
  { newShells = [], undersizes = [], boreRange = ANY }: Given = {},
): SuggestionFacts {
  const rules = new SingleFitRules(stock);
  return {
    partsOf: (kind: FitKind) => {
      const limits = rules.limitsOf(kind);
      return (
        limits && {
          limits,
          measureBore: BORE_GAUGE,
          measureWall: BALL_MIC,
          boreRange,
          usualBore: undefined,
          usualWall: 150_000,
          newShells: bothSides(newShells.filter((shell) => sameKind(shell, kind))),
        }
      );
    },
    undersizesOf: (kind) =>
      undersizes.map(({ step, from, to, newShells: own }) => ({
        step,
        journal: { from, to },
        newShells: bothSides(own.filter((shell) => sameKind(shell, kind))),
        measureJournal: OUTSIDE_MIC,
      })),
    groundFrom: ({ part }) => part?.smallest,
  };
}
