/** A small result that keeps every rule, made by hand, and what changes one thing of it. */
import type {
  FitKind,
  Half,
  KindLimits,
  MatchedFit,
  MatchResult,
  RanAt,
  StageResult,
  Stock,
  StockCaseBore,
  StockJournal,
  StockNewShell,
  StockRod,
  StockShell,
  TakenShell,
} from '../../../src/maths/matching/stock.js';
import { CERTAIN, type MeasuredPart } from '../../../src/maths/uncertainty.js';

/** Every fit has a clearance of 45,010,000 − 2 · 1,487,500 − 42,000,000 = 35,000 grains, 1,000 more than the aim. */
export const BORE = 45_010_000;
export const WALL = 1_487_500;
export const JOURNAL = 42_000_000;
export const OFF_AIM = 1000;

export const BIG_END: FitKind = { engineType: 'X', fit: 'big end' };
export const MAIN: FitKind = { engineType: 'X', fit: 'main' };

export function part(size: number, readVariance = 0): MeasuredPart {
  return { ...CERTAIN, size, largest: size, smallest: size, readVariance };
}

export function rod(name: string, mass: number | undefined): StockRod {
  return { name, engineType: 'X', part: part(BORE), mass, ran: undefined };
}

export function shell(name: string, half: Half, kind = BIG_END, quantity = 1): StockShell {
  return { ...kind, name, half, quantity, part: part(WALL), ran: undefined };
}

export function journal(
  name: string,
  position: string,
  kind = BIG_END,
  caseBore?: StockCaseBore,
): StockJournal {
  return { ...kind, name, position, part: part(JOURNAL), caseBore };
}

export const fromStock = (row: StockShell): TakenShell => ({ from: 'stock', shell: row });
export const bought = (row: StockNewShell): TakenShell => ({ from: 'new', shell: row });

/** A set of the very rows, with all that follows from them. */
export function setOf(
  engine: string,
  own: StockJournal,
  bore: StockRod | StockCaseBore,
  upper: TakenShell,
  lower: TakenShell,
) {
  const parts = { bore: bore.part!, upper: upper.shell.part, lower: lower.shell.part, journal: own.part! };
  const named = { name: bore.name, part: bore.part!, ran: bore.ran };
  return { engine, journal: own, bore: named, upper, lower, parts, ranTogether: false, rodStays: false };
}

export interface Case {
  stock: Stock;
  result: MatchResult;
}

/**
 * Engine E has two big ends and a main, all filled, and is complete; of engine F one big end of two is filled.
 * The second big end of E has a bought upper shell.
 */
export function soundCase(): Case {
  const mainBore: StockCaseBore = { name: 'C1', part: part(BORE), ran: undefined };
  const pins = ['E1', 'E2', 'F1', 'F2'].map((name) => journal(name, name.slice(1)));
  const [e1, e2, f1, f2] = pins as [StockJournal, StockJournal, StockJournal, StockJournal];
  const main = journal('EM', '1', MAIN, mainBore);
  const rods = [rod('R1', 612.1), rod('R2', 612.4), rod('R3', 612.3), rod('R4', 612.2)];
  const [r1, r2, r3] = rods as [StockRod, StockRod, StockRod];
  const shells = [
    shell('U1', 'upper'),
    shell('L1', 'lower'),
    shell('L2', 'lower'),
    shell('either', 'either', BIG_END, 2),
    shell('MU', 'upper', MAIN),
    shell('ML', 'lower', MAIN),
    shell('spare upper', 'upper'),
    shell('spare lower', 'lower'),
  ];
  const [u1, l1, l2, either, mu, ml] = shells.map(fromStock) as [TakenShell, ...TakenShell[]];
  const sold: StockNewShell = { ...BIG_END, mark: 'B', half: 'upper', part: part(WALL), price: 0.1 };
  const fits: MatchedFit[] = [
    setOf('E', e1, r1, u1, l1!),
    setOf('E', e2, r2, bought(sold), l2!),
    setOf('E', main, mainBore, mu!, ml!),
    setOf('F', f1, r3, either!, either!),
  ];
  const limits = { min: 20_000, max: 50_000, serviceLimit: 60_000, aim: 34_000, halfDifference: 0 };
  return {
    stock: {
      kinds: [
        { ...BIG_END, ...limits, massSpread: 0.3 },
        { ...MAIN, ...limits, massSpread: undefined },
      ],
      engines: [
        { name: 'E', journals: [e1, e2, main] },
        { name: 'F', journals: [f1, f2] },
      ],
      rods,
      shells,
      newShells: [sold],
      confidence: 0.95,
      allowUndecided: false,
      allowWorn: false,
      preferKeptPairs: false,
      rodsStay: false,
      newWithUsed: true,
    },
    result: {
      fits,
      completeEngines: ['E'],
      hopelessEngines: [],
      stages: [
        { aim: 'complete engines', reached: 1, bound: 1, gapStays: undefined },
        { aim: 'filled journals beyond them', reached: 1, bound: 1, gapStays: undefined },
        { aim: 'price of bought shells', reached: 0.1, bound: 0.1, gapStays: undefined },
        { aim: 'distance from the aim', reached: 4 * OFF_AIM, bound: 4 * OFF_AIM, gapStays: undefined },
        { aim: 'pairs kept together', reached: 0, bound: 0, gapStays: undefined },
        { aim: 'rods that stay', reached: 0, bound: 0, gapStays: undefined },
      ],
      grid: undefined,
    },
  };
}

