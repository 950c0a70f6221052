/** The program's own sheets as a fresh workbook, from which their parts are taken. */
import ExcelJS from 'exceljs';
import type { OutputCell, OutputSheet } from '../../engine/workbook-model.js';
import { FORMAT_STYLES, FORMATS, setWidths } from './formats.js';
import { openWorkbook, partOfKind, type WorkbookParts } from './workbook-package.js';
import { encodeCellText } from './xml-text.js';

export interface OutputWorkbook {
  readonly parts: WorkbookParts;
  /** The part with the styles; its cell formats are those of the output formats and of no format. */
  readonly styles: string;
}

/**
 * A workbook of the given sheets, and before them one sheet whose row 1 has a cell of each output format, in the
 * order of FORMATS.
 */
export async function buildOutputWorkbook(sheets: readonly OutputSheet[]): Promise<OutputWorkbook> {
  const workbook = new ExcelJS.Workbook();
  const formats = workbook.addWorksheet('formats');
  FORMATS.forEach((format, i) => {
    const cell = formats.getCell(1, i + 1);
    cell.value = 0;
    cell.style = FORMAT_STYLES[format];
  });
  sheets.forEach((sheet, i) => {
    // The user's book has the true name; here it need only be allowed and unlike the others.
    addSheet(workbook, `s${i}`, sheet);
  });
  const parts = await openWorkbook(new Uint8Array(await workbook.xlsx.writeBuffer()), 'the new sheets');
  const styles = await partOfKind(parts.pkg, parts.workbook, 'styles');
  if (styles === undefined) throw new Error('the new sheets came without styles');
  return { parts, styles };
}

function addSheet(workbook: ExcelJS.Workbook, name: string, sheet: OutputSheet): void {
  const frozen: Partial<ExcelJS.WorksheetView>[] =
    sheet.headerRows > 0 ? [{ state: 'frozen', ySplit: sheet.headerRows }] : [];
  const worksheet = workbook.addWorksheet(name, {
    views: frozen,
    pageSetup: {
      orientation: sheet.landscape ? 'landscape' : 'portrait',
      fitToPage: true,
      fitToWidth: 1,
      // As many pages high as it takes.
      fitToHeight: 0,
    },
  });
  setWidths(worksheet, sheet.widths);
  [...sheet.rows].forEach((cells, row) => {
    cells.forEach((output, column) => {
      if (!output) return;
      const cell = worksheet.getCell(row + 1, column + 1);
      cell.value = excelValue(output);
      cell.style = FORMAT_STYLES[output.format];
    });
  });
}

/** Throws a RangeError on a number that no cell can hold. */
function excelValue({ value, formula }: OutputCell): ExcelJS.CellValue {
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new RangeError(`a cell cannot hold ${value}`);
  const result = typeof value === 'string' ? encodeCellText(value) : value;
  if (formula) return { formula, result };
  return result === '' ? null : result;
}
