/** How the formats of output look. Words and numbers carry every meaning: no fills, no colours. */
import type ExcelJS from 'exceljs';
import type { OutputFormat } from '../../engine/workbook-model.js';

/** The library's default font, bold: a font that is only bold would have neither name nor size. */
const BOLD: Partial<ExcelJS.Font> = { name: 'Calibri', size: 11, family: 2, bold: true };

export const FORMAT_STYLES: Record<OutputFormat, Partial<ExcelJS.Style>> = {
  plain: {},
  text: { alignment: { wrapText: true, vertical: 'top' } },
  header: { font: BOLD, alignment: { wrapText: true }, border: { bottom: { style: 'thin' } } },
  mm: { numFmt: '0.00000' },
  in: { numFmt: '0.0000000' },
  whole: { numFmt: '0' },
  chance: { numFmt: '0.000' },
  title: { font: BOLD },
};

export const FORMATS = Object.keys(FORMAT_STYLES) as OutputFormat[];
