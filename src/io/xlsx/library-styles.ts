/** The formats of output as ExcelJS takes them, which writes whole new workbooks. */
import type ExcelJS from 'exceljs';
import type { OutputFormat } from '../../engine/workbook-model.js';
import { withOrderedFonts } from './font-order.js';
import { FORMAT_LOOKS } from './formats.js';
import { OpcPackage } from './opc-package.js';

const STYLES = 'xl/styles.xml';

/** The library's default font, bold: a font that is only bold would have neither name nor size. */
const BOLD: Partial<ExcelJS.Font> = { name: 'Calibri', size: 11, family: 2, bold: true };

export function libraryStyle(format: OutputFormat): Partial<ExcelJS.Style> {
  const { numberFormat, isBold, alignment, hasLineBelow } = FORMAT_LOOKS[format];
  return {
    ...(numberFormat !== undefined && { numFmt: numberFormat }),
    ...(isBold && { font: BOLD }),
    ...(alignment && { alignment }),
    ...(hasLineBelow && { border: { bottom: { style: 'thin' } } }),
  };
}

/** Sets the widths of columns, in characters. */
export function setWidths(worksheet: ExcelJS.Worksheet, widths: readonly number[]): void {
  widths.forEach((width, column) => {
    // The library leaves a width of 9 out, which it takes for the default; a spreadsheet program's is less.
    worksheet.getColumn(column + 1).width = width === 9 ? 9.01 : width;
  });
}

/** The package that the library writes, with what it writes against the schema put right. */
export async function libraryPackage(workbook: ExcelJS.Workbook, file: string): Promise<OpcPackage> {
  const pkg = await OpcPackage.open(new Uint8Array(await workbook.xlsx.writeBuffer()), file);
  await pkg.setText(STYLES, withOrderedFonts(await pkg.text(STYLES)));
  return pkg;
}
