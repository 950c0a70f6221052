/** The columns of the model (model-rows.ts names them), and the amount of each for every aim. */
import { type Amounts, type Prices, pricesOf } from './aims.js';
import type { MassRun } from './mass-lines.js';
import { completableEngines, type ModelRow, modelRowsOf, type RowPlaces } from './model-rows.js';
import { keyOfKind } from './part-classes.js';
import type { Problem } from './problem.js';
import { amountsOfPair, amountsOfSpace, distanceOf, spaceEntries, timesOf } from './space-columns.js';
import type { StockRod } from './stock.js';

export type Meaning =
  | { readonly is: 'engine'; readonly engine: number }
  | { readonly is: 'window'; readonly engine: number }
  | { readonly is: 'run'; readonly run: MassRun }
  | { readonly is: 'pair'; readonly upper: number; readonly lower: number; readonly shape: number }
  | { readonly is: 'fit'; readonly space: number; readonly shape: number }
  /** The two halves of fits in whole-number programs (seats.ts). */
  | { readonly is: 'space'; readonly space: number }
  | { readonly is: 'seat'; readonly seat: number; readonly shape: number }
  | { readonly is: 'kept'; readonly kept: number }
  | { readonly is: 'filling'; readonly crank: number; readonly parts: readonly Column[] }
  /**
   * Artificial variable of linear programs: a held aim missed by one step, at a cost that leaves none in the
   * solution.
   */
  | { readonly is: 'relief' };

export interface Column {
  readonly meaning: Meaning;
  readonly rows: readonly number[];
  readonly values: readonly number[];
  readonly upper: number;
  readonly amounts: Amounts;
}

export interface Model {
  readonly problem: Problem;
  readonly rows: readonly ModelRow[];
  readonly places: RowPlaces;
  readonly prices: Prices;
  /** All columns except the fits: these are too many to hold, and join by column generation. */
  readonly columns: readonly Column[];
}

/** Row entries, added up where two parts are in one row. */
function entries(...parts: readonly (readonly [row: number | undefined, value: number])[]) {
  const sums = new Map<number, number>();
  for (const [row, value] of parts) if (row !== undefined) sums.set(row, (sums.get(row) ?? 0) + value);
  return { rows: [...sums.keys()], values: [...sums.values()] };
}

export function modelOf(problem: Problem): Model {
  const { rows, places } = modelRowsOf(problem);
  const prices = pricesOf(problem.stock);
  const columns = [
    ...engineColumns(problem, places),
    ...windowColumns(problem, places),
    ...runColumns(places),
    ...pairColumns(problem, places, prices),
    ...keptColumns(problem, places),
  ];
  return { problem, rows, places, prices, columns };
}

function engineColumns(problem: Problem, places: RowPlaces): Column[] {
  const classes = new Map<number, number[]>();
  for (const [place, { engines }] of problem.journals.entries()) {
    for (const engine of engines) {
      const own = classes.get(engine);
      if (own) own.push(place);
      else classes.set(engine, [place]);
    }
  }
  return [...completableEngines(problem)].map((engine) => ({
    meaning: { is: 'engine', engine },
    ...entries(
      ...classes.get(engine)!.map((place) => [places.completion[place], -1] as const),
      ...places.fillings
        .filter((crank) => crank.engine === engine)
        .map(({ complete }) => [complete, -1] as const),
    ),
    upper: 1,
    amounts: {
      completeEngines: 1,
      filledOpen: -problem.stock.engines[engine]!.journals.length,
      filledBeyond: -problem.stock.engines[engine]!.journals.length,
    },
  }));
}

function windowColumns({ windows, rods }: Problem, places: RowPlaces): Column[] {
  return places.oneWindow.flatMap(({ engine, engineType, row, pins }) =>
    windows.get(engineType)!.map(({ first, last }) => {
      const held = [...rods.entries()].filter(
        ([, each]) => each.engineType === engineType && first <= each.massRank! && each.massRank! <= last,
      );
      return {
        meaning: { is: 'window' as const, engine },
        ...entries(
          [row, 1],
          ...held.map(
            ([rod, each]) => [places.rodOnEngine(engine, rod), -Math.min(each.rods.length, pins)] as const,
          ),
        ),
        upper: 1,
        amounts: {},
      };
    }),
  );
}

