/** Books from plain arrays, for tests: numbers become number cells, strings become text. */
import { Context } from '../../src/engine/assess/context.js';
import { assessFit, type FitResult } from '../../src/engine/assess/fit.js';
import { assessParts } from '../../src/engine/assess/part.js';
import type { PartResult } from '../../src/engine/assess/part-result.js';
import type { PartsOfBook } from '../../src/engine/assess/placed-fit.js';
import { placeFits } from '../../src/engine/assess/places.js';
import { assessTables, type TableResults } from '../../src/engine/assess/table-checks.js';
import type { Book } from '../../src/engine/book/book.js';
import { findSheet } from '../../src/engine/book/find-tables.js';
import { openBook } from '../../src/engine/book/open-book.js';
import { readSetup } from '../../src/engine/book/setup.js';
import { ownHeaders } from '../../src/engine/columns/result-headers.js';
import type { Cell, CellContent, WorkbookModel } from '../../src/engine/workbook-model.js';

/**
 * Undefined is a hole; an object is the content of a cell as it stands, or a formula with its value; null is a formula
 * without value.
 */
export type Plain = string | number | boolean | undefined | null | CellContent | PlainFormula;

export interface PlainFormula {
  readonly formula: string;
  readonly value: number;
}
export type Sheets = Readonly<Record<string, readonly (readonly Plain[])[]>>;

export const FILE = 'engine.xlsx';
export const DATE: CellContent = { kind: 'date', value: 45_000 };
export const ERROR: CellContent = { kind: 'error', value: '#N/A' };

function cellOf(plain: Plain): Cell | undefined {
  if (plain === undefined) return undefined;
  if (plain === null) return { content: undefined, formula: 'A1' };
  if (typeof plain === 'number') return { content: { kind: 'number', value: plain } };
  if (typeof plain === 'string') return { content: { kind: 'text', value: plain } };
  if (typeof plain === 'boolean') return { content: { kind: 'boolean', value: plain } };
  if ('formula' in plain) {
    return { formula: plain.formula, content: { kind: 'number', value: plain.value } };
  }
  return { content: plain };
}

export function modelOf(sheets: Sheets): WorkbookModel {
  return {
    file: FILE,
    sheets: Object.entries(sheets).map(([name, rows]) => ({
      name,
      rows: rows.map((row) => row.map(cellOf)),
    })),
  };
}

export function bookOf(sheets: Sheets, file = FILE): Book {
  const model = { ...modelOf(sheets), file };
  return openBook(model, readSetup(findSheet(model, 'Setup'), file), ownHeaders);
}

export interface Assessed {
  readonly book: Book;
  readonly parts: PartsOfBook;
  readonly fits: readonly FitResult[];
  readonly tables: TableResults;
}

/** All of a book but its matched sets. */
export function assess(sheets: Sheets): Assessed {
  const book = bookOf(sheets);
  const context = new Context(book);
  const parts = book.parts.map((rows) => assessParts(rows, context));
  const fits = placeFits(parts, book.fits, book.keptStrips).map((placed) => assessFit(placed, context));
  return { book, parts, fits, tables: assessTables(context) };
}

/** One row of a sheet beside its header row, by column name. */
export function table(...rows: readonly Readonly<Record<string, Plain>>[]): Plain[][] {
  const headers = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return [headers, ...rows.map((row) => headers.map((header) => row[header]))];
}

export function whyOf(result: PartResult | FitResult): string {
  return result.why.join('; ');
}

/** Whole grains (0.001 µm) of numbers of µm. */
export const um = (micrometres: number): number => Math.round(micrometres * 1000);
