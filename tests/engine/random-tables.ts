/** The maker's tables, gauges and materials of a random book, slips included. */
import type { Random } from '../../scripts/demo/random.js';
import type { Plain } from './book-of.js';
import { chance, type Draw, inBook, type Kind, refused } from './random-draw.js';

const MARKS = {
  journal: ['J1', 'J2', 'J3'],
  bore: ['A', 'B', 'C'],
  shell: ['1', '2', '3', '4'],
} as const;

export function kindsOf(random: Random): Kind[] {
  const types = chance(random, 40) ? ['X', 'Y'] : ['X'];
  return types.flatMap((engineType) =>
    (['big end', 'main'] as const)
      .filter((fit) => fit === 'big end' || chance(random, 60))
      .map((fit) => {
        const journal = 10_000 * random.between(30, 80);
        const wall = 14_800 + 100 * random.between(0, 20);
        // The wished clearance is some 40 µm, in a range of 20 to 60 µm.
        const bore = journal + 2 * wall + 400;
        const clearance = [200 + 10 * random.between(-5, 5), 600 + 10 * random.between(-5, 5)] as const;
        return { engineType, fit, journal, bore, wall, clearance, marks: MARKS };
      }),
  );
}

export function limitsSheet(draw: Draw): Plain[][] {
  const { random, aside, kinds } = draw;
  const hasBearing = chance(aside, 60);
  const has = {
    service: chance(random, 50),
    sizes: chance(random, 70),
    wear: chance(random, 40),
    form: chance(random, 60),
    materials: chance(random, 60),
  };
  const length = (tenths: number, isTyped: boolean): Plain => {
    if (!isTyped || chance(random, 4)) return undefined;
    return chance(random, 1) ? refused(random) : inBook(draw, tenths);
  };
  const rows = kinds.flatMap((kind) => {
    const { engineType, fit, journal, bore, wall } = kind;
    const [min, max] = chance(random, 2) ? [...kind.clearance].reverse() : kind.clearance;
    const row: Plain[] = [
      engineType,
      fit,
      length(min!, true),
      length(max!, true),
      length(kind.clearance[1] + random.between(100, 400), has.service),
      chance(random, 20) ? inBook(draw, kind.clearance[0] + 130) : undefined,
      length(journal - 150, has.sizes),
      length(journal + 150, has.sizes),
      length(journal - 180, has.wear),
      length(bore - 120, has.sizes),
      length(bore + 120, has.sizes),
      length(random.between(20, 100), has.form),
      length(random.between(20, 100), has.form),
      has.materials ? random.pick(['steel', 'cast iron', 'bronze']) : undefined,
      has.materials ? random.pick(['aluminium', 'magnesium', 'steel', undefined]) : undefined,
    ];
    if (hasBearing) {
      const size = bore - 2 * wall;
      row.push(inBook(draw, size - aside.between(50, 200)), inBook(draw, size + aside.between(50, 200)));
    }
    return chance(random, 3) ? [row, row] : [row];
  });
  return [
    [
      ...['Engine type', 'Fit', 'Clearance min', 'Clearance max', 'Service limit', 'Aim'],
      ...['Journal min', 'Journal max', 'Wear limit', 'Bore min', 'Bore max'],
      ...['Out-of-round limit', 'Taper limit', 'Journal material', 'Bore material'],
      ...(hasBearing ? ['Bearing min', 'Bearing max'] : []),
    ],
    ...rows,
  ];
}

/** Classes side by side about the middle; now and then a gap, an overlap, a row upside down or a refused cell. */
function classRows(draw: Draw, kind: Kind, of: 'journal' | 'bore' | 'shell', middle: number, width: number) {
  const { random } = draw;
  const marks = kind.marks[of];
  return marks.flatMap((mark, place) => {
    if (chance(random, 3)) return [];
    const slip = chance(random, 5) ? random.between(-30, 30) : 0;
    const from = middle + (place - marks.length / 2) * width + slip;
    const ends = [from, from + width].map((tenths) => inBook(draw, tenths));
    if (chance(random, 2)) ends.reverse();
    return [[kind.engineType, kind.fit, of, mark, ends[0], chance(random, 1) ? refused(random) : ends[1]]];
  });
}