function runColumns({ massLines }: RowPlaces): Column[] {
  return massLines.runs.map((run) => ({
    meaning: { is: 'run', run },
    ...entries(...massLines.ofRun(run).filter(([, value]) => value !== 0)),
    upper: 1,
    amounts: {},
  }));
}

function pairColumns(problem: Problem, places: RowPlaces, prices: Prices): Column[] {
  const { journals, shells, shapes, bySize, stock } = problem;
  const ofKind = new Map<string, number>();
  for (const journal of journals) {
    const kind = keyOfKind(journal);
    ofKind.set(kind, (ofKind.get(kind) ?? 0) + journal.journals.length);
  }
  const priceOf = (shell: number) => {
    const { bought } = shells[shell]!;
    return bought ? prices.steps[stock.newShells.indexOf(bought)]! : 0;
  };
  return [...bySize.values()]
    .flatMap((own) => [...own])
    .sort((a, b) => a - b)
    .flatMap((shape) =>
      shapes[shape]!.pairs.map(({ upper, lower }) => {
        const [up, down] = [shells[upper]!.count, shells[lower]!.count];
        const most = upper === lower ? Math.floor(up / 2) : Math.min(up, down);
        return {
          meaning: { is: 'pair' as const, upper, lower, shape },
          ...entries([places.shell[upper], 1], [places.shell[lower], 1], [places.shape[shape], -1]),
          upper: Math.min(most, ofKind.get(shapes[shape]!.kind)!),
          amounts: { price: priceOf(upper) + priceOf(lower) },
        };
      }),
    );
}

export function fitColumn(model: Model, space: number, shape: number): Column {
  const { problem, places } = model;
  const open = problem.spaces[space]!;
  return {
    meaning: { is: 'fit', space, shape },
    ...entries(...spaceEntries({ problem, places }, open), [places.shape[shape], 1]),
    upper: timesOf(problem, open),
    amounts: {
      ...amountsOfSpace(model, open),
      ...amountsOfPair(model, space, shape),
    },
  };
}

/** The column of a space without a pair: the row of its seat asks for one. */
export function spaceColumn(model: Model, space: number, seatRow: number): Column {
  const { problem, places } = model;
  const open = problem.spaces[space]!;
  return {
    meaning: { is: 'space', space },
    ...entries(...spaceEntries({ problem, places }, open), [seatRow, 1]),
    upper: timesOf(problem, open),
    amounts: amountsOfSpace(model, open),
  };
}

function keptColumns(problem: Problem, places: RowPlaces): Column[] {
  const { journals, shells, spaces, kept } = problem;
  const placeOf = <Part>(classes: readonly (readonly Part[])[]) =>
    new Map(classes.flatMap((own, place) => own.map((part) => [part, place] as const)));
  const ofJournal = placeOf(journals.map((each) => each.journals));
  const ofShell = placeOf(shells.map((each) => each.shells));
  const inCases = new Map(
    spaces.flatMap((space) => (space.rod === undefined ? [[space.journal, space]] : [])),
  );
  const homes = spaces.flatMap((space) => (space.homes ?? []).map((home) => ({ ...home, space })));
  const ofRod = new Map<StockRod, typeof homes>();
  for (const home of homes) ofRod.set(home.rod, [...(ofRod.get(home.rod) ?? []), home]);
  return kept.map(({ journal, rod, upper, lower, isInRange }, place) => {
    const [up, down] = [ofShell.get(upper)!, ofShell.get(lower)!];
    const space = rod
      ? ofRod.get(rod)!.find((home) => home.journal === journal)!.space
      : inCases.get(ofJournal.get(journal)!)!;
    return {
      meaning: { is: 'kept', kept: place },
      ...entries(
        ...spaceEntries({ problem, places }, space),
        [places.shell[up], 1],
        [places.shell[down], 1],
        ...[upper, lower].map((part) => [places.contested.get(part), 1] as const),
      ),
      upper: 1,
      amounts: {
        ...amountsOfSpace({ problem }, space),
        distance: distanceOf(space, upper.part.size + lower.part.size),
        ...(isInRange && { inRange: 1 }),
        kept: 1,
      },
    };
  });
}
