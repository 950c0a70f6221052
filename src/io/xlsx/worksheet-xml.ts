/** The XML of the program's own sheets (ISO 29500-1, 18.3.1.99), row by row: one may be long. */
import { cellAddress, type OutputCell, type OutputSheet } from '../../engine/workbook-model.js';
import { cellXml } from './cell-xml.js';
import type { Namespaces } from './namespaces.js';
import { LINE_HEIGHT, rowHeight } from './row-height.js';

export interface WorksheetContext {
  readonly styleOf: (cell: OutputCell) => number;
  readonly namespaces: Namespaces;
  /** Told the address of every cell with a formula. */
  readonly onFormula: (address: string) => void;
}

/** Inches. */
const MARGINS = '<pageMargins left="0.4" right="0.4" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>';

/**
 * The text of a worksheet part in pieces, each made when it is asked for.
 *
 * @throws {RangeError} on a number that no cell can hold
 */
export function* worksheetTexts(sheet: OutputSheet, context: WorksheetContext): Generator<string> {
  yield headXml(sheet, context.namespaces);
  let row = 0;
  for (const cells of sheet.rows) yield rowXml(row++, cells, sheet.widths, context);
  yield tailXml(sheet);
}

function headXml({ rows, widths, headerRows }: OutputSheet, { main }: Namespaces): string {
  return [
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${main}">`,
    '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>',
    dimensionXml(rows),
    // Not selected: two selected sheets would be edited as one.
    headerRows > 0
      ? `<sheetViews><sheetView workbookViewId="0">${frozenXml(headerRows)}</sheetView></sheetViews>`
      : '<sheetViews><sheetView workbookViewId="0"/></sheetViews>',
    `<sheetFormatPr defaultRowHeight="${LINE_HEIGHT}"/>`,
    widths.length > 0 ? `<cols>${widths.map(columnXml).join('')}</cols>` : '',
    '<sheetData>',
  ].join('');
}

/** The used range; left out, as it may be, where rows are made as they are written and not yet counted. */
function dimensionXml(rows: OutputSheet['rows']): string {
  if (!Array.isArray(rows)) return '';
  const columns = rows.reduce((most, { length }) => Math.max(most, length), 0);
  return columns === 0 ? '' : `<dimension ref="A1:${cellAddress(rows.length - 1, columns - 1)}"/>`;
}

function frozenXml(rows: number): string {
  const topLeft = cellAddress(rows, 0);
  return `<pane ySplit="${rows}" topLeftCell="${topLeft}" activePane="bottomLeft" state="frozen"/><selection pane="bottomLeft"/>`;
}

function columnXml(width: number, column: number): string {
  return `<col min="${column + 1}" max="${column + 1}" width="${width}" customWidth="1"/>`;
}

function rowXml(
  row: number,
  cells: readonly (OutputCell | undefined)[],
  widths: readonly number[],
  { styleOf, onFormula }: WorksheetContext,
): string {
  let text = '';
  cells.forEach((cell, column) => {
    if (!cell) return;
    const style = styleOf(cell);
    if (cell.formula) onFormula(cellAddress(row, column));
    else if (cell.value === '' && style === 0) return;
    text += cellXml({ row, column, prefix: '' }, cell, style);
  });
  const height = rowHeight(cells, widths);
  const attributes = height === undefined ? '' : ` ht="${height}" customHeight="1"`;
  return text === '' ? '' : `<row r="${row + 1}"${attributes}>${text}</row>`;
}

/** One page wide, as many pages high as it takes. */
function tailXml({ landscape }: OutputSheet): string {
  const orientation = landscape ? 'landscape' : 'portrait';
  return `</sheetData>${MARGINS}<pageSetup orientation="${orientation}" fitToWidth="1" fitToHeight="0"/></worksheet>`;
}