export const [FIRST, SECOND, MAIN_SET, OF_F] = [0, 1, 2, 3];

export const withSet = (
  { stock, result }: Case,
  place: number,
  change: (fit: MatchedFit) => MatchedFit,
): Case => ({
  stock,
  result: { ...result, fits: result.fits.map((fit, at) => (at === place ? change(fit) : fit)) },
});

export const withStock = ({ stock, result }: Case, change: Partial<Stock>): Case => ({
  stock: { ...stock, ...change },
  result,
});

export const withKind = (own: Case, fit: string, change: Partial<KindLimits>): Case =>
  withStock(own, {
    kinds: own.stock.kinds.map((kind) => (kind.fit === fit ? { ...kind, ...change } : kind)),
  });

export const withStage = (
  { stock, result }: Case,
  aim: StageResult['aim'],
  change: Partial<StageResult>,
): Case => ({
  stock,
  result: {
    ...result,
    stages: result.stages.map((stage) => (stage.aim === aim ? { ...stage, ...change } : stage)),
  },
});

/** The same row with other properties, in the stock and in every set. */
export function withRow<Row extends object>(own: Case, old: Row, change: Partial<Row>): Case {
  const row: Row = { ...old, ...change };
  const swap = <Other extends object>(each: Other): Other =>
    ((each as object) === old ? (row as object) : each) as Other;
  const taken = (each: TakenShell) => ({ ...each, shell: swap(each.shell) }) as TakenShell;
  return {
    stock: {
      ...own.stock,
      engines: own.stock.engines.map((engine) => ({ ...engine, journals: engine.journals.map(swap) })),
      rods: own.stock.rods.map(swap),
      shells: own.stock.shells.map(swap),
      newShells: own.stock.newShells.map(swap),
    },
    result: {
      ...own.result,
      fits: own.result.fits.map((fit) => ({
        ...fit,
        journal: swap(fit.journal),
        upper: taken(fit.upper),
        lower: taken(fit.lower),
      })),
    },
  };
}

export const rodNamed = ({ stock }: Case, name: string) => stock.rods.find((each) => each.name === name)!;
export const shellNamed = ({ stock }: Case, name: string) => stock.shells.find((each) => each.name === name)!;
export const fitAt = ({ result }: Case, place: number) => result.fits[place]!;

export const withBore = (own: Case, place: number, bore: StockRod): Case =>
  withSet(own, place, (fit) => ({
    ...fit,
    bore: { name: bore.name, part: bore.part, ran: bore.ran },
    parts: { ...fit.parts, bore: bore.part },
  }));

export const withShell = (own: Case, place: number, half: 'upper' | 'lower', taken: TakenShell): Case =>
  withSet(own, place, (fit) => ({
    ...fit,
    [half]: taken,
    parts: { ...fit.parts, [half]: taken.shell.part },
  }));

/** A half-shell of a set, of other values. */
export function withWall(own: Case, place: number, half: 'upper' | 'lower', wall: MeasuredPart): Case {
  const { shell: row } = fitAt(own, place)[half];
  return withSet(withRow(own, row, { part: wall }), place, (fit) => ({
    ...fit,
    parts: { ...fit.parts, [half]: wall },
  }));
}

/** The parts of the first set of E as ones that ran there, or elsewhere. */
export function ranThere(own: Case, elsewhere: Partial<RanAt> = {}): Case {
  const ran = { engine: 'E', position: '1', ...elsewhere };
  const rows: object[] = [rodNamed(own, 'R1'), shellNamed(own, 'U1'), shellNamed(own, 'L1')];
  const there = rows.reduce((each: Case, row) => withRow<object>(each, row, { ran }), own);
  return ran.position === '1' ? rodOfStays(there, FIRST) : there;
}

/** A set that says its rod stays. */
export function rodOfStays(own: Case, place: number): Case {
  const said = withSet(own, place, (fit) => ({ ...fit, rodStays: true }));
  return withStage(said, 'rods that stay', { reached: 1, bound: 1 });
}

/** The main on its Clearance min, measured with a standard deviation of 100 grains: z is 1.6449. */
export function undecidedMain(own: Case): Case {
  return withKind(withWall(own, MAIN_SET, 'lower', part(WALL, 100 ** 2)), 'main', { min: 35_000 });
}

/** Halves of the first set that differ by 2 grains. */
export function unlikeHalves(own: Case): Case {
  return withWall(withWall(own, FIRST, 'upper', part(WALL + 1)), FIRST, 'lower', part(WALL - 1));
}

/** Matched on a grid: a wall of 1,487,500 grains counts 1,488,000 on one of 1,000. */
export function onGrid({ stock, result }: Case, grid: number): Case {
  const own = { stock, result: { ...result, grid } };
  const rounded = (length: number) => Math.round(length / grid) * grid;
  const clearance = rounded(BORE) - 2 * rounded(WALL) - rounded(JOURNAL);
  const off = 4 * Math.abs(clearance - rounded(34_000));
  return withStage(own, 'distance from the aim', { reached: off, bound: off });
}
