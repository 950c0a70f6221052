/** A blank measurement workbook as plain data: what each sheet asks for, before it is drawn as cells. */

import { CAUTION } from '../caution.js';
import { GAUGE_STUDY } from '../input-sheets/gauge-study.js';
import { GAUGES } from '../input-sheets/gauges.js';
import { inputSheet } from '../input-sheets/index.js';
import { columnsOf as columnsOfSheet } from '../input-sheets/input-sheet.js';
import { LIMITS } from '../input-sheets/limits.js';
import { SETUP_ITEMS } from '../input-sheets/setup.js';
import {
  type BlankGauge,
  type EngineDescription,
  lengthCell,
  readingHeaders,
  wallHeaders,
} from './description.js';

/** What a cell may hold; a wrong value brings a warning, as a text with its unit is right too. */
export type InputKind = 'text' | 'size' | 'length' | 'mass' | 'number' | 'temperature' | 'whole';

export interface BlankColumn {
  readonly header: string;
  /** In characters. */
  readonly width: number;
  /** The sentence that a spreadsheet program shows at the cell. */
  readonly help: string;
  readonly kind: InputKind;
  /** Words to choose from, or the cells that list them. */
  readonly choices?:
    | readonly string[]
    | { readonly sheet: string; readonly column: number; readonly rows: number };
  /** Filled by the program and locked. */
  readonly isFixed?: boolean;
}

export type Figure = 'journal' | 'bore' | 'shell';

export interface BlankSheet {
  readonly name: string;
  readonly columns: readonly BlankColumn[];
  readonly rows: readonly (readonly (string | number | undefined)[])[];
  readonly figure: Figure | undefined;
}

export interface BlankBook {
  readonly description: EngineDescription;
  readonly sheets: readonly BlankSheet[];
  /** The lines of the first sheet, which holds no data. */
  readonly guide: readonly string[];
  readonly caution: readonly string[];
}

export const GUIDE_SHEET = 'Start here';

/** Blank rows of tables that the description does not fill. */
const SPARE_GAUGES = 4;
/** Ten parts, three persons, three trials are the usual study (MSA, 4th ed.). */
const STUDY = { parts: 10, persons: ['A', 'B', 'C'], trials: 3 } as const;

export function blankBook(description: EngineDescription): BlankBook {
  const gauges = gaugeNames(description);
  const sheets = [
    setupSheet(description),
    limitsSheet(description),
    gaugesSheet(description),
    ...partSheets(description),
    ...(description.gaugeStudy ? [studySheet(gauges)] : []),
  ];
  return { description, sheets, guide: guideLines(description), caution: CAUTION };
}

type Values = Readonly<Record<string, string | number | undefined>>;

const WIDTHS: Readonly<Record<string, number>> = {
  Part: 11,
  'Engine type': 11,
  Engine: 8,
  Fit: 8,
  Position: 9,
  Half: 8,
  Mark: 7,
  Mass: 8,
  Temperature: 12.5,
  Gauge: 9,
  Usable: 7.5,
  Quantity: 9,
  Note: 18,
  Source: 18,
};

const KINDS: Readonly<Record<string, InputKind>> = {
  Temperature: 'temperature',
  Mass: 'mass',
  'Mass spread': 'mass',
  Quantity: 'whole',
  Trial: 'whole',
  'Max error': 'length',
  Resolution: 'length',
  Repeatability: 'length',
  Value: 'number',
};

/** The columns that matter for a first measurement; the others may be added by hand. */
function columnsOf(
  sheet: string,
  headers: readonly string[],
  choices: Readonly<Record<string, BlankColumn['choices']>> = {},
): BlankColumn[] {
  return headers.map((header) => {
    const known = columnsOfSheet(inputSheet(sheet)!).find((column) => column.header === header)!;
    const chosen = choices[header];
    return {
      header,
      width: WIDTHS[header] ?? 11,
      help: known.help.replaceAll('`', ''),
      kind: KINDS[header] ?? 'text',
      ...(chosen && { choices: chosen }),
    };
  });
}

function sheetOf(
  name: string,
  columns: readonly BlankColumn[],
  rows: readonly Values[],
  figure?: Figure,
): BlankSheet {
  return { name, columns, rows: rows.map((row) => columns.map(({ header }) => row[header])), figure };
}

const SETUP_HELP: Readonly<
  Record<(typeof SETUP_ITEMS)[number], readonly [help: string, choices?: readonly string[]]>
