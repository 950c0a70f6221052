/** What `oilgap sheet` is told of an engine, and the texts in which it is told. */
import { toNumber } from '../../maths/decimal.js';
import { headerKey, nameKey } from '../book/names.js';
import { readScanned, scanNumber } from '../book/number-text.js';
import { isLength, Table } from '../book/table.js';
import { UserError } from '../user-error.js';

/** A gauge for one kind of part; without its greatest error no row can be judged by it yet. */
export interface BlankGauge {
  readonly name: string;
  /** As typed: with or without its unit. */
  readonly maxError: string | undefined;
}

export interface EngineDescription {
  readonly types: readonly string[];
  readonly engines: readonly { readonly name: string; readonly type: string }[];
  readonly bigEnds: readonly string[];
  readonly mains: readonly string[];
  readonly stations: readonly string[];
  /** Whole degrees. */
  readonly journalAngles: readonly string[];
  readonly boreAngles: readonly string[];
  /** Spots of each half-shell. */
  readonly walls: number;
  /** How often each spot is read. */
  readonly repeats: number;
  readonly journalGauge: BlankGauge | undefined;
  readonly boreGauge: BlankGauge | undefined;
  readonly wallGauge: BlankGauge | undefined;
  readonly unit: 'mm' | 'in';
  readonly temperature: 'C' | 'F';
  readonly paper: 'a4' | 'letter';
  readonly gaugeStudy: boolean;
}

/** The texts of the description by name, as options or answers give them. */
export type DescriptionTexts = Readonly<Record<DescriptionName, string>>;

export type DescriptionName =
  | 'types'
  | 'engines'
  | 'cylinders'
  | 'bigEnds'
  | 'mains'
  | 'stations'
  | 'journalAngles'
  | 'boreAngles'
  | 'walls'
  | 'repeats'
  | 'journalGauge'
  | 'boreGauge'
  | 'wallGauge'
  | 'unit'
  | 'temperature'
  | 'paper'
  | 'gaugeStudy';

export interface DescriptionItem {
  readonly name: DescriptionName;
  /** The option of the command line. */
  readonly option: string;
  readonly value: string;
  /** The question of the questionnaire, and what the option holds. */
  readonly help: string;
  readonly standard: string;
}

const item = (
  name: DescriptionName,
  option: string,
  value: string,
  help: string,
  standard = '',
): DescriptionItem => ({ name, option, value, help, standard });

/** Options, questions and documentation go by this table; an empty standard means what its help says. */
export const DESCRIPTION_ITEMS: readonly DescriptionItem[] = [
  item('types', 'types', 'list', 'engine types, separated by commas', 'type 1'),
  item('engines', 'engines', 'list', 'engines, each NAME or NAME=TYPE', 'E1'),
  item('cylinders', 'cylinders', 'n', 'cylinders', '4'),
  item('bigEnds', 'big-ends', 'list', 'big-end positions, such as 1-4, or none; blank: one a cylinder'),
  item('mains', 'mains', 'list', 'main positions, or none; blank: one more than cylinders'),
  item('stations', 'stations', 'list', 'stations along a bearing', 'A,B'),
  item('journalAngles', 'journal-angles', 'list', 'angles of journals, in degrees', '0,90'),
  item('boreAngles', 'bore-angles', 'list', 'angles of bores; the parting line is at 90', '0,45,135'),
  item('walls', 'walls', 'n', 'spots on the wall of each half-shell', '2'),
  item('repeats', 'repeats', 'n', 'readings of each spot', '1'),
  item('journalGauge', 'journal-gauge', 'gauge', 'gauge for journals, NAME or NAME=MAX ERROR'),
  item('boreGauge', 'bore-gauge', 'gauge', 'gauge for bores, in the same way'),
  item('wallGauge', 'wall-gauge', 'gauge', 'gauge for walls, in the same way'),
  item('unit', 'unit', 'unit', 'unit of lengths, mm or in', 'mm'),
  item('temperature', 'temperature', 'unit', 'unit of temperatures, C or F', 'C'),
  item('paper', 'paper', 'size', 'paper, a4 or letter', 'a4'),
  item('gaugeStudy', 'gauge-study', 'yes', 'a sheet for a gauge study, yes or no', 'no'),
];

/** What is described where nothing is said. */
export const STANDARD_TEXTS = Object.fromEntries(
  DESCRIPTION_ITEMS.map(({ name, standard }) => [name, standard]),
) as DescriptionTexts;

