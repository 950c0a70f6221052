/** Seeded stocks for the tests of matching: tiny ones with every rule at play, and ones as measured in a workshop. */
import { broughtShells } from '../../../src/maths/matching/brought-shells.js';
import { type Sequence, sequenceOf } from '../../../src/maths/matching/random.js';
import type {
  FitKind,
  Half,
  KindLimits,
  RanAt,
  Stock,
  StockEngine,
  StockJournal,
  StockNewShell,
  StockRod,
  StockShell,
} from '../../../src/maths/matching/stock.js';
import type { SystematicSource } from '../../../src/maths/shared-gauges.js';
import {
  CERTAIN,
  expansionContribution,
  type MeasuredPart,
  temperatureVariance,
} from '../../../src/maths/uncertainty.js';

export type Random = Sequence;

export const randomOf = sequenceOf;

/** A whole number from `from` to `to`, both included. */
export function wholeOf(random: Random, from: number, to: number): number {
  return from + Math.floor(random() * (to - from + 1));
}

export function pick<Item>(random: Random, items: readonly Item[]): Item {
  return items[Math.floor(random() * items.length)]!;
}

export function shuffled<Item>(random: Random, items: readonly Item[]): Item[] {
  const result = [...items];
  for (let last = result.length - 1; last > 0; last--) {
    const other = wholeOf(random, 0, last);
    [result[last], result[other]] = [result[other]!, result[last]!];
  }
  return result;
}

/** The same stock with every list in another order. */
export function shuffledStock(random: Random, stock: Stock): Stock {
  const engines = stock.engines.map((engine) => ({ ...engine, journals: shuffled(random, engine.journals) }));
  return {
    ...stock,
    kinds: shuffled(random, stock.kinds),
    engines: shuffled(random, engines),
    rods: shuffled(random, stock.rods),
    shells: shuffled(random, stock.shells),
    newShells: shuffled(random, stock.newShells),
  };
}

interface Gauge {
  readonly sources: readonly SystematicSource[];
  readonly spots?: number;
  /** T − 20 at the measurement. */
  readonly kelvin?: number;
  readonly variance: number;
}

const source = (gauge: string, maxError: number, isConstant = false): SystematicSource => ({
  ...{ gauge, maxError, isConstant },
});
const MIC = source('mic', 1000, true);
const RING = source('ring', 600);
const NO_GAUGE: Gauge = { sources: [], variance: 0 };
/** Read in a warm workshop, at several spots. */
const OUTSIDE: Gauge = { sources: [MIC], variance: 300 ** 2, spots: 4, kelvin: 3.5 };
const SECOND: Gauge = { sources: [source('second mic', 1500)], variance: 400 ** 2 };
/** A bore gauge set with the outside micrometer: its error cancels against the journal's. */
const BORE_BY_MIC: Gauge = {
  sources: [source('bore gauge', 800), MIC],
  variance: 120_000,
  spots: 6,
  kelvin: 3.5,
};
const BORE_BY_RING: Gauge = { sources: [source('bore gauge', 800), RING], variance: 120_000, spots: 2 };
const BALL: Gauge = { sources: [source('ball mic', 700)], variance: 200 ** 2, spots: 2, kelvin: -2 };

/** What a gauge adds to the uncertainty of a part; the terms of temperature differ a little from part to part. */
function uncertaintyOf(size: number, { sources, variance, spots = 1, kelvin = 0 }: Gauge) {
  const [first] = sources;
  if (!first) return CERTAIN;
  const contribution = expansionContribution(1.15, size, kelvin);
  return {
    spots,
    readVariance: variance,
    temperatureVariance: temperatureVariance(11.5, size),
    ownExpansion: contribution,
    gaugeExpansion: kelvin === 0 ? undefined : { gauge: first.gauge, contribution },
    systematic: sources,
  };
}

function partOf(size: number, under: number, over: number, gauge: Gauge): MeasuredPart {
  return { ...uncertaintyOf(size, gauge), size, smallest: size - under, largest: size + over };
}

