/** Sheets as users fill them, in which any cell may hold something else. */
import fc from 'fast-check';
import { inputSheet, inputSheets } from '../../src/engine/input-sheets/index.js';
import { columnsOf } from '../../src/engine/input-sheets/input-sheet.js';
import { NASTY } from './mutate.js';

/** What a column usually holds; a header with no entry holds a note. */
const USUAL: Readonly<Record<string, readonly string[]>> = {
  Engine: ['E1', 'E2'],
  'Engine type': ['X', ''],
  Fit: ['big end', 'main'],
  Position: ['1', '2', '3'],
  Half: ['upper', 'lower', 'either'],
  Quantity: ['', '1', '2'],
  Mark: ['A', 'B', ''],
  Temperature: ['', '20', '24,5'],
  Gauge: ['G1', ''],
  Usable: ['', 'yes', 'no'],
  'Clearance min': ['0.02'],
  'Clearance max': ['0.05'],
  'Service limit': ['', '0.07'],
  Of: ['journal', 'bore', 'shell'],
  From: ['42.000', '45.0'],
  To: ['42.010', '45.02'],
  'Max error': ['0.002', '2 µm'],
  'Wall from': ['1.486'],
  'Wall to': ['1.489'],
  Item: ['Length unit', 'Confidence', 'New shells', 'Prefer'],
  Value: ['mm', 'in', '95 %', 'yes'],
  Expansion: ['11.5'],
  Material: ['steel', 'nickel'],
  Group: ['cylinder head', 'main caps'],
  Number: ['1', '2', ''],
  Torque: ['98', '10–11 kgf·m', '72 ft-lb', ''],
  'Torque as printed': ['72–80 lb·ft', ''],
  Angle: ['90', '90°', ''],
  Renew: ['', 'always', 'by length', 'by neck'],
  'Length max': ['48', ''],
  Journal: ['', 'p1'],
  Bore: ['', 'p1'],
};
const READINGS = {
  diameters: ['A 0', 'A 90', 'B 0', 'A 0 #2'],
  walls: ['Wall 1', 'Wall 2'],
  bolts: ['Length 1', 'Length 2', 'Neck 1'],
  gaps: ['Gap 1', 'Gap 2', 'Goes', 'Stops'],
  dial: ['A 0', 'A 90', 'Total'],
};
const DIAMETERS: Readonly<Record<string, readonly string[]>> = {
  Journals: ['42.0015', '42,003 mm', '1.6536 in', ''],
  Rods: ['45.0125', '45.0100', ''],
  Cases: ['45.0125', '45.0100', ''],
};

export const STRANGE_NAMES: readonly string[] = [...inputSheets().map((sheet) => sheet.name), 'Notes'];

function usualOf(name: string, header: string): readonly string[] {
  if (header === 'Part') return ['p1', 'p2', 'p3', '007'];
  if (header.startsWith('Wall ')) return ['1.4875', '1.4885', ''];
  if (/^(Length|Neck) \d/.test(header)) return ['47.9', '48,1 mm', ''];
  if (/^[AB] \d/.test(header)) return DIAMETERS[name] ?? ['42'];
  return USUAL[header] ?? ['', 'x'];
}

/** Header row and rows of a sheet. */
function rowsOf(name: string): fc.Arbitrary<string[][]> {
  const sheet = inputSheet(name);
  const columns = sheet ? columnsOf(sheet) : [];
  const needed = columns.filter((column) => column.needed).map(({ header }) => header);
  const others = columns.filter((column) => !column.needed).map(({ header }) => header);
  const more = [...others, ...(sheet?.readings ? READINGS[sheet.readings] : []), 'Status', 'Lot'];
  const cell = (header: string) =>
    fc.oneof(
      { arbitrary: fc.constantFrom(...usualOf(name, header)), weight: 30 },
      { arbitrary: fc.constantFrom(...NASTY), weight: 2 },
      { arbitrary: fc.string({ maxLength: 8 }), weight: 1 },
    );
  return fc
    .shuffledSubarray(more, { minLength: Math.min(3, more.length) })
    .map((some) => [...needed, ...some])
    .chain((headers) =>
      fc
        .array(fc.tuple(...headers.map(cell)), { minLength: 1, maxLength: 5 })
        .map((rows) => [headers, ...rows]),
    );
}

/** Sheets by name. */
export const strangeSheets: fc.Arbitrary<[string, string[][]][]> = fc
  .shuffledSubarray([...STRANGE_NAMES], { minLength: 1, maxLength: 8 })
  .chain((names) =>
    fc.tuple(...names.map((name) => rowsOf(name).map((rows): [string, string[][]] => [name, rows]))),
  );