const MOST_CYLINDERS = 64;
const MOST_POSITIONS = 200;
const MOST_ENGINES = 100;
const MOST_SPOTS = 60;
const MOST_WALLS = 20;
const MOST_REPEATS = 9;
const LONGEST_NAME = 40;
/** A bore reading nearer to the parting line sees the step of the halves and their relief; workshop convention, no published source. */
const PARTING_ZONE_DEGREES = 20;

/** @throws UserError naming the option whose text cannot be used. */
export function describeEngine(texts: DescriptionTexts): EngineDescription {
  const types = names(texts, 'types');
  const cylinders = wholeNumber(texts, 'cylinders', MOST_CYLINDERS);
  const description: EngineDescription = {
    types,
    engines: enginesOf(texts, types),
    bigEnds: positions(texts, 'bigEnds', cylinders),
    mains: positions(texts, 'mains', cylinders + 1),
    stations: names(texts, 'stations'),
    journalAngles: names(texts, 'journalAngles'),
    boreAngles: names(texts, 'boreAngles'),
    walls: wholeNumber(texts, 'walls', MOST_WALLS),
    repeats: wholeNumber(texts, 'repeats', MOST_REPEATS),
    journalGauge: gaugeOf(texts, 'journalGauge'),
    boreGauge: gaugeOf(texts, 'boreGauge'),
    wallGauge: gaugeOf(texts, 'wallGauge'),
    unit: word(texts, 'unit', ['mm', 'in']),
    temperature: word(texts, 'temperature', ['C', 'F']),
    paper: word(texts, 'paper', ['a4', 'letter']),
    gaugeStudy: word(texts, 'gaugeStudy', ['yes', 'no']) === 'yes',
  };
  if (description.bigEnds.length + description.mains.length === 0) {
    throw refusal(texts, 'mains', 'a big end or a main to measure', 'name positions');
  }
  checkSpots(description, texts);
  return description;
}

/** One text by itself, as far as it can be judged alone. */
export function answerFault(texts: DescriptionTexts): string | undefined {
  try {
    describeEngine(texts);
    return undefined;
  } catch (error) {
    if (error instanceof UserError) return error.message;
    throw error;
  }
}

/** Bore angles at which the parting line is read rather than the bore. */
export function anglesNearParting({ boreAngles }: EngineDescription): string[] {
  return boreAngles.filter((angle) => Math.abs((Number(angle) % 180) - 90) < PARTING_ZONE_DEGREES);
}

export function readingHeaders(
  stations: readonly string[],
  angles: readonly string[],
  repeats: number,
): string[] {
  return repeated(
    stations.flatMap((station) => angles.map((angle) => `${station} ${angle}`)),
    repeats,
  );
}

export function wallHeaders(walls: number, repeats: number): string[] {
  return repeated(
    Array.from({ length: walls }, (_, place) => `Wall ${place + 1}`),
    repeats,
  );
}

/** Repeats stand beside their spot. */
function repeated(spots: readonly string[], repeats: number): string[] {
  return spots.flatMap((spot) =>
    Array.from({ length: repeats }, (_, place) => (place === 0 ? spot : `${spot} #${place + 1}`)),
  );
}

function itemOf(name: DescriptionName): DescriptionItem {
  return DESCRIPTION_ITEMS.find((known) => known.name === name)!;
}

function refusal(texts: DescriptionTexts, name: DescriptionName, expected: string, remedy: string) {
  const { option } = itemOf(name);
  return new UserError(`--${option}: found "${texts[name]}"; expected ${expected}; ${remedy}.`);
}

function names(texts: DescriptionTexts, name: DescriptionName): string[] {
  const list = texts[name].split(',').map((part) => part.trim());
  const isTwice = new Set(list.map(nameKey)).size < list.length;
  if (list.some((part) => part === '' || part.length > LONGEST_NAME) || isTwice) {
    throw refusal(texts, name, 'names separated by commas, each once', 'name each by itself');
  }
  return list;
}

function enginesOf(texts: DescriptionTexts, types: readonly string[]) {
  const engines = names(texts, 'engines').map((part) => {
    const [name = '', type = types[0]!] = part.split('=').map((side) => side.trim());
    const known = types.find((candidate) => nameKey(candidate) === nameKey(type));
    if (name === '' || known === undefined) {
      throw refusal(texts, 'engines', 'NAME or NAME=TYPE with a type of --types', 'name the type there too');
    }
    return { name, type: known };
  });
  if (
    engines.length > MOST_ENGINES ||
    new Set(engines.map(({ name }) => nameKey(name))).size < engines.length
  ) {
    throw refusal(texts, 'engines', `up to ${MOST_ENGINES} engines, each once`, 'name each by itself');
  }
  return engines;
}

