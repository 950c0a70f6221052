/** A blank measurement workbook as plain data: what each sheet asks for, before it is drawn as cells. */
import { listOf } from '../book/problems.js';
import { CAUTION } from '../caution.js';
import { partSheets } from '../input-sheets/index.js';
import { LIMITS } from '../input-sheets/limits.js';
import { SETTINGS, SETUP } from '../input-sheets/setup.js';
import { type BlankColumn, type BlankSheet, blankColumns, blankSheet, type Values } from './blank-columns.js';
import { fastenersSheet } from './blank-fasteners.js';
import { gaugesSheet, studySheet } from './blank-gauges.js';
import { blankPartSheets, fitsOf } from './blank-parts.js';
import { stripsSheet } from './blank-strips.js';
import type { EngineDescription } from './description.js';

export interface BlankBook {
  readonly description: EngineDescription;
  readonly sheets: readonly BlankSheet[];
  /** The lines of the first sheet, which holds no data. */
  readonly guide: readonly string[];
  readonly caution: readonly string[];
}

export const GUIDE_SHEET = 'Start here';

export function blankBook(description: EngineDescription): BlankBook {
  const parts = blankPartSheets(description);
  const sheets = [
    setupSheet(description),
    limitsSheet(description),
    gaugesSheet(description),
    ...parts,
    ...(description.bolts.length > 0 ? [fastenersSheet(description)] : []),
    ...(description.strips ? [stripsSheet(description)] : []),
    ...(description.gaugeStudy ? [studySheet(description)] : []),
  ];
  return { description, sheets, guide: guideLines(description, parts), caution: CAUTION };
}

function setupSheet({ unit, temperature }: EngineDescription): BlankSheet {
  const columns: BlankColumn[] = [
    { header: 'Item', width: 18, help: 'The name of a setting.', kind: 'text', isFixed: true },
    { header: 'Value', width: 14, help: 'Its value; blank takes what the row says.', kind: 'text' },
    { header: 'Meaning', width: 70, help: '', kind: 'text', isFixed: true },
  ];
  const values: Values = { 'Length unit': unit, 'Temperature unit': temperature };
  const rows = SETTINGS.map(({ item, help }) => ({ Item: item, Value: values[item], Meaning: help }));
  return blankSheet(SETUP.name, columns, rows);
}

/** What a cell of Setup offers, row by row, since each setting has words of its own. */
export function setupChoices(row: number): { help: string; choices: readonly string[] | undefined } {
  const { help, words } = SETTINGS[row]!;
  return { help, choices: words };
}

function limitsSheet(description: EngineDescription): BlankSheet {
  const rows = description.types.flatMap((type) =>
    fitsOf(description).map((fit) => ({ 'Engine type': type, Fit: fit })),
  );
  return blankSheet(LIMITS.name, blankColumns(LIMITS, {}, sizesOfBores(description)), rows);
}

/** The sizes of a bore are asked for as it is measured: bare, or with its shells in. */
function sizesOfBores({ shellsIn }: EngineDescription): (header: string) => boolean | undefined {
  const { boreMin, boreMax, bearingMin, bearingMax } = LIMITS.columns;
  const isAsked = new Map<string, boolean>([
    ...[boreMin, boreMax].map(({ header }) => [header, !shellsIn] as const),
    ...[bearingMin, bearingMax].map(({ header }) => [header, shellsIn] as const),
  ]);
  return (header) => isAsked.get(header);
}

/** Sheets that are measured alike share a line. */
function partLines(parts: readonly BlankSheet[], { shellsIn }: EngineDescription): string[] {
  const sheets = new Map<string, string[]>();
  for (const { name, guide: bare, withShells } of partSheets()) {
    const guide = (shellsIn && withShells?.guide) || bare;
    if (parts.some((sheet) => sheet.name === name)) sheets.set(guide, [...(sheets.get(guide) ?? []), name]);
  }
  return [...sheets].map(([guide, names]) => `${listOf(names).replace(' or ', ' and ')}: ${guide}`);
}

function guideLines(description: EngineDescription, parts: readonly BlankSheet[]): string[] {
  const { unit, temperature, stations, bolts } = description;
  const steps = [
    "Limits: copy the clearances and sizes of the engine maker's manual, and name the source.",
    'Gauges: name each gauge and its greatest error, from its maker or its certificate.',
    'Let parts and gauges lie together until they have one temperature; note it in each row.',
    ...partLines(parts, description),
    ...(bolts.length > 0
      ? [
          'Fasteners: copy torques, angles, limits and the order of tightening from the manual; oilgap gives none of its own.',
        ]
      : []),
    'Blank is not measured, never 0. A reading that cannot be right is better taken again than left.',
  ];
  return [
    `Lengths in ${unit}, temperatures in °${temperature}, unless a cell names another unit.`,
    ...steps.map((step, at) => `${at + 1}. ${step}`),
    `Stations are ${stations.join(', ')} from the front end. Angles turn the same way for all parts, seen from the front.`,
    '0° of a crankpin is in line with its own throw, of a main with the throw of No. 1 crankpin, of a bore square to the parting line.',
    'Two-point readings miss three-lobed form.',
    'Each sheet is protected without a password, so that only the cells to be filled take a typed value.',
    'To add rows or columns, take the protection off in the spreadsheet program.',
    'oilgap bench BOOK asks for the readings one by one; oilgap check BOOK computes what they mean.',
  ];
}