/** A part some whole steps off its nominal, and out of form by up to some steps. */
function roughPart(
  random: Random,
  nominal: number,
  spread: number,
  form: number,
  gauge: Gauge,
): MeasuredPart {
  const step = pick(random, [500, 1000, 1000, 250]);
  const size = nominal + step * wholeOf(random, -spread, spread);
  return partOf(size, step * wholeOf(random, 0, form), step * wholeOf(random, 0, form), gauge);
}

const JOURNAL = 48_000_000;
const WALL = 1_500_000;
const BORE = JOURNAL + 2 * WALL + 40_000;

function limitsOf(random: Random, kind: FitKind): KindLimits {
  const min = 40_000 - 1000 * wholeOf(random, 4, 12);
  const max = 40_000 + 1000 * wholeOf(random, 4, 12);
  const blank = random() < 0.04;
  return {
    ...kind,
    min: blank ? undefined : min,
    max,
    serviceLimit: random() < 0.3 ? max + 1000 * wholeOf(random, 0, 5) : undefined,
    aim: random() < 0.05 ? undefined : pick(random, [Math.round((min + max) / 2), min + 3333, 40_000]),
    halfDifference: random() < 0.4 ? 1000 * wholeOf(random, 0, 4) : undefined,
    massSpread: kind.fit === 'big end' && random() < 0.5 ? pick(random, [0.1, 0.2, 1, 2.5]) : undefined,
  };
}

/** The place whose half-shells serve only with each other, of a shell that does not name it alone. */
export function matesOf(
  { ran, fit }: StockShell,
  all: readonly StockShell[],
  hasLostMate: () => boolean = () => false,
): string | undefined {
  if (!ran) return undefined;
  const isThere = (other: StockShell) =>
    other.fit === fit && other.ran?.engine === ran.engine && other.ran.position === ran.position;
  const count = all.filter(isThere).reduce((sum, { quantity }) => sum + quantity, 0);
  return count > 1 || hasLostMate() ? `${ran.engine} ${fit} ${ran.position}` : undefined;
}

/**
 * A stock small enough to try every set: up to three engines of up to two types, four journals in all.
 * Gauges are shared, sizes crowd about the limits, and all rules of the matching take turns.
 */
