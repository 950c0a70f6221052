/**
 * An invented engine type: its limits, size classes and shell selection, all from a few numbers, so
 * that the tables agree with each other. Lengths in µm.
 */
import { type DemoRow, type DemoSheet, sheet } from './demo-book.js';

export interface FitTables {
  readonly fit: 'big end' | 'main';
  /** Upper end of the largest journal class; the classes follow downwards. */
  readonly journalMax: number;
  /** Lower end of the smallest bore class; the classes follow upwards. */
  readonly boreMin: number;
  readonly clearanceMin: number;
  readonly clearanceMax: number;
  readonly shellMarks: readonly string[];
  readonly limits: DemoRow;
}

export interface EngineType {
  readonly name: string;
  readonly fits: readonly FitTables[];
}

export interface SizeClass {
  readonly mark: string;
  readonly from: number;
  readonly to: number;
}

const JOURNAL_MARKS = ['1', '2', '3'];
const BORE_MARKS = ['A', 'B', 'C'];
/** Width of a class of journals or bores; a class of shells is half as wide, since two stand in a fit. */
const CLASS_WIDTH = 6;

export const mm = (micrometres: number) => Number((micrometres / 1000).toFixed(4));

export function journalClasses({ journalMax }: FitTables): SizeClass[] {
  return JOURNAL_MARKS.map((mark, step) => {
    const to = journalMax - step * CLASS_WIDTH;
    return { mark, from: to - CLASS_WIDTH, to };
  });
}

export function boreClasses({ boreMin }: FitTables): SizeClass[] {
  return BORE_MARKS.map((mark, step) => {
    const from = boreMin + step * CLASS_WIDTH;
    return { mark, from, to: from + CLASS_WIDTH };
  });
}

/** The middle shell of each step brings the middle of both classes to the middle of the range. */
export function shellClasses({
  journalMax,
  boreMin,
  clearanceMin,
  clearanceMax,
  shellMarks,
}: FitTables): SizeClass[] {
  const gap = boreMin - journalMax + CLASS_WIDTH;
  const width = CLASS_WIDTH / 2;
  const first = (gap - (clearanceMin + clearanceMax) / 2 - width) / 2;
  return shellMarks.map((mark, step) => {
    const from = first + step * width;
    return { mark, from, to: from + width };
  });
}

/** The shell mark for two marks: the thicker, the larger the bore and the smaller the journal. */
export function selected({ shellMarks }: FitTables, journalMark: string, boreMark: string): string {
  return shellMarks[JOURNAL_MARKS.indexOf(journalMark) + BORE_MARKS.indexOf(boreMark)]!;
}

export function markOf(size: number, classes: readonly SizeClass[]): string | undefined {
  return classes.find(({ from, to }) => from <= size && size < to)?.mark;
}

export const LIMIT_HEADERS = [
  'Engine type',
  'Fit',
  'Clearance min',
  'Clearance max',
  'Service limit',
  'Journal min',
  'Journal max',
  'Wear limit',
  'Bore min',
  'Bore max',
  'Out-of-round limit',
  'Taper limit',
  'Neighbour spread',
  'Journal material',
  'Bore material',
  'Source',
];

export function limitsSheet({ name, fits }: EngineType): DemoSheet {
  const rows = fits.map((tables) => ({
    'Engine type': name,
    Fit: tables.fit,
    'Clearance min': mm(tables.clearanceMin),
    'Clearance max': mm(tables.clearanceMax),
    'Journal min': mm(tables.journalMax - JOURNAL_MARKS.length * CLASS_WIDTH),
    'Journal max': mm(tables.journalMax),
    'Bore min': mm(tables.boreMin),
    'Bore max': mm(tables.boreMin + BORE_MARKS.length * CLASS_WIDTH),
    'Out-of-round limit': 0.006,
    'Taper limit': 0.006,
    Source: 'invented',
    ...tables.limits,
  }));
  return sheet('Limits', LIMIT_HEADERS, rows);
}

export function classesSheet({ name, fits }: EngineType): DemoSheet {
  const rows = fits.flatMap((tables) => {
    const rowsOf = (of: string, classes: readonly SizeClass[]) =>
      classes.map(({ mark, from, to }) => ({
        'Engine type': name,
        Fit: tables.fit,
        Of: of,
        Mark: mark,
        From: mm(from),
        To: mm(to),
      }));
    return [
      ...rowsOf('journal', journalClasses(tables)),
      ...rowsOf('bore', boreClasses(tables)),
      ...rowsOf('shell', shellClasses(tables)),
    ];
  });
  return sheet('Classes', ['Engine type', 'Fit', 'Of', 'Mark', 'From', 'To'], rows);
}

export function selectionSheet({ name, fits }: EngineType): DemoSheet {
  const rows = fits.flatMap((tables) =>
    JOURNAL_MARKS.flatMap((journalMark) =>
      BORE_MARKS.map((boreMark) => ({
        'Engine type': name,
        Fit: tables.fit,
        'Journal mark': journalMark,
        'Bore mark': boreMark,
        'Shell mark': selected(tables, journalMark, boreMark),
      })),
    ),
  );
  return sheet('Selection', ['Engine type', 'Fit', 'Journal mark', 'Bore mark', 'Shell mark'], rows);
}

/** One micrometer for journals, whose error is one constant; the bore gauge is set from it, so that it cancels in a fit. */
export const GAUGE = { journal: 'Micrometer', bore: 'Bore gauge', shell: 'Ball micrometer' } as const;

export function gaugesSheet(): DemoSheet {
  const headers = [
    'Gauge',
    'Max error',
    'Resolution',
    'Repeatability',
    'Material',
    'Set from',
    'Same at all sizes',
  ];
  return sheet('Gauges', headers, [
    {
      Gauge: GAUGE.journal,
      'Max error': 0.002,
      Resolution: 0.001,
      Repeatability: 0.0005,
      Material: 'steel',
      'Same at all sizes': 'yes',
    },
    {
      Gauge: GAUGE.bore,
      'Max error': 0.001,
      Resolution: 0.001,
      Repeatability: 0.0007,
      Material: 'steel',
      'Set from': GAUGE.journal,
    },
    { Gauge: GAUGE.shell, 'Max error': 0.001, Resolution: 0.001, Repeatability: 0.0005, Material: 'steel' },
  ]);
}
