/** The XML of the cells that are written, in a user's sheet or in the program's own (ISO 29500-1, 18.3.1.4). */
import { type CellContent, cellAddress, type OutputCell } from '../../engine/workbook-model.js';
import { withAttribute } from './xml-scan.js';
import { encodeCellText, escapeXml } from './xml-text.js';
import { readTree } from './xml-tree.js';

export interface CellPlace {
  readonly row: number;
  readonly column: number;
  /** The prefix that the sheet gives its own elements, with its colon, or nothing. */
  readonly prefix: string;
}

/** Characters of a formula, and of a text in it, that spreadsheet programs take: Excel refuses the workbook beyond. */
const LONGEST_FORMULA = 8192;
const LONGEST_TEXT = 255;
const QUOTED = /"(?:[^"]|"")*"|'(?:[^']|'')*'/g;

/** Names that users type stand in formulas of our own, and may be of any length. */
function isWithinLimits(formula: string): boolean {
  if (formula.length <= LONGEST_TEXT) return true;
  if (formula.length > LONGEST_FORMULA) return false;
  // All texts lie between the first quote and the last: most formulas need not be cut up.
  if (formula.lastIndexOf('"') - formula.indexOf('"') <= LONGEST_TEXT) return true;
  for (const [text] of formula.matchAll(QUOTED)) {
    if (text.length <= LONGEST_TEXT || !text.startsWith('"')) continue;
    if (text.slice(1, -1).replaceAll('""', '"').length > LONGEST_TEXT) return false;
  }
  return true;
}

/**
 * A cell whose formula is longer than spreadsheet programs take has its value alone.
 *
 * @throws {RangeError} on a number that no cell can hold
 */
export function cellXml({ row, column, prefix: p }: CellPlace, cell: OutputCell, style: number): string {
  const start = `<${p}c r="${cellAddress(row, column)}"${style ? ` s="${style}"` : ''}`;
  const { value, formula } = cell;
  if (formula && isWithinLimits(formula)) {
    const { type, text } = stored(
      typeof value === 'string'
        ? { kind: 'text', value }
        : typeof value === 'number'
          ? { kind: 'number', value }
          : { kind: 'boolean', value },
    );
    const f = `<${p}f>${escapeXml(encodeCellText(formula))}</${p}f>`;
    return `${start}${type ? ` t="${type}"` : ''}>${f}<${p}v>${text}</${p}v></${p}c>`;
  }
  if (value === '') return `${start}/>`;
  if (typeof value === 'string')
    return `${start} t="inlineStr"><${p}is>${textXml(p, value)}</${p}is></${p}c>`;
  const { type, text } = stored(
    typeof value === 'number' ? { kind: 'number', value } : { kind: 'boolean', value },
  );
  return `${start}${type ? ` t="${type}"` : ''}><${p}v>${text}</${p}v></${p}c>`;
}

/** A `t` element of a text; white space that a reader might drop is marked as kept. */
export function textXml(prefix: string, text: string): string {
  const escaped = escapeXml(encodeCellText(text));
  const space = /^\s|\s$|\n/.test(escaped) ? ' xml:space="preserve"' : '';
  return `<${prefix}t${space}>${escaped}</${prefix}t>`;
}

/**
 * A user's cell with another stored value: its formula, style and all else stay as typed.
 *
 * @throws {Error} where the cell has no formula
 */
export function withStoredValue(xml: string, content: CellContent): string {
  const cell = readTree(xml);
  const formula = cell.children.find((c) => c.local === 'f');
  if (!formula) throw new Error(`a value is to be stored under a formula, but there is none: ${xml}`);
  const { type, text } = stored(content);
  const open = withAttribute(xml.slice(0, cell.openEnd), 't', type);
  const value = cell.children.find((c) => c.local === 'v');
  const p = cell.prefix;
  const v = `<${p}v>${text}</${p}v>`;
  if (value) return open + xml.slice(cell.openEnd, value.start) + v + xml.slice(value.end);
  return open + xml.slice(cell.openEnd, formula.end) + v + xml.slice(formula.end);
}

/** How a formula's result is stored: the cell's type, none for a number, and the text of its value. */
function stored(content: CellContent): { type: string | undefined; text: string } {
  switch (content.kind) {
    case 'text':
      return { type: 'str', text: escapeXml(encodeCellText(content.value)) };
    case 'boolean':
      return { type: 'b', text: content.value ? '1' : '0' };
    case 'error':
      return { type: 'e', text: escapeXml(content.value) };
    default:
      if (!Number.isFinite(content.value)) throw new RangeError(`a cell cannot hold ${content.value}`);
      return { type: undefined, text: String(content.value) };
  }
}
