/** A seeded stock list of any length: a quarter journals, a quarter rods, half shells, and the fits that they make. */
import { type DemoRow, type DemoSheet, setup, sheet } from '../../scripts/demo/demo-book.js';
import {
  boreClasses,
  classesSheet,
  type EngineType,
  GAUGE,
  gaugesSheet,
  journalClasses,
  limitsSheet,
  markOf,
  mm,
  selectionSheet,
} from '../../scripts/demo/engine-type.js';
import { K4_BIG_END } from '../../scripts/demo/one-engine.js';
import { type Random, seeded } from '../../scripts/demo/random.js';

const TYPE: EngineType = {
  name: 'Type K4',
  fits: [{ ...K4_BIG_END, limits: { ...K4_BIG_END.limits, 'Journal material': 'steel' } }],
};
const COMMON = [
  'Part',
  'Engine type',
  'Engine',
  'Position',
  'Mark',
  'Temperature',
  'Gauge',
  'Usable',
  'Bin',
  'Note',
];
const JOURNAL_SPOTS = ['A 0', 'A 90', 'B 0', 'B 90'];
const BORE_SPOTS = ['A 0', 'A 60', 'A 120', 'B 0', 'B 60', 'B 120'];
const WALLS = ['Wall 1', 'Wall 2', 'Wall 3'];
/** Fits are kept in this many lots, each a row of Summary. */
const LOTS = 20;
const PINS = 4;

export interface StockListOptions {
  /** Journals, rods and shells together. */
  readonly rows: number;
  readonly seed: number;
  /** Whether journals belong to cranks, so that there are engines to match. */
  readonly withEngines?: boolean;
}

/** The sheets of the book; rows of the four long ones are made as they are asked for. */
export function stockList({ rows, seed, withEngines = false }: StockListOptions): DemoSheet[] {
  const random = seeded(seed);
  const fits = Math.floor(rows / 4);
  const common = (part: string, gauge: string, at: number): DemoRow => ({
    Part: part,
    'Engine type': TYPE.name,
    Engine: withEngines ? `Crank ${Math.floor(at / PINS) + 1}` : undefined,
    Position: withEngines ? (at % PINS) + 1 : undefined,
    Temperature: random.between(190, 240) / 10,
    Gauge: gauge,
    Bin: `Rack ${1 + (at % 400)}`,
    Note: at % 10 === 0 ? 'cleaned' : undefined,
  });
  const numbers = Array.from({ length: fits }, (_, at) => at);
  const journals = numbers.map((at) => {
    const size = 51986 + random.between(0, 12);
    return {
      ...common(`P${at + 1}`, GAUGE.journal, at),
      Fit: 'big end',
      Mark: markOf(size, journalClasses(K4_BIG_END)),
      ...spots(JOURNAL_SPOTS, size, random),
    };
  });
  const rods = numbers.map((at) => {
    const size = 55002 + random.between(0, 13);
    return {
      ...common(`R${at + 1}`, GAUGE.bore, at),
      Mark: markOf(size, boreClasses(K4_BIG_END)),
      Mass: 600 + random.between(0, 12),
      ...spots(BORE_SPOTS, size, random),
    };
  });
  const shells = numbers.flatMap((at) =>
    ['upper', 'lower'].map((half) => ({
      ...common(`${half[0]!.toUpperCase()}${at + 1}`, GAUGE.shell, at),
      Fit: 'big end',
      Half: half,
      ...spots(WALLS, 1483 + random.between(0, 8), random),
    })),
  );
  return [
    setup({ 'Length unit': 'mm', 'Temperature unit': 'C', Confidence: 0.95, Aim: 'middle' }),
    limitsSheet(TYPE),
    classesSheet(TYPE),
    selectionSheet(TYPE),
    gaugesSheet(),
    sheet('Journals', [...COMMON.toSpliced(3, 0, 'Fit'), ...JOURNAL_SPOTS], journals),
    sheet('Rods', [...COMMON.toSpliced(5, 0, 'Mass'), ...BORE_SPOTS], rods),
    sheet('Shells', [...COMMON.toSpliced(3, 0, 'Fit', 'Half'), ...WALLS], shells),
    ...(withEngines ? [] : [fitsSheet(numbers)]),
  ];
}

function fitsSheet(numbers: readonly number[]): DemoSheet {
  const lot = Math.ceil(numbers.length / LOTS);
  const headers = [
    'Engine',
    'Fit',
    'Position',
    'Journal',
    'Bore',
    'Upper shell',
    'Lower shell',
    'Strip reading',
  ];
  const rows = numbers.map((at) => ({
    Engine: `Lot ${Math.floor(at / lot) + 1}`,
    Fit: 'big end',
    Position: (at % lot) + 1,
    Journal: `P${at + 1}`,
    Bore: `R${at + 1}`,
    'Upper shell': `U${at + 1}`,
    'Lower shell': `L${at + 1}`,
  }));
  return sheet('Fits', headers, rows);
}

/** Spots within 2 µm of a size, read to a tenth of a micrometre. */
function spots(headers: readonly string[], size: number, random: Random): DemoRow {
  return Object.fromEntries(headers.map((header) => [header, mm(size + random.between(-20, 20) / 10)]));
}