export function tinyStock(seed: number): Stock {
  const random = randomOf(seed);
  const types = random() < 0.3 ? ['A', 'B'] : ['A'];
  const kinds = types.flatMap((engineType) =>
    ['big end', 'main'].map((fit) => limitsOf(random, { engineType, fit })),
  );
  const gauge = random() < 0.25 ? () => NO_GAUGE : (...gauges: Gauge[]) => pick(random, gauges);
  const engineCount = wholeOf(random, 1, 3);
  const sites: { type: string; engine: string; position: string }[] = [];
  let left = 4;
  const engines = Array.from({ length: engineCount }, (_, place): StockEngine => {
    const name = `E${place}`;
    const engineType = pick(random, types);
    const count = Math.min(left, wholeOf(random, random() < 0.1 ? 0 : 1, 2));
    left -= count;
    const journals = Array.from({ length: count }, (_each, at): StockJournal => {
      const main = random() < 0.3;
      const position = `${at + 1}`;
      sites.push({ type: engineType, engine: name, position });
      const bore = roughPart(random, BORE, 2, 1, gauge(BORE_BY_MIC, BORE_BY_RING));
      const ran = random() < 0.7 ? { engine: name, position } : undefined;
      return {
        engineType,
        fit: main ? 'main' : 'big end',
        name: `${name}-${main ? 'main' : 'pin'}-${position}`,
        position,
        part: random() < 0.06 ? undefined : roughPart(random, JOURNAL, 3, 1, gauge(OUTSIDE, SECOND)),
        caseBore: main
          ? { name: `${name}-case-${position}`, part: random() < 0.1 ? undefined : bore, ran }
          : undefined,
      };
    });
    return { name, journals };
  });
  const ranSomewhere = (): RanAt | undefined => {
    if (sites.length === 0 || random() < 0.2) return undefined;
    const { engine, position } = pick(random, sites);
    return { engine, position };
  };
  const rods = Array.from(
    { length: wholeOf(random, 1, 4) },
    (_, place): StockRod => ({
      name: `R${place}`,
      engineType: pick(random, types),
      part: roughPart(random, BORE, 3, 1, gauge(BORE_BY_MIC, BORE_BY_RING)),
      mass: random() < 0.1 ? undefined : pick(random, [612.1, 612.2, 612.3, 612.4, 613.3, 614.8]),
      ran: ranSomewhere(),
    }),
  );
  const half = (): Half => pick(random, ['upper', 'lower', 'either', 'either'] as const);
  const shells = Array.from(
    { length: wholeOf(random, 2, 6) },
    (_, place): StockShell => ({
      name: `S${place}`,
      engineType: pick(random, types),
      fit: pick(random, ['big end', 'big end', 'main']),
      half: half(),
      quantity: pick(random, [1, 1, 1, 2, 3]),
      part: roughPart(random, WALL, 2, 1, gauge(BALL, OUTSIDE)),
      ran: ranSomewhere(),
    }),
  );
  const newShells = Array.from(
    { length: random() < 0.35 ? wholeOf(random, 1, 3) : 0 },
    (_, place): StockNewShell => ({
      engineType: pick(random, types),
      fit: pick(random, ['big end', 'main']),
      mark: `M${place}`,
      half: half(),
      part: partOf(WALL + 500 * wholeOf(random, -4, 4), 500, 500, NO_GAUGE),
      price: pick(random, [0, 0.1, 0.2, 0.3, 1, 12.35]),
    }),
  );
  return {
    kinds,
    engines,
    rods,
    shells,
    newShells,
    confidence: pick(random, [0.5, 0.9, 0.95]),
    allowUndecided: random() < 0.3,
    allowWorn: false,
    preferKeptPairs: random() < 0.4,
    rodsStay: false,
    newWithUsed: true,
  };
}

/**
 * A tiny stock with the rules of pairs, of new shells beside used ones, of rods that stay and of worn fits in turns.
 */
export function ruledStock(seed: number): Stock {
  const random = randomOf(seed + 100_000);
  const stock = tinyStock(seed);
  const allowWorn = random() < 0.3;
  const halvesStay = random() < 0.6;
  // A mate of some shells may not be used, and is not in the stock.
  const mates = (shell: StockShell) => matesOf(shell, stock.shells, () => random() < 0.1);
  return {
    ...stock,
    kinds: stock.kinds.map((kind) => ({
      ...kind,
      serviceLimit:
        allowWorn && kind.max !== undefined ? kind.max + 1000 * wholeOf(random, 3, 15) : kind.serviceLimit,
    })),
    engines: stock.engines.map((engine) => ({
      ...engine,
      journals: engine.journals.map((journal) => ({
        ...journal,
        caseBore: journal.caseBore && { ...journal.caseBore, isUncorrected: random() < 0.1 },
      })),
    })),
    shells: halvesStay ? stock.shells.map((shell) => ({ ...shell, mates: mates(shell) })) : stock.shells,
    newShells: stock.newShells.map((shell) => ({ ...shell, half: random() < 0.4 ? 'pair' : shell.half })),
    allowWorn,
    preferKeptPairs: random() < 0.6,
    rodsStay: random() < 0.2,
    newWithUsed: random() < 0.4,
  };
}

export interface WorkshopSize {
  readonly cranks: number;
  readonly pins: number;
  readonly mains: number;
  readonly rods: number;
  /** Rows of shells for the pins; mains get their own in the same proportion. */
  readonly shells: number;
  readonly massSpread?: number;
  readonly newShells?: boolean;
  /** Smallest step of a reading, grains; 1000 = 1 µm. */
  readonly step?: number;
  /** Clearance min and max of both fits, grains. */
  readonly range?: readonly [min: number, max: number];
  /** Standard deviation of the wear of journals and bores, grains. */
  readonly wear?: number;
}

