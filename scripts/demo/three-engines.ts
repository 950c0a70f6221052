/** Three engines of one type, with the faults that a workshop meets: in a table, in a cell and in metal. */
import { type DemoBook, type DemoRow, notes, setup, sheet } from './demo-book.js';
import {
  BORE_HEADERS,
  type EngineParts,
  engineParts,
  JOURNAL_HEADERS,
  type Place,
  SHELL_HEADERS,
} from './engine-parts.js';
import {
  classesSheet,
  type EngineType,
  type FitTables,
  gaugesSheet,
  limitsSheet,
  selectionSheet,
} from './engine-type.js';
import { seeded } from './random.js';

const BIG_END: FitTables = {
  fit: 'big end',
  journalMax: 44000,
  boreMin: 47000,
  clearanceMin: 18,
  clearanceMax: 48,
  shellMarks: ['V', 'W', 'X', 'Y', 'Z'],
  limits: { 'Service limit': 0.06, 'Wear limit': 43.965, 'Neighbour spread': 0.02 },
};
const MAIN: FitTables = {
  fit: 'main',
  journalMax: 50000,
  boreMin: 54000,
  clearanceMin: 20,
  clearanceMax: 50,
  shellMarks: ['P', 'Q', 'R', 'S', 'T'],
  limits: {
    'Service limit': 0.06,
    'Wear limit': 49.965,
    'Neighbour spread': 0.02,
    'Bore material': 'cast iron',
  },
};
const TYPE: EngineType = { name: 'Type T3', fits: [BIG_END, MAIN] };

const ENGINES: readonly { engine: string; bigEnds: readonly Place[]; mains: readonly Place[] }[] = [
  {
    engine: 'E1',
    bigEnds: [
      { position: '1', journal: 43996, bore: 47004 },
      { position: '2', journal: 43991, bore: 47008 },
      { position: '3', journal: 43985, bore: 47014 },
    ],
    mains: [
      { position: '1', journal: 49996, bore: 54004 },
      { position: '2', journal: 49995, bore: 54008 },
      { position: '3', journal: 49991, bore: 54009 },
      { position: '4', journal: 49985, bore: 54014 },
    ],
  },
  {
    engine: 'E2',
    bigEnds: [
      { position: '1', journal: 43990, bore: 47011 },
      // Worn out.
      { position: '2', journal: 43952, bore: 47009, journalMark: '2' },
      { position: '3', journal: 43995, bore: 47005 },
    ],
    mains: [
      { position: '1', journal: 49990, bore: 54008 },
      // Tapered.
      { position: '2', journal: 49990, bore: 54009, taper: 12 },
      { position: '3', journal: 49990, bore: 54010 },
      { position: '4', journal: 49995, bore: 54004 },
    ],
  },
  {
    engine: 'E3',
    bigEnds: [
      { position: '1', journal: 43985, bore: 47009 },
      { position: '2', journal: 43991, bore: 47004 },
      { position: '3', journal: 43990, bore: 47008 },
    ],
    mains: [
      { position: '1', journal: 49985, bore: 54008 },
      { position: '2', journal: 49991, bore: 54009 },
      { position: '3', journal: 49984, bore: 54014 },
      { position: '4', journal: 49991, bore: 54010 },
    ],
  },
];

export function threeEngines(): DemoBook {
  const bench = {
    celsius: 21,
    expansion: { journal: 11.5, rod: 11.5, case: 10.5 },
    random: seeded(3303),
  };
  const bigEnds: EngineParts[] = [];
  const mains: EngineParts[] = [];
  for (const { engine, bigEnds: pins, mains: seats } of ENGINES) {
    bigEnds.push(engineParts(engine, BIG_END, pins, bench));
    mains.push(engineParts(engine, MAIN, seats, bench));
  }
  const all = [...bigEnds, ...mains];
  const ofEngine = (row: DemoRow) => String(row.Engine);
  const byEngine = (rows: readonly DemoRow[]) =>
    rows.toSorted((a, b) => ofEngine(a).localeCompare(ofEngine(b), 'en'));

  const journals = byEngine(all.flatMap(({ journals }) => journals)).map((row) =>
    // A letter O in place of a zero.
    row.Part === 'E1 M2' ? { ...row, 'B 0': '49.99O' } : row,
  );
  const shells = byEngine(all.flatMap(({ shells }) => shells)).map((row) =>
    row.Part === 'E3 P1 lower'
      ? { ...row, 'Wall 1': undefined, 'Wall 2': undefined, 'Wall 3': undefined, Note: 'not yet measured' }
      : row,
  );
  const lots = bigEnds.flatMap(({ bores }) => bores).map((row, at) => ({ ...row, 'Lot 3': 301 + (at % 4) }));
  const classes = classesSheet(TYPE);
  const numberFormat = '0.000" mm"';
  return {
    name: 'three-engines.xlsx',
    sheets: [
      notes(
        'Three engines of one type, three big ends and four mains each, measured at 21 °C.',
        'Classes was copied by hand and has one slip. One reading of Journals holds a letter.',
        'The column Lot 3 of Rods is the workshop’s own and no reading.',
      ),
      setup({ Confidence: '95 %' }),
      { ...limitsSheet(TYPE), numberFormat },
      { ...classes, rows: classes.rows.map(withSlip), numberFormat },
      selectionSheet(TYPE),
      gaugesSheet(),
      { ...sheet('Journals', JOURNAL_HEADERS, journals), numberFormat },
      { ...sheet('Rods', [...BORE_HEADERS, 'Lot 3'], lots), numberFormat },
      {
        ...sheet(
          'Cases',
          BORE_HEADERS,
          mains.flatMap(({ bores }) => bores),
        ),
        numberFormat,
      },
      { ...sheet('Shells', [...SHELL_HEADERS, 'Note'], shells), numberFormat },
    ],
  };
}

/** The class B of big-end bores ends at 47.010 instead of 47.012, which leaves a gap to C. */
function withSlip(row: DemoBook['sheets'][number]['rows'][number]) {
  const [type, fit, of, mark, from] = row;
  return fit === 'big end' && of === 'bore' && mark === 'B' ? [type, fit, of, mark, from, 47.01] : row;
}
