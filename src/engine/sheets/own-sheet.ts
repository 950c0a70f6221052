/** A sheet of the program's own: rows under a header. */
import { MADE_BY } from '../book/own-columns.js';
import { liveCell } from '../columns/cell-value.js';
import type { Layout } from '../columns/layout.js';
import { widthOf } from '../columns/result-column.js';
import type { ResultTable } from '../columns/result-table.js';
import type { OutputCell, OutputFormat, OutputSheet } from '../workbook-model.js';

/** Wide enough for each of its words. */
export const MADE_BY_WIDTH = 9;

export function text(value: string, format: OutputFormat = 'plain'): OutputCell {
  return { value, format };
}

/** The last header says whose sheet it is, so that the next run may replace it. */
export function headerRow(headers: readonly string[]): OutputCell[] {
  return [...headers, MADE_BY].map((header) => text(header, 'header'));
}

export function titlesOf<Row>({ columns }: ResultTable<Row>): string[] {
  return columns.map(({ header }) => header);
}

export function widthsOf<Row>({ columns }: ResultTable<Row>, layout: Layout): number[] {
  const { lengthUnit } = layout.assessment.book.setup;
  return columns.map((column) => widthOf(column, lengthUnit, true));
}

/** The rows of a list as cells. */
export function cellRows<Row>(
  { columns, rows }: ResultTable<Row>,
  layout: Layout,
): (OutputCell | undefined)[][] {
  return rows(layout.assessment).map((row) => columns.map((column) => liveCell(column, row, layout)));
}

export function ownSheet<Row>(table: ResultTable<Row>, layout: Layout): OutputSheet {
  return {
    name: table.name,
    rows: [headerRow(titlesOf(table)), ...cellRows(table, layout)],
    widths: [...widthsOf(table, layout), MADE_BY_WIDTH],
    headerRows: 1,
    landscape: true,
  };
}
