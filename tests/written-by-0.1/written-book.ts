/** A written book as its cells, and what version 0.1 wrote in it. */
import { readFileSync } from 'node:fs';
import { parseAddress } from '../../src/io/xlsx/cell-reference.js';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { openWorkbook } from '../../src/io/xlsx/workbook-package.js';
import { attr, childOf, childrenOf, readTree } from '../../src/io/xlsx/xml-tree.js';

type Value = string | number | boolean | undefined;

export interface WrittenSheet {
  readonly name: string;
  /** Row by row; every sheet of these books has its headers in the first. */
  readonly values: readonly (readonly Value[])[];
  readonly headers: readonly Value[];
  /** The cells of the package, blank ones with a format included: each element's text, and the value that is read. */
  readonly cells: readonly { readonly column: number; readonly text: string; readonly value: Value }[];
}

const DIAMETERS = [
  'Size',
  'Largest',
  'Smallest',
  'Taper',
  'Out of round',
  'Class',
  'Size U',
  'Status',
  'Why',
];
const TABLE = ['Status', 'Why'];

/** The columns that version 0.1 wrote to the right of the user's. */
const COLUMNS_OF_0_1: Readonly<Record<string, readonly string[]>> = {
  Journals: DIAMETERS,
  Rods: DIAMETERS,
  Cases: DIAMETERS,
  Shells: ['Wall', 'Largest', 'Smallest', 'Class', 'Wall U', 'Status', 'Why'],
  Classes: TABLE,
  Selection: TABLE,
  Limits: TABLE,
  Undersizes: TABLE,
  Gauges: TABLE,
  Materials: TABLE,
  Fits: [
    'Clearance',
    'Tightest',
    'Loosest',
    'Clearance U',
    'Chance in range',
    'Shell by marks',
    'Shell by size',
    'Status',
    'Why',
  ],
};

export const MADE_BY = 'Made by oilgap';

export async function readWritten(path: string): Promise<Map<string, WrittenSheet>> {
  const bytes = readFileSync(path);
  const { pkg, sheets: entries } = await openWorkbook(bytes, path);
  const { sheets } = await readWorkbookPackage(bytes, path);
  const found = new Map<string, WrittenSheet>();
  for (const { name, rows } of sheets) {
    const values = Array.from(rows, (cells) => Array.from(cells ?? [], (cell) => cell?.content?.value));
    const xml = await pkg.text(entries.find((entry) => entry.name === name)!.part!);
    const cells = childrenOf(childOf(readTree(xml), 'sheetData'), 'row')
      .flatMap(({ children }) => children)
      .map((cell) => {
        const { row, column } = parseAddress(attr(cell, 'r')!)!;
        return { column, text: xml.slice(cell.start, cell.end), value: values[row]?.[column] };
      });
    found.set(name, { name, values, headers: values[0] ?? [], cells });
  }
  return found;
}

export function isMadeByProgram({ headers }: WrittenSheet): boolean {
  return headers.at(-1) === MADE_BY;
}

/**
 * The first of the columns that version 0.1 wrote, in a sheet as it left it; undefined where it wrote none. Throws an
 * Error where its list stands in two places.
 */
export function firstColumnOf({ name, headers }: WrittenSheet): number | undefined {
  const list = COLUMNS_OF_0_1[name];
  if (!list) return undefined;
  const places = headers.flatMap((_, at) =>
    list.every((header, place) => headers[at + place] === header) ? [at] : [],
  );
  if (places.length > 1) throw new Error(`${name} has the columns of 0.1 in ${places.length} places`);
  return places[0];
}

export function columnsOf(name: string): readonly string[] {
  return COLUMNS_OF_0_1[name]!;
}

/** How many of the first columns are the user's, in a sheet as version 0.1 left it. */
export function usersColumns(sheet: WrittenSheet): number {
  return firstColumnOf(sheet) ?? Math.max(...sheet.values.map(({ length }) => length));
}

/** The cells of a sheet's first columns, in words. */
export function cellsOf({ cells }: WrittenSheet, columns: number): string[] {
  return cells
    .filter(({ column }) => column < columns)
    .map(({ text, value }) => (value === undefined ? text : `${text} ${value}`));
}

/** The values of one column by the row's number or, in a sheet that may be sorted anew, by its place. */
export function columnOf({ name, values, headers }: WrittenSheet, header: string, from = 0) {
  const column = headers.indexOf(header, from);
  return values.slice(1).map((row, at) => {
    const place = name === 'Fits' ? row.slice(0, 3).join(' ') : `row ${at + 2}`;
    return { place, value: row[column] };
  });
}
