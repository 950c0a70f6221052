/** One two-cylinder engine as a folder of .csv files, as a spreadsheet with decimal commas exports them. */
import { type DemoBook, notes, setup, sheet } from './demo-book.js';
import { BORE_HEADERS, engineParts, JOURNAL_HEADERS, SHELL_HEADERS } from './engine-parts.js';
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
  journalMax: 40000,
  boreMin: 43000,
  clearanceMin: 18,
  clearanceMax: 48,
  shellMarks: ['V', 'W', 'X', 'Y', 'Z'],
  limits: { 'Service limit': 0.065, 'Wear limit': 39.965 },
};
const MAIN: FitTables = {
  fit: 'main',
  journalMax: 46000,
  boreMin: 50000,
  clearanceMin: 20,
  clearanceMax: 50,
  shellMarks: ['P', 'Q', 'R', 'S', 'T'],
  limits: { 'Service limit': 0.065, 'Wear limit': 45.965, 'Bore material': 'cast iron' },
};
const TYPE: EngineType = { name: 'Type R2', fits: [BIG_END, MAIN] };

export function decimalCommas(): DemoBook {
  const bench = {
    celsius: 21.5,
    expansion: { journal: 11.5, rod: 11.5, case: 10.5 },
    random: seeded(2202),
  };
  const bigEnds = engineParts(
    'E1',
    BIG_END,
    [
      { position: '1', journal: 39995, bore: 43005 },
      { position: '2', journal: 39990, bore: 43009 },
    ],
    bench,
  );
  const mains = engineParts(
    'E1',
    MAIN,
    [
      { position: '1', journal: 45991, bore: 50008 },
      { position: '2', journal: 45985, bore: 50009 },
      { position: '3', journal: 45990, bore: 50014 },
    ],
    bench,
  );
  const rods = bigEnds.bores.map((row, at) => ({
    ...row,
    Mass: [412.5, 413.2][at],
    Note: ['caps torqued; no shells', 'Ø measured twice, "A 60" again'][at],
  }));
  return {
    name: 'decimal-commas',
    sheets: [
      notes('Two big ends and three mains, measured at 21,5 °C. Fields are separated by semicolons.'),
      setup({ 'Length unit': 'mm', 'Temperature unit': 'C', Confidence: '95 %', 'Half difference': 0.003 }),
      limitsSheet(TYPE),
      classesSheet(TYPE),
      selectionSheet(TYPE),
      gaugesSheet(),
      sheet('Journals', JOURNAL_HEADERS, [...bigEnds.journals, ...mains.journals]),
      sheet('Rods', [...BORE_HEADERS, 'Mass', 'Note'], rods),
      sheet('Cases', BORE_HEADERS, mains.bores),
      sheet('Shells', SHELL_HEADERS, [...bigEnds.shells, ...mains.shells]),
    ],
  };
}
