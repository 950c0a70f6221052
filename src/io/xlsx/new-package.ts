/** A fresh .xlsx workbook from cells in memory, for books that came from .csv files or were merged. */
import ExcelJS from 'exceljs';
import { UserError } from '../../engine/user-error.js';
import type { Cell, CellContent, SheetModel, WorkbookModel } from '../../engine/workbook-model.js';
import { refuseSheetName } from '../gate/sheet-names.js';
import { libraryPackage, libraryStyle, setWidths } from './library-styles.js';
import { encodeCellText } from './xml-text.js';

const NARROWEST = 9;
const WIDEST = 40;
/** A header wraps; its width is worth no more than this. */
const WIDEST_HEADER = 16;
const DATE_FORMAT = 'yyyy-mm-dd';

/**
 * Numbers stay numbers, text text, formulas formulas with their stored value. The first row of each sheet is bold
 * and stays in view. The same model gives the same bytes.
 *
 * @throws {UserError} where a name cannot be that of a sheet, or two sheets have the same
 */
export async function newWorkbookPackage(model: WorkbookModel): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  // The library else takes the hour of writing.
  workbook.created = new Date(0);
  workbook.modified = new Date(0);
  const taken = new Set<string>();
  for (const sheet of model.sheets) {
    checkName(sheet.name, taken, model.file);
    addSheet(workbook, sheet);
  }
  const written = await libraryPackage(workbook, model.file);
  return written.toBytes({ allDatesFixed: true });
}

function checkName(name: string, taken: Set<string>, file: string): void {
  refuseSheetName(name, file);
  if (taken.has(name.toLowerCase())) {
    throw new UserError(`${file}: two sheets have the name "${name}". Rename one of them and run again.`);
  }
  taken.add(name.toLowerCase());
}

function addSheet(workbook: ExcelJS.Workbook, sheet: SheetModel): void {
  const worksheet = workbook.addWorksheet(sheet.name, {
    views: [{ state: 'frozen', ySplit: 1 }],
    pageSetup: {
      paperSize: 9,
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printTitlesRow: '1:1',
    },
  });
  const widths: number[] = [];
  sheet.rows.forEach((cells, row) => {
    cells.forEach((cell, column) => {
      if (!cell) return;
      const target = worksheet.getCell(row + 1, column + 1);
      target.value = excelValue(cell);
      if (row === 0) target.style = libraryStyle('header');
      else if (cell.content?.kind === 'date') target.numFmt = DATE_FORMAT;
      const lines = String(cell.content?.value ?? '').split('\n');
      const length = Math.max(...lines.map((line) => line.length)) + 2;
      widths[column] = Math.max(
        widths[column] ?? NARROWEST,
        Math.min(length, row === 0 ? WIDEST_HEADER : WIDEST),
      );
    });
  });
  setWidths(worksheet, widths);
}

function excelValue({ content, formula }: Cell): ExcelJS.CellValue {
  const isBlank = content === undefined || content.value === '';
  if (formula === undefined) return isBlank ? null : storedValue(content);
  return content === undefined ? { formula } : { formula, result: storedValue(content) };
}

function storedValue(content: CellContent): string | number | boolean | ExcelJS.CellErrorValue {
  if (content.kind === 'text') return encodeCellText(content.value);
  if (content.kind === 'error') return { error: content.value as ExcelJS.CellErrorValue['error'] };
  return content.value;
}
