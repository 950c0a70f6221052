/** A stock of cranks, rods and half-shells of one type, to be made into engines. */
import { type DemoBook, type DemoRow, notes, setup, sheet } from './demo-book.js';
import {
  classesSheet,
  type EngineType,
  GAUGE,
  gaugesSheet,
  limitsSheet,
  mm,
  selectionSheet,
  shellClasses,
} from './engine-type.js';
import { K4_BIG_END } from './one-engine.js';
import { type Random, seeded } from './random.js';

const TYPE: EngineType = {
  name: 'Type K4',
  fits: [{ ...K4_BIG_END, limits: { ...K4_BIG_END.limits, 'Journal material': 'steel' } }],
};

/** Pins of the six cranks, µm: C4 and C5 are worn, C6 has a pin below its wear limit. */
const CRANKS: readonly (readonly number[])[] = [
  [51996, 51996, 51995, 51996],
  [51993, 51992, 51993, 51991],
  [51990, 51991, 51990, 51989],
  [51984, 51985, 51983, 51984],
  [51972, 51970, 51973, 51971],
  [51991, 51950, 51990, 51992],
];
const RODS = 40;
const QUARTER = 4;

export function stock(): DemoBook {
  const random = seeded(6024);
  return {
    name: 'stock.xlsx',
    sheets: [
      notes(
        'A stock of 6 cranks with 24 pins, 40 rods and 160 half-shells, measured at 20 °C to 1 µm.',
        'New shells may be bought. Rods of one crank stay within 3 g.',
      ),
      setup({ 'Length unit': 'mm', 'New shells': 'yes', 'Mass spread': 3, 'Half difference': 0.003 }),
      limitsSheet(TYPE),
      classesSheet(TYPE),
      selectionSheet(TYPE),
      gaugesSheet(),
      pins(),
      rods(random),
      shells(random),
      newShells(),
    ],
  };
}

/** The spots of a pin or a rod: all alike, or where its size is odd one 1 µm above and one 1 µm below. */
function diameters(size: number, headers: readonly string[]): DemoRow {
  const off = size % 2;
  return Object.fromEntries(
    headers.map((header, at) => [header, mm(size + (at === 0 ? off : at === 1 ? -off : 0))]),
  );
}

function pins() {
  const readings = ['A 0', 'A 90', 'B 0', 'B 90'];
  const rows = CRANKS.flatMap((sizes, crank) =>
    sizes.map((size, pin) => ({
      Part: `C${crank + 1} P${pin + 1}`,
      Engine: `C${crank + 1}`,
      Fit: 'big end',
      Position: pin + 1,
      Gauge: GAUGE.journal,
      Bin: `Rack ${crank + 1}`,
      ...diameters(size, readings),
    })),
  );
  return sheet('Journals', ['Part', 'Engine', 'Fit', 'Position', 'Gauge', 'Bin', ...readings], rows);
}

function rods(random: Random) {
  const readings = ['A 0', 'A 60', 'A 120', 'B 0', 'B 60', 'B 120'];
  const rows = Array.from({ length: RODS }, (_, at): DemoRow => {
    // The first 24 ran on the cranks, four of about one mass each.
    const crank = Math.floor(at / QUARTER);
    const ran = crank < CRANKS.length;
    return {
      Part: `R${at + 1}`,
      Engine: ran ? `C${crank + 1}` : undefined,
      Position: ran ? (at % QUARTER) + 1 : undefined,
      Mass: 600 + 6 * (ran ? crank % 3 : random.between(0, 2)) + random.between(0, 3),
      Gauge: GAUGE.bore,
      Usable: at === 30 ? 'no' : undefined,
      Bin: `Shelf ${1 + (at % 5)}`,
      Note: at === 30 ? 'bent' : undefined,
      ...diameters(55004 + 3 * random.between(0, 3), readings),
    };
  });
  const headers = ['Part', 'Engine', 'Position', 'Mass', 'Gauge', 'Usable', 'Bin', 'Note', ...readings];
  return sheet('Rods', headers, rows);
}

/** 160 half-shells: 60 singles that ran on the cranks or are loose, and 100 in rows of several alike. */
function shells(random: Random) {
  const readings = ['Wall 1', 'Wall 2', 'Wall 3'];
  const rows: DemoRow[] = [];
  const add = (half: string, wall: number, row: DemoRow) => {
    rows.push({
      Part: `${half[0]!.toUpperCase()}${String(rows.length + 1).padStart(3, '0')}`,
      Half: half,
      Gauge: GAUGE.shell,
      Bin: `Box ${1 + (rows.length % 8)}`,
      ...row,
      ...Object.fromEntries(readings.map((header) => [header, mm(wall)])),
    });
  };
  for (const [crank, sizes] of CRANKS.entries()) {
    for (const pin of sizes.keys()) {
      const ran = { Engine: `C${crank + 1}`, Position: pin + 1 };
      const wall = 1485 + random.between(0, 7);
      add('upper', wall, ran);
      add('lower', wall + random.between(-1, 1), ran);
    }
  }
  for (let single = 0; single < 12; single++)
    add(random.pick(['upper', 'lower']), random.between(1483, 1491), {});
  for (let row = 0; row < 25; row++) {
    const half = row < 10 ? 'upper' : row < 20 ? 'lower' : 'either';
    add(half, 1483 + (row % 9), { Quantity: 4 });
  }
  const headers = ['Part', 'Engine', 'Position', 'Half', 'Quantity', 'Gauge', 'Bin', ...readings];
  return sheet('Shells', headers, rows);
}

function newShells() {
  const rows = shellClasses(K4_BIG_END).map(({ mark, from, to }, step) => ({
    'Engine type': TYPE.name,
    Fit: 'big end',
    Half: 'either',
    Mark: mark,
    'Wall from': mm(from),
    'Wall to': mm(to - 1),
    Price: 4.5 + step / 2,
  }));
  const headers = ['Engine type', 'Fit', 'Half', 'Mark', 'Wall from', 'Wall to', 'Price'];
  return sheet('New shells', headers, rows);
}
