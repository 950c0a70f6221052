/** The columns of a blank sheet, from the records of the sheets that a user fills. */
import type { InputColumn, InputSheet } from '../input-sheets/input-sheet.js';
import { columnsOf } from '../input-sheets/input-sheet.js';
import { COUNT, type InputQuantity, LENGTH, MASS, MASS_SPREAD, SIZE } from '../input-sheets/quantities.js';

/** What a cell may hold; a wrong value brings a warning, as a text with its unit is right too. */
export type InputKind = 'text' | 'size' | 'length' | 'mass' | 'number' | 'temperature' | 'whole';

/** Words to choose from, or the cells that list them. */
export type Choices =
  | readonly string[]
  | { readonly sheet: string; readonly column: number; readonly rows: number };

export interface BlankColumn {
  readonly header: string;
  /** In characters. */
  readonly width: number;
  /** The sentence that a spreadsheet program shows at the cell. */
  readonly help: string;
  readonly kind: InputKind;
  readonly choices?: Choices;
  /** Filled by the program and locked. */
  readonly isFixed?: boolean;
}

export type Figure = 'journal' | 'bore' | 'shell' | 'plain' | 'piston' | 'gap' | 'run-out';

export interface BlankSheet {
  readonly name: string;
  readonly columns: readonly BlankColumn[];
  readonly rows: readonly (readonly (string | number | undefined)[])[];
  readonly figure: Figure | undefined;
}

/** The cells of a row by their headers. */
export type Values = Readonly<Record<string, string | number | undefined>>;

const WIDTH = 11;

/** Rules that a spreadsheet program can check; of others it knows only that they are numbers. */
const KINDS: ReadonlyMap<InputQuantity, InputKind> = new Map<InputQuantity, InputKind>([
  [SIZE, 'size'],
  [LENGTH, 'length'],
  [MASS, 'mass'],
  [MASS_SPREAD, 'mass'],
  [COUNT, 'whole'],
]);

function kindOf(quantity: InputQuantity): InputKind {
  const known = KINDS.get(quantity);
  if (known) return known;
  switch (quantity.kind) {
    case 'length':
    case 'exact length':
    case 'number':
      return 'number';
    case 'temperature':
      return 'temperature';
    case 'name':
      return quantity.isCounted ? 'whole' : 'text';
    default:
      return 'text';
  }
}

/** @param choices what a name is chosen from, by the header of its column */
export function blankColumn(
  { header, quantity, help, width = WIDTH }: InputColumn,
  choices: Readonly<Record<string, Choices>> = {},
): BlankColumn {
  const chosen = quantity.kind === 'word' ? quantity.words : choices[header];
  return {
    header,
    width,
    help: help.replaceAll('`', ''),
    kind: kindOf(quantity),
    ...(chosen && { choices: chosen }),
  };
}

/**
 * The columns that matter for a first measurement; the others may be added by hand.
 * @param wanted whether a column stands there, by its header; undefined where its record says
 */
export function blankColumns(
  sheet: InputSheet,
  choices: Readonly<Record<string, Choices>> = {},
  wanted: (header: string) => boolean | undefined = () => undefined,
): BlankColumn[] {
  return columnsOf(sheet)
    .filter(({ header, isExtra }) => wanted(header) ?? !isExtra)
    .map((column) => blankColumn(column, choices));
}

export function blankSheet(
  name: string,
  columns: readonly BlankColumn[],
  rows: readonly Values[],
  figure?: Figure,
): BlankSheet {
  return { name, columns, rows: rows.map((row) => columns.map(({ header }) => row[header])), figure };
}