function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** A part as read at several spots, rounded to the step. */
function readPart(
  random: Random,
  size: number,
  spots: number,
  form: number,
  step: number,
  gauge: Gauge,
): MeasuredPart {
  const readings = Array.from({ length: spots }, () => {
    return step * Math.round((size + form * normal(random)) / step);
  });
  const mean = Math.round(readings.reduce((sum, value) => sum + value, 0) / spots);
  return {
    ...uncertaintyOf(mean, { ...gauge, spots }),
    ...{ size: mean, largest: Math.max(...readings), smallest: Math.min(...readings) },
  };
}

/** Worn cranks with their rods and shells, measured to the step with two or three gauges. */
export function workshopStock(seed: number, size: WorkshopSize): Stock {
  const random = randomOf(seed);
  const { cranks, pins, mains, step = 1000 } = size;
  const gauged = { bore: pick(random, [BORE_BY_MIC, BORE_BY_RING]), wall: BALL };
  const wear = () => (size.wear ?? 3000) * normal(random);
  const [min, max] = size.range ?? [25_000, 55_000];
  const kind = (fit: string): KindLimits => ({
    engineType: 'A',
    fit,
    min,
    max,
    serviceLimit: 70_000,
    aim: 40_000,
    halfDifference: 6000,
    massSpread: fit === 'big end' ? size.massSpread : undefined,
  });
  const engines = Array.from({ length: cranks }, (_, place): StockEngine => {
    const name = `crank ${String(place + 1).padStart(2, '0')}`;
    const journal = (fit: string, at: number): StockJournal => ({
      engineType: 'A',
      fit,
      name: `${name} ${fit} ${at + 1}`,
      position: `${at + 1}`,
      part: readPart(random, JOURNAL - Math.abs(wear()), 4, 1000, step, OUTSIDE),
      caseBore:
        fit === 'main'
          ? {
              name: `${name} case ${at + 1}`,
              part: readPart(random, BORE + wear(), 4, 1200, step, gauged.bore),
              ran: { engine: name, position: `${at + 1}` },
            }
          : undefined,
    });
    const journals = [
      ...Array.from({ length: pins }, (_each, at) => journal('big end', at)),
      ...Array.from({ length: mains }, (_each, at) => journal('main', at)),
    ];
    return { name, journals };
  });
  const places = (fit: string) =>
    engines.flatMap(({ name, journals }) =>
      journals.filter((each) => each.fit === fit).map(({ position }) => ({ engine: name, position })),
    );
  const pinPlaces = places('big end');
  const rods = Array.from(
    { length: size.rods },
    (_, place): StockRod => ({
      name: `rod ${String(place + 1).padStart(4, '0')}`,
      engineType: 'A',
      part: readPart(random, BORE + wear(), 3, 1200, step, gauged.bore),
      mass: Math.round(6120 + 30 * normal(random)) / 10,
      ran: pinPlaces[place],
    }),
  );
  const shellsOf = (fit: string, count: number): StockShell[] => {
    const ran = places(fit);
    return Array.from(
      { length: count },
      (_, place): StockShell => ({
        name: `${fit} shell ${String(place + 1).padStart(4, '0')}`,
        engineType: 'A',
        fit,
        half: place % 2 === 0 ? 'upper' : 'lower',
        quantity: 1,
        part: readPart(
          random,
          WALL + 2500 * wholeOf(random, -1, 1) + 1000 * normal(random),
          2,
          600,
          step,
          gauged.wall,
        ),
        ran: ran[Math.floor(place / 2)],
      }),
    );
  };
  const newShells = ['upper', 'lower'].flatMap((half) =>
    [-1, 0, 1].map(
      (grade, place): StockNewShell => ({
        engineType: 'A',
        fit: 'big end',
        mark: `grade ${place}`,
        half: half as Half,
        part: partOf(WALL + 2500 * grade, 1250, 1250, NO_GAUGE),
        price: [9.5, 8.75, 9.95][place]!,
      }),
    ),
  );
  return {
    kinds: [kind('big end'), kind('main')],
    engines,
    rods,
    shells: [
      ...shellsOf('big end', size.shells),
      ...shellsOf('main', pins === 0 ? size.shells : Math.round((size.shells * mains) / pins)),
    ],
    newShells: size.newShells ? newShells : [],
    confidence: 0.95,
    allowUndecided: false,
    allowWorn: false,
    preferKeptPairs: false,
    rodsStay: false,
    newWithUsed: true,
  };
}

