/** The program's own sheets as a fresh workbook, written by ExcelJS row by row; their parts go from it into the user's. */
import { Writable } from 'node:stream';
import { setImmediate } from 'node:timers/promises';
import type ExcelJS from 'exceljs';
// The whole library takes twice as long to load.
import WorkbookWriter from 'exceljs/lib/stream/xlsx/workbook-writer.js';
import type { OutputCell, OutputSheet } from '../../engine/workbook-model.js';
import { FORMAT_STYLES, FORMATS, setWidths } from './formats.js';
import { openWorkbook, partOfKind, type WorkbookParts } from './workbook-package.js';
import { encodeCellText } from './xml-text.js';

export interface OutputWorkbook {
  readonly parts: WorkbookParts;
  /** The part with the styles; its cell formats are those of the output formats and of no format. */
  readonly styles: string;
}

/** The sheet's text is packed only to be unpacked again: the least packing keeps a long one from filling memory. */
const LEVEL = 1;
/** Rows between which what is written gets time to be packed. */
const ROWS_AT_ONCE = 200;
const MARGINS: ExcelJS.Margins = { left: 0.4, right: 0.4, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 };

/**
 * A workbook of the given sheets, and before them one sheet whose row 1 has a cell of each output format, in the
 * order of FORMATS.
 *
 * Throws a RangeError on a number that no cell can hold.
 */
export async function buildOutputWorkbook(sheets: readonly OutputSheet[]): Promise<OutputWorkbook> {
  const chunks: Uint8Array[] = [];
  const stream = new Writable({
    write(chunk: Uint8Array, _encoding, done) {
      chunks.push(chunk);
      done();
    },
  });
  const workbook = new WorkbookWriter({
    stream,
    useStyles: true,
    useSharedStrings: false,
    zip: { zlib: { level: LEVEL } },
  });
  addFormats(workbook.addWorksheet('formats'));
  // The user's book has the true name; here it need only be allowed and unlike the others.
  for (const [at, sheet] of sheets.entries()) await addSheet(workbook, `s${at}`, sheet);
  await workbook.commit();
  const parts = await openWorkbook(Buffer.concat(chunks), 'the new sheets');
  const styles = await partOfKind(parts.pkg, parts.workbook, 'styles');
  if (styles === undefined) throw new Error('the new sheets came without styles');
  return { parts, styles };
}

function addFormats(worksheet: ExcelJS.Worksheet): void {
  FORMATS.forEach((format, at) => {
    const cell = worksheet.getCell(1, at + 1);
    cell.value = 0;
    cell.style = FORMAT_STYLES[format];
  });
  worksheet.commit();
}

async function addSheet(
  workbook: WorkbookWriter,
  name: string,
  { rows, widths, headerRows, landscape }: OutputSheet,
): Promise<void> {
  const worksheet = workbook.addWorksheet(name, {
    views: headerRows > 0 ? [{ state: 'frozen', ySplit: headerRows }] : [{}],
    pageSetup: {
      orientation: landscape ? 'landscape' : 'portrait',
      fitToPage: true,
      fitToWidth: 1,
      // As many pages high as it takes.
      fitToHeight: 0,
      margins: MARGINS,
    },
  });
  setWidths(worksheet, widths);
  let number = 0;
  for (const cells of rows) {
    number += 1;
    const row = worksheet.getRow(number);
    addCells(row, cells);
    const lines = Math.max(1, ...cells.map((cell, column) => linesOf(cell, widths[column])));
    if (lines > 1) row.height = lines * ROW_HEIGHT;
    row.commit();
    if (number % ROWS_AT_ONCE === 0) await setImmediate();
  }
  worksheet.commit();
}

function addCells(row: ExcelJS.Row, cells: readonly (OutputCell | undefined)[]): void {
  cells.forEach((output, column) => {
    if (!output) return;
    const cell = row.getCell(column + 1);
    cell.value = excelValue(output);
    cell.style = FORMAT_STYLES[output.format];
  });
}

function excelValue({ value, formula }: OutputCell): ExcelJS.CellValue {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new RangeError(`a cell cannot hold ${value}`);
  }
  const result = typeof value === 'string' ? encodeCellText(value) : value;
  if (formula) return { formula: encodeCellText(formula), result };
  return result === '' ? null : result;
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
