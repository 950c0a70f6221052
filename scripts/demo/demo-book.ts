/** A demonstration workbook before it is a file: sheets of headers and plain values. */
import type { Cell, WorkbookModel } from '../../src/engine/workbook-model.js';

export type Value = string | number | undefined;

export interface DemoSheet {
  readonly name: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly Value[])[];
  /** A number format for the lengths of the sheet. */
  readonly numberFormat?: string;
}

export interface DemoBook {
  /** File or folder inside `workbooks/`. */
  readonly name: string;
  readonly sheets: readonly DemoSheet[];
}

/** A row of a sheet as header and value; headers that a row does not name stay blank. */
export type DemoRow = Readonly<Record<string, Value>>;

export function sheet(name: string, headers: readonly string[], rows: readonly DemoRow[]): DemoSheet {
  for (const row of rows) {
    const unknown = Object.keys(row).find((header) => !headers.includes(header));
    if (unknown !== undefined) throw new Error(`${name} has no column ${unknown}`);
  }
  return { name, headers, rows: rows.map((row) => headers.map((header) => typed(row[header]))) };
}

/** Digits alone become a number, as they do where a user types them into a cell. */
function typed(value: Value): Value {
  return typeof value === 'string' && /^\d+$/.test(value) ? Number(value) : value;
}

export function setup(items: Readonly<Record<string, Value>>): DemoSheet {
  const rows = Object.entries(items).map(([Item, Value]) => ({ Item, Value }));
  return sheet('Setup', ['Item', 'Value'], rows);
}

export function notes(...lines: readonly string[]): DemoSheet {
  const invented = 'All data in this book are invented; no engine, maker or workshop is meant.';
  return sheet(
    'Notes',
    ['Notes'],
    [invented, ...lines].map((Notes) => ({ Notes })),
  );
}

export function modelOf({ name, sheets }: DemoBook): WorkbookModel {
  const cellOf = (value: Value): Cell | undefined => {
    if (value === undefined) return undefined;
    return { content: typeof value === 'number' ? { kind: 'number', value } : { kind: 'text', value } };
  };
  return {
    file: name,
    sheets: sheets.map(({ name, headers, rows }) => ({
      name,
      rows: [headers, ...rows].map((cells) => cells.map(cellOf)),
    })),
  };
}