> = {
  'Length unit': ['Unit of all lengths that name none: mm or in.', ['mm', 'in']],
  'Temperature unit': ['Unit of temperatures that name none: C or F.', ['C', 'F']],
  Confidence: ['How sure a verdict has to be, 50 to 99.99 %. Blank is 95 %.'],
  Aim: ['The clearance wished for: middle, or 0 to 1 of the range. Blank is middle.'],
  'Undecided fits': ['Whether matching may make undecided fits. Blank is refuse.', ['refuse', 'allow']],
  'New shells': ['Whether matching may buy from the sheet New shells. Blank is no.', ['no', 'yes']],
  Prefer: ['What matching prefers. Blank is closest.', ['closest', 'kept pairs']],
  'Mass spread': ['Greatest difference of mass among the rods of one crank, in grams.'],
  'Half difference': ['Greatest difference of wall between the halves of a pair.'],
};

function setupSheet({ unit, temperature }: EngineDescription): BlankSheet {
  const columns: BlankColumn[] = [
    { header: 'Item', width: 18, help: 'The name of a setting.', kind: 'text', isFixed: true },
    { header: 'Value', width: 14, help: 'Its value; blank takes what the row says.', kind: 'text' },
    { header: 'Meaning', width: 70, help: '', kind: 'text', isFixed: true },
  ];
  const values: Values = { 'Length unit': unit, 'Temperature unit': temperature };
  const rows = SETUP_ITEMS.map((item) => ({
    Item: item,
    Value: values[item],
    Meaning: SETUP_HELP[item][0],
  }));
  return sheetOf('Setup', columns, rows);
}

/** What a cell of Setup offers, row by row, since each setting has words of its own. */
export function setupChoices(row: number): { help: string; choices: readonly string[] | undefined } {
  const [help, choices] = SETUP_HELP[SETUP_ITEMS[row]!];
  return { help, choices };
}

function limitsSheet(description: EngineDescription): BlankSheet {
  const headers = columnsOfSheet(LIMITS)
    .map(({ header }) => header)
    .filter((header) => !['Aim', 'Neighbour spread', 'Mass spread'].includes(header));
  const columns = columnsOf('Limits', headers).map((column): BlankColumn => {
    const isWord = ['Engine type', 'Fit', 'Journal material', 'Bore material', 'Source'].includes(
      column.header,
    );
    return isWord ? column : { ...column, kind: 'length', width: 10 };
  });
  const fits = fitsOf(description);
  const rows = description.types.flatMap((type) => fits.map((fit) => ({ 'Engine type': type, Fit: fit })));
  return sheetOf('Limits', columns, rows);
}

function fitsOf({ bigEnds, mains }: EngineDescription): string[] {
  return [...(bigEnds.length > 0 ? ['big end'] : []), ...(mains.length > 0 ? ['main'] : [])];
}

function gaugeNames({ journalGauge, boreGauge, wallGauge }: EngineDescription): BlankGauge[] {
  const named = [journalGauge, boreGauge, wallGauge].flatMap((gauge) => gauge ?? []);
  return [
    ...new Map([...named].reverse().map((gauge) => [gauge.name.toLowerCase(), gauge])).values(),
  ].reverse();
}

function gaugesSheet(description: EngineDescription): BlankSheet {
  const columns = columnsOf(
    'Gauges',
    columnsOfSheet(GAUGES).map(({ header }) => header),
  ).map((column) => ({ ...column, width: 16 }));
  const rows = gaugeNames(description).map(({ name, maxError }) => ({
    Gauge: name,
    'Max error': maxError === undefined ? undefined : lengthCell(maxError),
  }));
  return sheetOf('Gauges', columns, [...rows, ...Array.from({ length: SPARE_GAUGES }, () => ({}))]);
}

/** A gauge stands in a part's row only once its greatest error is known: without it the row counts as bad. */
const inRow = (gauge: BlankGauge | undefined) => (gauge?.maxError === undefined ? undefined : gauge.name);

