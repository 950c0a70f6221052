/** The measured parts of one engine, place by place. Lengths in µm at 20 °C; readings in mm as shown. */
import type { DemoRow } from './demo-book.js';
import {
  boreClasses,
  type FitTables,
  GAUGE,
  journalClasses,
  markOf,
  mm,
  selected,
  shellClasses,
} from './engine-type.js';
import type { Random } from './random.js';

export interface Place {
  readonly position: string;
  readonly journal: number;
  readonly bore: number;
  /** How much thicker than the middle of its class each shell is. */
  readonly thicker?: number;
  /** The stamped mark of the journal, where its size has left its class. */
  readonly journalMark?: string;
  /** How much larger the journal is at station A than at B. */
  readonly taper?: number;
}

export interface Bench {
  readonly celsius: number;
  /** 1e-6 per K. */
  readonly expansion: { readonly journal: number; readonly rod: number; readonly case: number };
  readonly random: Random;
}

export interface EngineParts {
  readonly journals: DemoRow[];
  readonly bores: DemoRow[];
  readonly shells: DemoRow[];
}

const STEEL = 11.5;

/** What a steel gauge of 1 µm shows at the bench of a size at 20 °C. */
export function shown(size: number, celsius: number, expansion: number): number {
  const growth = (each: number) => 1 + each * 1e-6 * (celsius - 20);
  return mm(Math.round((size * growth(expansion)) / growth(STEEL)));
}

export function engineParts(
  engine: string,
  tables: FitTables,
  places: readonly Place[],
  { celsius, expansion, random }: Bench,
): EngineParts {
  const parts: EngineParts = { journals: [], bores: [], shells: [] };
  const isMain = tables.fit === 'main';
  for (const place of places) {
    const { position, taper = 0, thicker = 0 } = place;
    const journalMark = place.journalMark ?? markOf(place.journal, journalClasses(tables))!;
    const boreMark = markOf(place.bore, boreClasses(tables))!;
    const shellMark = selected(tables, journalMark, boreMark);
    const at = { Engine: engine, Position: position, Temperature: celsius };

    const journal = (larger: number) =>
      shown(place.journal + larger + random.between(-1, 1), celsius, expansion.journal);
    parts.journals.push({
      Part: `${engine} ${isMain ? 'M' : 'P'}${position}`,
      Fit: tables.fit,
      Mark: journalMark,
      Gauge: GAUGE.journal,
      ...at,
      'A 0': journal(taper / 2),
      'A 90': journal(taper / 2),
      'B 0': journal(-taper / 2),
      'B 90': journal(-taper / 2),
    });

    const bore = () => {
      const grows = isMain ? expansion.case : expansion.rod;
      return shown(place.bore + random.between(-1, 1), celsius, grows);
    };
    parts.bores.push({
      Part: `${engine} ${isMain ? 'H' : 'R'}${position}`,
      Mark: boreMark,
      Gauge: GAUGE.bore,
      ...at,
      'A 0': bore(),
      'A 60': bore(),
      'A 120': bore(),
      'B 0': bore(),
      'B 60': bore(),
      'B 120': bore(),
    });

    const shellClass = shellClasses(tables).find(({ mark }) => mark === shellMark)!;
    const middle = Math.floor((shellClass.from + shellClass.to) / 2) + thicker;
    for (const half of ['upper', 'lower']) {
      const wall = () => mm(middle + random.between(0, 1));
      parts.shells.push({
        Part: `${engine} ${isMain ? 'M' : 'P'}${position} ${half}`,
        Fit: tables.fit,
        Half: half,
        Mark: shellMark,
        Gauge: GAUGE.shell,
        ...at,
        'Wall 1': wall(),
        'Wall 2': wall(),
        'Wall 3': wall(),
      });
    }
  }
  return parts;
}

export const JOURNAL_HEADERS = [
  'Part',
  'Engine',
  'Fit',
  'Position',
  'Mark',
  'Temperature',
  'Gauge',
  'A 0',
  'A 90',
  'B 0',
  'B 90',
];
export const BORE_HEADERS = [
  'Part',
  'Engine',
  'Position',
  'Mark',
  'Temperature',
  'Gauge',
  'A 0',
  'A 60',
  'A 120',
  'B 0',
  'B 60',
  'B 120',
];
export const SHELL_HEADERS = [
  'Part',
  'Engine',
  'Fit',
  'Position',
  'Half',
  'Mark',
  'Temperature',
  'Gauge',
  'Wall 1',
  'Wall 2',
  'Wall 3',
];
