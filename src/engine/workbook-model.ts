/**
 * A workbook as cells in memory, whatever file it came from.
 *
 * Rows and columns count from 0 (row 0 is the sheet's first row). Both arrays are sparse: a hole is
 * an empty cell.
 */
import type { RowSet } from './row-set.js';

export type CellContent =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'boolean'; readonly value: boolean }
  /** A number whose format shows a date or a time; the value is the stored serial number. */
  | { readonly kind: 'date'; readonly value: number }
  /** An error value such as `#N/A`. */
  | { readonly kind: 'error'; readonly value: string };

export interface Cell {
  /** Undefined for a formula that was stored without its value. */
  readonly content: CellContent | undefined;
  /** The formula without its leading `=`, shared formulas spelled out for this cell. */
  readonly formula?: string;
  /** The formula is beyond what one may take, and the content an error value in its place. */
  readonly isNotComputed?: true;
}

export interface SheetModel {
  readonly name: string;
  readonly rows: (Cell | undefined)[][];
  /** Tables over its cells (ListObjects), which sort and filter their rows. */
  readonly lists?: readonly ListTable[];
  /** What belongs to several cells together. */
  readonly blocks?: readonly CellBlock[];
  /** Rows that hold no part, where the cells that showed it are no longer there. */
  readonly leftOut?: readonly number[];
  /** Rows whose results of an earlier run were forgotten, in ascending order. */
  forgottenRows?: readonly number[];
}

/** A table over cells of a sheet (ISO 29500-1, 18.5.1.2). */
export interface ListTable {
  readonly name: string;
  /** Its header and totals rows included. */
  readonly bounds: CellBounds;
  readonly hasHeader: boolean;
  readonly totalsRows: number;
  readonly columns: readonly string[];
  /** False where its cells come from elsewhere, such as a query: it can be given no further columns. */
  readonly isPlain: boolean;
}

/** Cells of which none can be written by itself. */
export interface CellBlock {
  readonly kind: 'merged cells' | 'array formula' | 'data table';
  readonly bounds: CellBounds;
}

export interface WorkbookModel {
  /** What messages call this book: the file or folder as the user named it. */
  readonly file: string;
  readonly sheets: SheetModel[];
}

export function cellAt(sheet: SheetModel, row: number, column: number): Cell | undefined {
  return sheet.rows[row]?.[column];
}

/** What a sheet has of columns: the last is XFD. */
export const SHEET_COLUMNS = 16_384;

/** The letters of a column: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

/** The address of a cell as a user knows it: row 1, column 3 is `D2`. */
export function cellAddress(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/**
 * What the program writes into a workbook. A cell has a value, a format and, where it is live, the
 * built-in formula whose value that is.
 */
export type OutputFormat =
  /** General text or number. */
  | 'plain'
  /** Long text, wrapped. */
  | 'text'
  | 'header'
  /** A name, at the left of its cell also where it is a number. */
  | 'name'
  /** A length in mm, five decimals. */
  | 'mm'
  /** A length in inches, seven decimals. */
  | 'in'
  /** A count. */
  | 'whole'
  /** A probability 0..1, three decimals. */
  | 'chance'
  | 'title';

/** Decimals that a format shows; a number of any other format is shown as it is. */
export const FORMAT_DECIMALS: Partial<Readonly<Record<OutputFormat, number>>> = {
  mm: 5,
  in: 7,
  whole: 0,
  chance: 3,
};

export interface OutputCell {
  readonly value: string | number | boolean;
  readonly format: OutputFormat;
  /** Without its leading `=`; in built-in functions only. */
  readonly formula?: string | undefined;
}

export interface PlacedCell {
  readonly row: number;
  readonly column: number;
  readonly cell: OutputCell;
}

/** Cells of an earlier run, emptied before the new ones go in. */
export interface ClearedCells {
  /** The first column and the last, inclusive. */
  readonly first: number;
  readonly last: number;
  /** Only these of the columns, where the user has put others between them. */
  readonly columns?: ReadonlySet<number>;
  /** Only these rows; all where it is left out. */
  readonly rows?: RowSet;
}

/** A table (ListObject) that is made to reach over the written columns, so that it sorts them too. */
export interface ListExtension {
  readonly bounds: CellBounds;
  /** The column of the first header. */
  readonly first: number;
  readonly headers: readonly string[];
}

/** Changes to one sheet of the user's. */
export interface SheetEdit {
  readonly sheet: string;
  readonly clear?: ClearedCells | undefined;
  readonly list?: ListExtension | undefined;
  /** New cells; they replace whatever stands there. */
  readonly cells: PlacedCells;
  /** Values for cells whose formula the user typed: the formula stays, its stored value changes. */
  readonly storedValues: readonly {
    readonly row: number;
    readonly column: number;
    readonly content: CellContent;
  }[];
  /** Widths in characters for columns that the edit writes. */
  readonly widths: readonly { readonly column: number; readonly characters: number }[];
}

/**
 * Cells in any order, or cells that are made as they are written: those come row by row from the top, can be gone
 * through again, and say beforehand where they lie and how they look.
 */
export type PlacedCells = readonly PlacedCell[] | MadeCells;

export interface MadeCells extends Iterable<PlacedCell> {
  readonly formats: ReadonlySet<OutputFormat>;
  /** Rows and columns from first to last, inclusive; undefined where there is no cell. */
  readonly bounds: CellBounds | undefined;
}

export interface CellBounds {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** A sheet that is the program's own, made anew at every run. */
export interface OutputSheet {
  readonly name: string;
  /** Dense rows; undefined is an empty cell. They can be gone through more than once. */
  readonly rows: Iterable<readonly (OutputCell | undefined)[]>;
  /** The formats of its cells, where the rows are made as they are written. */
  readonly formats?: ReadonlySet<OutputFormat>;
  /** Widths in characters, by column. */
  readonly widths: readonly number[];
  /** How many first rows stay in view and are repeated on each printed page. */
  readonly headerRows: number;
  readonly landscape: boolean;
}

export interface WorkbookEdit {
  readonly edits: readonly SheetEdit[];
  /** Sheets to make anew. One that the book already has under the same name is replaced where it stands. */
  readonly sheets: readonly OutputSheet[];
  /** Sheets of an earlier run that this run does not make. */
  readonly remove: readonly string[];
}

/** A range as a user knows it: `A1:C3`. */
export function rangeText({ top, left, bottom, right }: CellBounds): string {
  return `${cellAddress(top, left)}:${cellAddress(bottom, right)}`;
}
