/** The text of a sheet of the program's own (ISO 29500-1, 18.3.1), row by row: it may be a long one. */
import { cellAddress, type OutputCell, type OutputSheet } from '../../engine/workbook-model.js';
import { cellXml } from './cell-xml.js';

export const TRANSITIONAL = {
  main: 'http://schemas.openxmlformats.org/spreadsheetml/2006/main',
  relationships: 'http://schemas.openxmlformats.org/officeDocument/2006/relationships',
};
export const STRICT = {
  main: 'http://purl.oclc.org/ooxml/spreadsheetml/main',
  relationships: 'http://purl.oclc.org/ooxml/officeDocument/relationships',
};
export type Namespaces = typeof TRANSITIONAL;

const MARGINS = '<pageMargins left="0.4" right="0.4" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>';

/**
 * Throws a RangeError on a number that no cell can hold.
 * @param onFormula told the address of every cell with a formula
 */
export function* outputSheetXml(
  { rows, widths, headerRows, landscape }: OutputSheet,
  styleOf: (cell: OutputCell) => number,
  namespaces: Namespaces,
  onFormula: (address: string) => void,
): Generator<string> {
  // One page wide and as many high as it takes.
  yield '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
    `<worksheet xmlns="${namespaces.main}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` +
    `<sheetViews><sheetView workbookViewId="0">${frozen(headerRows)}</sheetView></sheetViews>` +
    `<sheetFormatPr defaultRowHeight="15"/>${columns(widths)}<sheetData>`;
  let row = 0;
  for (const cells of rows) {
    yield rowXml(row, cells, widths, styleOf, onFormula);
    row += 1;
  }
  yield `</sheetData>${MARGINS}<pageSetup orientation="${landscape ? 'landscape' : 'portrait'}" fitToWidth="1" fitToHeight="0"/></worksheet>`;
}

function frozen(rows: number): string {
  if (rows === 0) return '';
  return `<pane ySplit="${rows}" topLeftCell="A${rows + 1}" activePane="bottomLeft" state="frozen"/><selection pane="bottomLeft"/>`;
}

function columns(widths: readonly number[]): string {
  const each = widths.map(
    (width, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`,
  );
  return each.length === 0 ? '' : `<cols>${each.join('')}</cols>`;
}

function rowXml(
  row: number,
  cells: readonly (OutputCell | undefined)[],
  widths: readonly number[],
  styleOf: (cell: OutputCell) => number,
  onFormula: (address: string) => void,
): string {
  let text = '';
  cells.forEach((cell, column) => {
    if (!cell) return;
    if (cell.formula) onFormula(cellAddress(row, column));
    text += cellXml({ row, column, prefix: '' }, cell, styleOf(cell));
  });
  if (text === '') return '';
  const lines = Math.max(...cells.map((cell, column) => linesOf(cell, widths[column])));
  const height = lines > 1 ? ` ht="${lines * ROW_HEIGHT}" customHeight="1"` : '';
  return `<row r="${row + 1}"${height}>${text}</row>`;
}

/** Points. */
const ROW_HEIGHT = 15;

/**
 * Lines of a cell whose text is wrapped. Not every program makes a row as high as its text when it opens a book, and
 * those that do round differently: bold letters are taken as a tenth wider.
 */
function linesOf(cell: OutputCell | undefined, width: number | undefined): number {
  if (!cell || width === undefined || (cell.format !== 'header' && cell.format !== 'text')) return 1;
  const room = cell.format === 'header' ? width / 1.1 : width;
  let lines = 0;
  for (const paragraph of String(cell.value).split('\n')) {
    let used = Number.POSITIVE_INFINITY;
    for (const word of paragraph.split(' ')) {
      if (used + 1 + word.length <= room) used += 1 + word.length;
      else {
        lines += Math.max(1, Math.ceil(word.length / room));
        used = word.length % room || room;
      }
    }
  }
  return lines;
}
