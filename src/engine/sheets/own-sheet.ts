/** A sheet of the program's own, from plain rows under a header. */
import { MADE_BY } from '../book/own-columns.js';
import type { OutputCell, OutputFormat, OutputSheet } from '../workbook-model.js';

export interface SheetColumn<Row> {
  readonly header: string;
  readonly width: number;
  /** Without one, a number is a name. */
  readonly format?: OutputFormat;
  readonly value: (row: Row) => string | number | undefined;
  readonly formula?: (row: Row) => string | undefined;
}

/** Wide enough for each of its words. */
export const MADE_BY_WIDTH = 9;

export function text(value: string, format: OutputFormat = 'plain'): OutputCell {
  return { value, format };
}

/** The last header says whose sheet it is, so that the next run may replace it. */
export function headerRow(headers: readonly string[]): OutputCell[] {
  return [...headers, MADE_BY].map((header) => text(header, 'header'));
}

export function rowsOf<Row>(
  columns: readonly SheetColumn<Row>[],
  rows: readonly Row[],
): (OutputCell | undefined)[][] {
  return rows.map((row) =>
    columns.map(({ value, format, formula }): OutputCell | undefined => {
      const shown = value(row);
      return shown === undefined
        ? undefined
        : {
            value: shown,
            format: format ?? (typeof shown === 'number' ? 'name' : 'plain'),
            formula: formula?.(row),
          };
    }),
  );
}

export function ownSheet<Row>(
  name: string,
  columns: readonly SheetColumn<Row>[],
  rows: readonly Row[],
): OutputSheet {
  return {
    name,
    rows: [headerRow(columns.map(({ header }) => header)), ...rowsOf(columns, rows)],
    widths: [...columns.map(({ width }) => width), MADE_BY_WIDTH],
    headerRows: 1,
    landscape: true,
  };
}