/** `1-4, 6`; blank is 1 to the standard count, `none` is none. */
function positions(texts: DescriptionTexts, name: DescriptionName, standard: number): string[] {
  const text = texts[name].trim();
  if (text.toLowerCase() === 'none') return [];
  const list = (text === '' ? `1-${standard}` : text).split(',').flatMap((part) => {
    const range = /^\s*(\d{1,3})\s*-\s*(\d{1,3})\s*$/.exec(part);
    if (!range) return [part.trim()];
    const [from, to] = [Number(range[1]), Number(range[2])];
    return Array.from({ length: Math.max(0, to - from + 1) }, (_, place) => String(from + place));
  });
  const isTwice = new Set(list.map(nameKey)).size < list.length;
  const isWrong = list.some((part) => part === '' || part.length > LONGEST_NAME);
  if (list.length === 0 || list.length > MOST_POSITIONS || isTwice || isWrong) {
    throw refusal(texts, name, 'positions such as 1-4 or 1,2,5, each once, or none', 'name them so');
  }
  return list;
}

function wholeNumber(texts: DescriptionTexts, name: DescriptionName, most: number): number {
  const value = /^\s*\d{1,3}\s*$/.test(texts[name]) ? Number(texts[name]) : 0;
  if (value < 1 || value > most) {
    throw refusal(texts, name, `a whole number from 1 to ${most}`, 'type it in figures');
  }
  return value;
}

function word<Word extends string>(
  texts: DescriptionTexts,
  name: DescriptionName,
  words: readonly Word[],
): Word {
  const found = words.find((known) => headerKey(known) === headerKey(texts[name]));
  if (found === undefined) throw refusal(texts, name, words.join(' or '), 'type one of these words');
  return found;
}

function gaugeOf(texts: DescriptionTexts, name: DescriptionName): BlankGauge | undefined {
  const text = texts[name].trim();
  if (text === '') return undefined;
  const [gauge = '', maxError] = text.split('=').map((side) => side.trim());
  const isError = maxError === undefined || lengthCell(maxError) !== undefined;
  if (gauge === '' || gauge.length > LONGEST_NAME || !isError) {
    throw refusal(texts, name, 'NAME or NAME=MAX ERROR, as in M1=0.002', 'name the gauge so');
  }
  return { name: gauge, maxError };
}

/** What a cell of a length holds for a text: its number, or with a unit the text; undefined for no length. */
export function lengthCell(text: string): number | string | undefined {
  const scan = scanNumber(text);
  const read = scan && readScanned(scan, true, undefined);
  const isLengthText = scan && (scan.unit === undefined || isLength(scan.unit));
  if (!isLengthText || typeof read !== 'object' || !('value' in read)) return undefined;
  const value = toNumber(read.value);
  if (!Number.isFinite(value) || value < 0) return undefined;
  return scan.unit === undefined ? value : text;
}

/** A sheet that is made needs neither units nor punctuation in its headers, though both would be read. */
const PLAIN_HEADER = /^[\p{L}\p{N}#° ]+$/u;

/** Headers that the program itself would not read are refused here, not on the bench. */
function checkSpots(description: EngineDescription, texts: DescriptionTexts): void {
  const { stations } = description;
  for (const name of ['journalAngles', 'boreAngles'] as const) {
    const headers = readingHeaders(stations, description[name], description.repeats);
    const cells = headers.map((header) => ({ content: { kind: 'text', value: header } as const }));
    const units = { length: 'mm', temperature: 'C' } as const;
    const table = new Table(
      'Journals',
      { name, rows: [cells] },
      { columns: [], readings: 'diameters' },
      units,
    );
    const isPlain = headers.every((header) => PLAIN_HEADER.test(header));
    if (table.readingColumns.length === headers.length && isPlain && headers.length <= MOST_SPOTS) continue;
    const isOfStation = stations.some((station) => !/^([a-z]|front|mid|middle|centre|rear)$/i.test(station));
    throw isOfStation
      ? refusal(texts, 'stations', 'single letters, Front, Mid, Centre or Rear', 'name stations so')
      : refusal(texts, name, 'different whole degrees from 0 to 359', 'type angles so, in a short list');
  }
}
