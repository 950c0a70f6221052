/** What a suggestion needs besides a stock, for the seeded stocks of the matching's tests. */
import type { FitKind, Stock, StockNewShell } from '../../../src/maths/matching/stock.js';
import type { SystematicSource } from '../../../src/maths/shared-gauges.js';
import type { SuggestionFacts } from '../../../src/maths/suggestions/crank-plan.js';
import { goesOn, SingleFitRules, sameKind } from '../../../src/maths/suggestions/rules.js';
import type { Measure, Window } from '../../../src/maths/suggestions/windows.js';
import { temperatureVariance } from '../../../src/maths/uncertainty.js';

/** A gauge whose random part grows with the size, as the term of temperature does. */
export function measuredBy(systematic: readonly SystematicSource[], readVariance: number): Measure {
  return (size) => ({
    size,
    largest: size,
    smallest: size,
    ...{ systematic, readVariance, spots: 1, ownExpansion: 0, gaugeExpansion: undefined },
    temperatureVariance: temperatureVariance(11.5, size),
  });
}

const MIC = { gauge: 'mic', maxError: 1000, isConstant: true };
const BORE_GAUGE = measuredBy([{ gauge: 'bore gauge', maxError: 800, isConstant: false }, MIC], 120_000);
const BALL_MIC = measuredBy([{ gauge: 'ball mic', maxError: 700, isConstant: false }], 200 ** 2);
const OUTSIDE_MIC = measuredBy([MIC], 300 ** 2);

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
          usualWall: 1_500_000,
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
