/** One four-cylinder engine with aluminium cases, measured in a warm workshop. */
import { type DemoBook, type DemoRow, notes, setup, sheet } from './demo-book.js';
import { BORE_HEADERS, engineParts, JOURNAL_HEADERS, SHELL_HEADERS, shown } from './engine-parts.js';
import {
  classesSheet,
  type EngineType,
  type FitTables,
  gaugesSheet,
  limitsSheet,
  selectionSheet,
} from './engine-type.js';
import { seeded } from './random.js';

const CELSIUS = 23.5;
const EXPANSION = { journal: 12, rod: 11.5, case: 23 };

export const K4_BIG_END: FitTables = {
  fit: 'big end',
  journalMax: 52000,
  boreMin: 55000,
  clearanceMin: 20,
  clearanceMax: 50,
  shellMarks: ['V', 'W', 'X', 'Y', 'Z'],
  limits: {
    'Service limit': 0.07,
    'Wear limit': 51.96,
    'Neighbour spread': 0.015,
    'Journal material': 'forged steel',
    'Bore material': 'steel',
  },
};
const MAIN: FitTables = {
  fit: 'main',
  journalMax: 58000,
  boreMin: 62000,
  clearanceMin: 18,
  clearanceMax: 46,
  shellMarks: ['P', 'Q', 'R', 'S', 'T'],
  limits: {
    'Service limit': 0.06,
    'Wear limit': 57.96,
    'Neighbour spread': 0.015,
    'Journal material': 'forged steel',
    'Bore material': 'aluminium',
  },
};
const TYPE: EngineType = { name: 'Type K4', fits: [K4_BIG_END, MAIN] };

export function oneEngine(): DemoBook {
  const bench = { celsius: CELSIUS, expansion: EXPANSION, random: seeded(4104) };
  const bigEnds = engineParts(
    'E1',
    K4_BIG_END,
    [
      { position: '1', journal: 51996, bore: 55004 },
      { position: '2', journal: 51990, bore: 55009 },
      { position: '3', journal: 51966, bore: 55010, journalMark: '3' },
      { position: '4', journal: 51985, bore: 55013 },
    ],
    bench,
  );
  const mains = engineParts(
    'E1',
    MAIN,
    [
      { position: '1', journal: 57995, bore: 62005 },
      { position: '2', journal: 57991, bore: 62009 },
      { position: '3', journal: 57990, bore: 62010, thicker: -5 },
      { position: '4', journal: 57985, bore: 62009 },
      { position: '5', journal: 57986, bore: 62014 },
    ],
    bench,
  );
  // On the shelf lies a pair that has run nowhere here, thicker than that of main 3.
  const spare = mains.shells
    .filter(({ Position }) => Position === '3')
    .map((row) => ({
      ...row,
      ...{ Part: `Shelf ${row.Half}`, Engine: '', Position: '' },
      ...thicker(row, ['Wall 1', 'Wall 2', 'Wall 3'], 4),
    }));
  // The first reading of two journals was taken twice.
  const repeats: Readonly<Record<string, number>> = {
    'E1 P1': shown(51997, CELSIUS, EXPANSION.journal),
    'E1 M3': shown(57990, CELSIUS, EXPANSION.journal),
  };
  const journals = [...bigEnds.journals, ...mains.journals].map((row) => ({
    ...row,
    'A 0 #2': repeats[String(row.Part)],
  }));
  const afterFirst = JOURNAL_HEADERS.indexOf('A 0') + 1;
  return {
    name: 'one-engine.xlsx',
    sheets: [
      notes(
        'Four big ends and five mains of one engine, measured at 23.5 °C with gauges of steel.',
        'The bore gauge is set from the micrometer that measures the journals.',
      ),
      setup({ 'Length unit': 'mm', 'Temperature unit': 'C', Confidence: 0.95, Aim: 'middle' }),
      limitsSheet(TYPE),
      classesSheet(TYPE),
      selectionSheet(TYPE),
      gaugesSheet(),
      sheet(
        'Materials',
        ['Material', 'Expansion'],
        [
          { Material: 'forged steel', Expansion: EXPANSION.journal },
          { Material: 'aluminium', Expansion: EXPANSION.case },
        ],
      ),
      sheet('Journals', JOURNAL_HEADERS.toSpliced(afterFirst, 0, 'A 0 #2'), journals),
      sheet('Rods', BORE_HEADERS, bigEnds.bores),
      sheet('Cases', BORE_HEADERS, mains.bores),
      sheet('Shells', SHELL_HEADERS, [...bigEnds.shells, ...mains.shells, ...spare]),
    ],
  };
}

/** The walls of a row, in whole steps of 1 µm more. */
function thicker(row: DemoRow, walls: readonly string[], um: number): DemoRow {
  return Object.fromEntries(walls.map((wall) => [wall, Math.round(1000 * Number(row[wall]) + um) / 1000]));
}
