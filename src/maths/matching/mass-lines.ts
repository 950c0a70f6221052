/**
 * What the masses of the rods leave to all cranks together.
 *
 * Rods that can be parted into cranks within the mass spread can also be parted so that, in order of
 * mass, each crank's rods follow upon another's: exchanging rods between two cranks, the lighter ones
 * to the crank that has the lightest, leaves both within the spread. So the rods used lie in runs that
 * do not overlap, each no wider than the spread and with no more rods in use than a crank has pins.
 * The rows of single cranks are far weaker: half a crank in one window of mass and half in another.
 */
import type { Problem } from './problem.js';

/** A run of rods in order of mass, by their places in it, both ends included. */
export interface MassRun {
  readonly engineType: string;
  readonly first: number;
  readonly last: number;
}

export type RowEntry = readonly [row: number, value: number];

interface Line {
  readonly engineType: string;
  /** The rods one by one in order of mass, by class. */
  readonly order: readonly number[];
  readonly runs: readonly MassRun[];
  readonly pins: number;
  /** The runs are no more than the cranks. */
  readonly cranks: number;
  /** By place: the runs over it. */
  readonly over: readonly number[];
  /** By rod class: its rods in use lie in runs, and the ends of a run are in use. */
  readonly inRun: ReadonlyMap<number, number>;
  readonly atEnd: ReadonlyMap<number, number>;
  /** By place but the last: the rods up to it, and those after it, less what the runs there may use. */
  readonly upTo: readonly number[];
  readonly after: readonly number[];
}

/** Beyond so many runs the rows would cost more than they bring. */
const MOST_RUNS = 3_000;

/** Makes a row that keeps its sum at or below a limit. */
export type AtMost = (upper: number) => number;

function pinsOf({ journals }: Problem, engineType: string): number[] {
  const pins = new Map<number, number>();
  for (const each of journals) {
    if (each.engineType !== engineType || each.caseBore) continue;
    for (const engine of each.engines) pins.set(engine, (pins.get(engine) ?? 0) + 1);
  }
  return [...pins.values()];
}

export class MassLines {
  private readonly lines = new Map<string, Line>();
  private readonly byRod: readonly (readonly RowEntry[])[];

  constructor(problem: Problem, atMost: AtMost) {
    const { windows, rods } = problem;
    for (const [engineType, own] of windows) {
      const order = [...rods.entries()]
        .filter(([, each]) => each.engineType === engineType)
        .sort(([a, one], [b, other]) => one.massRank! - other.massRank! || a - b)
        .flatMap(([rod, each]) => each.rods.map(() => rod));
      const rank = (place: number) => rods[order[place]!]!.massRank!;
      const runs: MassRun[] = [];
      for (const first of order.keys()) {
        const reach = own.filter((window) => window.first <= rank(first)).at(-1)!.last;
        for (let last = first; last < order.length && rank(last) <= reach; last++)
          runs.push({ engineType, first, last });
      }
      const pins = pinsOf(problem, engineType);
      if (runs.length > MOST_RUNS || pins.length === 0) continue;
      const classes = [...new Set(order)];
      this.lines.set(engineType, {
        engineType,
        order,
        runs,
        pins: Math.max(...pins),
        cranks: atMost(pins.length),
        over: order.map(() => atMost(1)),
        inRun: new Map(classes.map((rod) => [rod, atMost(0)])),
        atEnd: new Map(classes.map((rod) => [rod, atMost(0)])),
        upTo: order.slice(1).map(() => atMost(0)),
        after: order.slice(1).map(() => atMost(0)),
      });
    }
    this.byRod = rods.map(({ engineType }, rod) => {
      const line = this.lines.get(engineType);
      if (!line) return [];
      const [first, last] = [line.order.indexOf(rod), line.order.lastIndexOf(rod)];
      return [
        [line.inRun.get(rod)!, 1],
        [line.atEnd.get(rod)!, -1],
        ...line.upTo.slice(last).map((row): RowEntry => [row, 1]),
        ...line.after.slice(0, first).map((row): RowEntry => [row, 1]),
      ];
    });
  }

  /** What a fit with a rod of this class counts. */
  ofRod(rod: number): readonly RowEntry[] {
    return this.byRod[rod]!;
  }

  /** All rows of the lines: they follow from those of the single cranks. */
  get rows(): number[] {
    return [...this.lines.values()].flatMap(({ cranks, over, inRun, atEnd, upTo, after }) => [
      cranks,
      ...over,
      ...inRun.values(),
      ...atEnd.values(),
      ...upTo,
      ...after,
    ]);
  }

  get runs(): MassRun[] {
    return [...this.lines.values()].flatMap(({ runs }) => runs);
  }

  ofRun({ engineType, first, last }: MassRun): RowEntry[] {
    const { order, pins, cranks, over, inRun, atEnd, upTo, after } = this.lines.get(engineType)!;
    const ends = first === last ? [first] : [first, last];
    const most = (count: number) => Math.min(pins, Math.max(0, count));
    return [
      [cranks, 1],
      ...over.slice(first, last + 1).map((row): RowEntry => [row, 1]),
      ...order.slice(first, last + 1).map((rod): RowEntry => [inRun.get(rod)!, -1]),
      ...ends.map((place): RowEntry => [atEnd.get(order[place]!)!, 1]),
      ...upTo.map((row, place): RowEntry => [row, -most(Math.min(place, last) - first + 1)]),
      ...after.map((row, place): RowEntry => [row, -most(last - Math.max(place + 1, first) + 1)]),
    ];
  }

  /**
   * The runs that hold the rods of some cranks.
   * @param cranks the rods of each, by class
   */
  runsOf(engineType: string, cranks: readonly (readonly number[])[]): MassRun[] {
    const line = this.lines.get(engineType);
    if (!line) return [];
    const next = new Map<number, number>();
    const places = cranks
      .filter((rods) => rods.length > 0)
      .map((rods) =>
        rods.map((rod) => {
          const place = next.get(rod) ?? line.order.indexOf(rod);
          next.set(rod, place + 1);
          return place;
        }),
      );
    const runs: MassRun[] = [];
    while (places.length > 0) {
      places.sort((a, b) => Math.min(...a) - Math.min(...b));
      let own = places.shift()!;
      for (const [at, other] of places.entries()) {
        const both = [...own, ...other].sort((a, b) => a - b);
        places[at] = both.slice(own.length);
        own = both.slice(0, own.length);
      }
      runs.push({ engineType, first: Math.min(...own), last: Math.max(...own) });
    }
    return runs;
  }
}
