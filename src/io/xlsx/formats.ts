/** How the formats of output look. Words and numbers carry every meaning: no fills, no colours. */
import type ExcelJS from 'exceljs';
import { FORMAT_DECIMALS, type OutputFormat } from '../../engine/workbook-model.js';

/** The library's default font, bold: a font that is only bold would have neither name nor size. */
const BOLD: Partial<ExcelJS.Font> = { name: 'Calibri', size: 11, family: 2, bold: true };

/** Numbers stand at the right of their cell: without room they touch the words of the next column. */
const CLEAR_OF_NEXT: Partial<ExcelJS.Alignment> = { horizontal: 'right', indent: 1 };

function decimals(format: OutputFormat): string {
  return (0).toFixed(FORMAT_DECIMALS[format]);
}

export const FORMAT_STYLES: Record<OutputFormat, Partial<ExcelJS.Style>> = {
  plain: {},
  text: { alignment: { wrapText: true } },
  header: { font: BOLD, alignment: { wrapText: true }, border: { bottom: { style: 'thin' } } },
  name: { alignment: { horizontal: 'left' } },
  mm: { numFmt: decimals('mm'), alignment: CLEAR_OF_NEXT },
  in: { numFmt: decimals('in'), alignment: CLEAR_OF_NEXT },
  whole: { numFmt: decimals('whole'), alignment: CLEAR_OF_NEXT },
  chance: { numFmt: decimals('chance'), alignment: CLEAR_OF_NEXT },
  title: { font: BOLD },
};

/** Sets the widths of columns, in characters. */
export function setWidths(worksheet: ExcelJS.Worksheet, widths: readonly number[]): void {
  widths.forEach((width, column) => {
    // The library leaves a width of 9 out, which it takes for the default; a spreadsheet program's is less.
    worksheet.getColumn(column + 1).width = width === 9 ? 9.01 : width;
  });
}

export const FORMATS = Object.keys(FORMAT_STYLES) as OutputFormat[];