/** A stock under the settings that hold where none is typed: what ran together stays, and halves are pairs. */
export function withDefaults(stock: Stock): Stock {
  const places = new Map<string, StockShell[]>();
  const placeOf = ({ ran, fit }: StockShell) => `${ran?.engine} ${fit} ${ran?.position}`;
  for (const shell of stock.shells)
    places.set(placeOf(shell), [...(places.get(placeOf(shell)) ?? []), shell]);
  return {
    ...stock,
    shells: stock.shells.map((shell) => ({ ...shell, mates: matesOf(shell, places.get(placeOf(shell))!) })),
    preferKeptPairs: true,
    newWithUsed: false,
  };
}

/** A stock as one of another engine type, with names of its own. */
export function ofType(engineType: string, stock: Stock): Stock {
  const own = <Row extends object>(row: Row) => ({ ...row, engineType });
  const named = <Row extends { readonly name: string; readonly ran?: RanAt | undefined }>(row: Row) => ({
    ...row,
    name: `${engineType} ${row.name}`,
    ran: row.ran && { ...row.ran, engine: `${engineType} ${row.ran.engine}` },
  });
  return {
    ...stock,
    kinds: stock.kinds.map(own),
    engines: stock.engines.map(({ name, journals }) => ({
      name: `${engineType} ${name}`,
      journals: journals.map((journal) => ({
        ...named(own(journal)),
        caseBore: journal.caseBore && named(journal.caseBore),
      })),
    })),
    rods: stock.rods.map(own).map(named),
    shells: stock.shells.map(own).map(named),
    newShells: stock.newShells.map(own),
  };
}

/** One shelf of the parts of several stocks. */
export function together(first: Stock, ...others: readonly Stock[]): Stock {
  const all = [first, ...others];
  return {
    ...first,
    kinds: all.flatMap(({ kinds }) => kinds),
    engines: all.flatMap(({ engines }) => engines),
    rods: all.flatMap(({ rods }) => rods),
    shells: all.flatMap(({ shells }) => shells),
    newShells: all.flatMap(({ newShells }) => newShells),
  };
}

/** The same stock where some bores were measured with shells in them that would suit. */
export function withShellsIn(random: Random, stock: Stock): Stock {
  const bearing = (part: MeasuredPart): MeasuredPart => {
    const walls = 2 * WALL + 500 * wholeOf(random, -4, 4);
    const { size, largest, smallest } = part;
    return { ...part, size: size - walls, largest: largest - walls, smallest: smallest - walls };
  };
  const counts = new Map<string, FitKind & { count: number }>();
  const count = ({ engineType, fit }: FitKind) => {
    const key = JSON.stringify([engineType, fit]);
    const known = counts.get(key) ?? { engineType, fit, count: 0 };
    counts.set(key, { ...known, count: known.count + 1 });
  };
  const rods = stock.rods.map((rod): StockRod => {
    if (random() < 0.5) return rod;
    count({ engineType: rod.engineType, fit: 'big end' });
    return { ...rod, part: bearing(rod.part), hasShells: true };
  });
  const engines = stock.engines.map((engine) => ({
    ...engine,
    journals: engine.journals.map((journal): StockJournal => {
      const { caseBore } = journal;
      if (!caseBore?.part || random() < 0.5) return journal;
      count(journal);
      return { ...journal, caseBore: { ...caseBore, part: bearing(caseBore.part), hasShells: true } };
    }),
  }));
  const brought = [...counts.values()].flatMap((kind) => broughtShells(kind, kind.count));
  return { ...stock, rods, engines, shells: [...stock.shells, ...brought] };
}