function partSheets(description: EngineDescription): BlankSheet[] {
  const { engines, bigEnds, mains, stations, repeats, types } = description;
  const several = engines.length > 1;
  const gaugeList = {
    sheet: 'Gauges',
    column: 0,
    rows: gaugeNames(description).length + SPARE_GAUGES,
  };
  const choices = {
    'Engine type': types,
    Fit: fitsOf(description),
    Half: ['upper', 'lower', 'either'],
    Usable: ['yes', 'no'],
    Gauge: gaugeList,
  };
  const places = engines.flatMap(({ name, type }) => [
    ...bigEnds.map((position) => ({ engine: name, type, fit: 'big end', letter: 'B', position })),
    ...mains.map((position) => ({ engine: name, type, fit: 'main', letter: 'M', position })),
  ]);
  type Place = (typeof places)[number];
  const partName = ({ engine, position }: Place, letter: string, end = '') =>
    `${several ? `${engine} ` : ''}${letter}${position}${end}`;
  const common = ({ engine, type, fit, position }: Place) => ({
    'Engine type': type,
    Engine: engine,
    Fit: fit,
    Position: /^\d+$/.test(position) ? Number(position) : position,
  });
  const diameters = (angles: readonly string[], of: string): BlankColumn[] =>
    readingHeaders(stations, angles, repeats).map((header) => readingColumn(header, of, description));
  const walls = wallHeaders(description.walls, repeats).map((header) =>
    readingColumn(header, 'Wall at the crown', description),
  );
  const sheet = (
    name: 'Journals' | 'Rods' | 'Cases' | 'Shells',
    headers: readonly string[],
    readings: readonly BlankColumn[],
    rows: readonly Values[],
    figure: Figure,
  ): BlankSheet[] => {
    const before = columnsOf(name, headers, choices);
    const after = columnsOf(name, ['Usable', 'Note'], choices);
    return rows.length === 0 ? [] : [sheetOf(name, [...before, ...readings, ...after], rows, figure)];
  };
  const of = (fit: string) => places.filter((place) => place.fit === fit);
  return [
    ...sheet(
      'Journals',
      ['Part', 'Engine type', 'Engine', 'Fit', 'Position', 'Mark', 'Temperature', 'Gauge'],
      diameters(description.journalAngles, 'Diameter'),
      places.map((place) => ({
        ...common(place),
        Part: partName(place, place.letter),
        Gauge: inRow(description.journalGauge),
      })),
      'journal',
    ),
    ...sheet(
      'Rods',
      ['Part', 'Engine type', 'Engine', 'Position', 'Mark', 'Mass', 'Temperature', 'Gauge'],
      diameters(description.boreAngles, 'Bore, cap torqued, no shells in it'),
      of('big end').map((place) => ({
        ...common(place),
        Part: partName(place, 'R'),
        Gauge: inRow(description.boreGauge),
      })),
      'bore',
    ),
    ...sheet(
      'Cases',
      ['Part', 'Engine type', 'Engine', 'Position', 'Mark', 'Temperature', 'Gauge'],
      diameters(description.boreAngles, 'Bore, cap torqued, no shells in it'),
      of('main').map((place) => ({
        ...common(place),
        Part: partName(place, 'C'),
        Gauge: inRow(description.boreGauge),
      })),
      'bore',
    ),
    ...sheet(
      'Shells',
      ['Part', 'Engine type', 'Fit', 'Engine', 'Position', 'Half', 'Mark', 'Temperature', 'Gauge'],
      walls,
      places.flatMap((place) =>
        (['upper', 'lower'] as const).map((half) => ({
          ...common(place),
          Part: partName(place, place.letter, half === 'upper' ? 'U' : 'L'),
          Half: half,
          Gauge: inRow(description.wallGauge),
        })),
      ),
      'shell',
    ),
  ];
}

function readingColumn(header: string, of: string, { unit }: EngineDescription): BlankColumn {
  return {
    header,
    width: 10,
    help: `${of} at ${header}, in ${unit}; another unit may be typed with it. Leave blank what was not measured.`,
    kind: 'size',
  };
}

function studySheet(gauges: readonly BlankGauge[]): BlankSheet {
  const headers = columnsOfSheet(GAUGE_STUDY).map(({ header }) => header);
  const columns = columnsOf('Gauge study', headers);
  const rows = Array.from({ length: STUDY.trials }, (_, trial) =>
    STUDY.persons.flatMap((person) =>
      Array.from({ length: STUDY.parts }, (__, part) => [
        gauges[0]?.name,
        part + 1,
        person,
        trial + 1,
        undefined,
      ]),
    ),
  ).flat();
  return { name: 'Gauge study', columns, rows, figure: undefined };
}

function guideLines({ unit, temperature, stations }: EngineDescription): string[] {
  return [
    `Lengths in ${unit}, temperatures in °${temperature}, unless a cell names another unit.`,
    "1. Limits: copy the clearances and sizes of the engine maker's manual, and name the source.",
    '2. Gauges: name each gauge and its greatest error, from its maker or its certificate.',
    '3. Let parts and gauges lie together until they have one temperature; note it in each row.',
    '4. Journals: measure at every station and angle of the drawing.',
    '5. Rods and Cases: measure the bores with caps torqued and no shells in them. The parting line is at 90°.',
    '6. Shells: measure the wall at the crown, 90° from the parting line, with a ball anvil.',
    '7. Blank is not measured, never 0. A reading that cannot be right is better taken again than left.',
    `Stations are ${stations.join(', ')} from the front end. Angles turn the same way for all parts, seen from the front.`,
    '0° is in line with the throw of position 1 for journals, and square to the parting line for bores.',
    'Two-point readings miss three-lobed form.',
    'Each sheet is protected without a password, so that only the cells to be filled take a typed value.',
    'To add rows or columns, take the protection off in the spreadsheet program.',
    'oilgap bench BOOK asks for the readings one by one; oilgap check BOOK computes what they mean.',
  ];
}
