/** The formats of output as a styles part, in the order of FORMATS (ISO 29500-1, 18.8). */
import type ExcelJS from 'exceljs';
import { FORMAT_STYLES, FORMATS } from './formats.js';
import { escapeAttribute } from './xml-text.js';

/** Number formats that every program has under a number of its own (18.8.30). */
const BUILT_IN: Readonly<Record<string, number>> = { '0': 1 };
const FIRST_CUSTOM_FORMAT = 164;

const PLAIN_FONT = '<font><sz val="11"/><name val="Calibri"/><family val="2"/></font>';
const BOLD_FONT = '<font><b/><sz val="11"/><name val="Calibri"/><family val="2"/></font>';
const NO_BORDER = '<border><left/><right/><top/><bottom/><diagonal/></border>';
const LINE_BELOW = '<border><left/><right/><top/><bottom style="thin"/><diagonal/></border>';

const CODES = [...new Set(FORMATS.map((format) => FORMAT_STYLES[format].numFmt))].filter(
  (code) => code !== undefined && !(code in BUILT_IN),
) as string[];

/** The number format, font and border of each are as the lists of the part have them. */
export function formatStylesXml(): string {
  const codes = CODES.map(
    (code, at) => `<numFmt numFmtId="${FIRST_CUSTOM_FORMAT + at}" formatCode="${escapeAttribute(code)}"/>`,
  );
  const formats = FORMATS.map((format) => cellFormat(FORMAT_STYLES[format]));
  return (
    `<styleSheet><numFmts>${codes.join('')}</numFmts><fonts>${PLAIN_FONT}${BOLD_FONT}</fonts>` +
    `<borders>${NO_BORDER}${LINE_BELOW}</borders><cellXfs>${formats.join('')}</cellXfs></styleSheet>`
  );
}

function cellFormat({ numFmt, font, border, alignment }: Partial<ExcelJS.Style>): string {
  const number = numFmt === undefined ? 0 : (BUILT_IN[numFmt] ?? FIRST_CUSTOM_FORMAT + CODES.indexOf(numFmt));
  const applied = [
    numFmt && ' applyNumberFormat="1"',
    font && ' applyFont="1"',
    border && ' applyBorder="1"',
    alignment && ' applyAlignment="1"',
  ];
  const open = `<xf numFmtId="${number}" fontId="${font?.bold ? 1 : 0}" fillId="0" borderId="${border ? 1 : 0}" xfId="0"${applied.filter(Boolean).join('')}`;
  return alignment ? `${open}>${alignmentXml(alignment)}</xf>` : `${open}/>`;
}

function alignmentXml({ horizontal, vertical, wrapText, indent }: Partial<ExcelJS.Alignment>): string {
  const attributes = [
    horizontal && ` horizontal="${horizontal}"`,
    vertical && ` vertical="${vertical}"`,
    wrapText && ' wrapText="1"',
    indent && ` indent="${indent}"`,
  ];
  return `<alignment${attributes.filter(Boolean).join('')}/>`;
}