/** Classes, Selection and New shells, each of them in most books. */
export function marksSheets(draw: Draw): Record<string, Plain[][]> {
  const { random, kinds } = draw;
  const classes = kinds.flatMap((kind) => [
    ...classRows(draw, kind, 'journal', kind.journal, 100),
    ...classRows(draw, kind, 'bore', kind.bore, 80),
    ...classRows(draw, kind, 'shell', kind.wall, 30),
  ]);
  const selection = kinds.flatMap(({ engineType, fit, marks }) =>
    marks.journal.flatMap((journal, j) =>
      marks.bore.flatMap((bore, b) => {
        if (chance(random, 3)) return [];
        const row: Plain[] = [
          engineType,
          fit,
          journal,
          bore,
          chance(random, 2) ? 'Z' : marks.shell[(j + b) % 4],
        ];
        return chance(random, 2) ? [row, row] : [row];
      }),
    ),
  );
  const newShells = kinds.flatMap(({ engineType, fit, marks, wall }) =>
    marks.shell.map((mark, place) => {
      const from = wall + (place - 2) * 30;
      const price = chance(random, 30) ? random.between(1, 9) : undefined;
      return [engineType, fit, 'either', mark, inBook(draw, from), inBook(draw, from + 30), price];
    }),
  );
  return {
    ...(chance(random, 80) && {
      Classes: [['Engine type', 'Fit', 'Of', 'Mark', 'From', 'To'], ...classes],
    }),
    ...(chance(random, 70) && {
      Selection: [['Engine type', 'Fit', 'Journal mark', 'Bore mark', 'Shell mark'], ...selection],
    }),
    ...(chance(random, 40) && {
      'New shells': [['Engine type', 'Fit', 'Half', 'Mark', 'Wall from', 'Wall to', 'Price'], ...newShells],
    }),
  };
}

/** Micrometers, bore gauges set from them or from a ring, and a wall gauge; now and then a circle or a bad cell. */
export function gaugesSheet(draw: Draw): Plain[][] {
  const { random } = draw;
  const isCoarse = chance(random, 30);
  const error = () => inBook(draw, random.between(5, isCoarse ? 80 : 30));
  const resolution = () => inBook(draw, random.pick([1, 5, 10]));
  const rows = [
    ['M1', chance(random, 5) ? 'Ring' : undefined],
    ['M2', undefined],
    ['B1', 'M1'],
    ['B2', chance(random, 5) ? 'B2' : 'Ring'],
    ['W1', chance(random, 30) ? 'M1' : undefined],
    ['Ring', undefined],
  ].map(([gauge, setFrom]): Plain[] => [
    gauge,
    chance(random, 0.5) ? undefined : chance(random, 0.5) ? refused(random) : error(),
    chance(random, 20) ? undefined : resolution(),
    chance(random, 20) ? undefined : inBook(draw, random.between(0, 20)),
    chance(random, 10) ? random.pick(['aluminium', 'cast iron']) : undefined,
    setFrom,
    chance(random, 30) ? random.pick(['yes', 'no']) : undefined,
  ]);
  return [
    ['Gauge', 'Max error', 'Resolution', 'Repeatability', 'Material', 'Set from', 'Same at all sizes'],
    ...rows,
  ];
}

export function materialsSheet({ random }: Draw): Plain[][] {
  const error = () => (chance(random, 50) ? random.between(0, 30) / 10 : undefined);
  const rows: Plain[][] = [['bronze', 17.5, error()]];
  if (chance(random, 40)) rows.push(['aluminium', 22.3, error()]);
  if (chance(random, 20)) rows.push(['Steel', 12, error()]);
  return [['Material', 'Expansion', 'Expansion error'], ...rows];
}
