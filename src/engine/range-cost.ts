/**
 * How many cells the ranges of a formula hold. HyperFormula keeps every cell of a range by itself, the blank ones too:
 * a million of them take 6 s and some 650 MB (measured with 3.5).
 */

/** What a sheet of the workbook holds. */
export interface SheetExtent {
  readonly rows: number;
  readonly columns: number;
  /** Cells that are stored. */
  readonly cells: number;
}

export interface RangeCost {
  /** The range as a key: its sheet and its corners, equal for equal ranges. */
  readonly key: string;
  /** Of whole rows or columns, their number alone: how far they reach depends on the sheet. */
  readonly cells: number;
  /** Cells of it that the workbook does not store, at the least; undefined where its sheets are not known. */
  readonly blank: number | undefined;
}

const NOTHING: SheetExtent = { rows: 0, columns: 0, cells: 0 };

const SHEET = String.raw`(?:('(?:[^']|'')*'|[\p{L}\p{N}_.]+)!)?`;
const CELLS = String.raw`\$?([A-Z]{1,3})\$?(\d{1,7})`;
/** A reference in one of its three forms, with the sheet before its first or its second corner. */
const RANGES = new RegExp(
  `${SHEET}(?:${CELLS}\\s*:\\s*${SHEET}${CELLS}|\\$?([A-Z]{1,3})\\s*:\\s*${SHEET}\\$?([A-Z]{1,3})|\\$?(\\d{1,7})\\s*:\\s*${SHEET}\\$?(\\d{1,7}))`,
  'giu',
);
const OFFSET = /\bOFFSET\s*\(/gi;

/**
 * The ranges of a formula without its texts in double quotes.
 * @param own the sheet that holds the formula
 */
export function rangesOf(
  formula: string,
  own: string,
  extents: ReadonlyMap<string, SheetExtent> | undefined,
): RangeCost[] {
  const found = [...formula.matchAll(RANGES)].map((match) => {
    const [, named, left, top, , right, bottom, from, , to, first, , last] = match;
    const sheet = sheetKey(named ?? own);
    const extent = extents?.get(sheet) ?? NOTHING;
    const columns = left ? columnSpan(left, right!) : from ? columnSpan(from, to!) : 1;
    const rows = top ? span(Number(top), Number(bottom)) : first ? span(Number(first), Number(last)) : 1;
    // Whole rows and columns reach as far as their sheet.
    const area = rows * columns * (from ? Math.max(1, extent.rows) : first ? Math.max(1, extent.columns) : 1);
    const corners = match[0].slice(match[0].lastIndexOf('!', match[0].indexOf(':')) + 1);
    return {
      key: `${sheet}!${corners.replaceAll(/[$\s]/g, '').toUpperCase()}`,
      cells: rows * columns,
      blank: extents && Math.max(0, area - extent.cells),
    };
  });
  return [...found, ...offsetsOf(formula, extents)];
}

const CELL = new RegExp(`${SHEET}${CELLS}(?![\\p{L}\\p{N}_(])`, 'giu');

/**
 * The extents of sheets with the cells that a formula names: the engine makes these, and whole rows and columns then
 * reach as far.
 */
export function withCellsOf(
  formula: string,
  own: string,
  extents: ReadonlyMap<string, SheetExtent>,
): ReadonlyMap<string, SheetExtent> {
  let found: Map<string, SheetExtent> | undefined;
  let sheet = sheetKey(own);
  for (const { index, 1: named, 2: column, 3: row } of formula.matchAll(CELL)) {
    // The second corner of a range is on the sheet of the first.
    if (named !== undefined) sheet = sheetKey(named);
    else if (formula[index - 1] !== ':') sheet = sheetKey(own);
    const extent = (found ?? extents).get(sheet) ?? NOTHING;
    const rows = Math.max(extent.rows, Number(row));
    const columns = Math.max(extent.columns, columnNumber(column!));
    if (rows === extent.rows && columns === extent.columns) continue;
    found ??= new Map(extents);
    found.set(sheet, { ...extent, rows, columns });
  }
  return found ?? extents;
}

/** A sheet's name as formulas write it or as the workbook has it. */
export function sheetKey(name: string): string {
  return (name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name).toLowerCase();
}

/** OFFSET makes a range as large as its last two arguments say, which the engine takes as plain numbers only. */
function offsetsOf(formula: string, extents: ReadonlyMap<string, SheetExtent> | undefined): RangeCost[] {
  return [...formula.matchAll(OFFSET)].map(({ index, 0: start }) => {
    const [, , , height, width] = argumentsAt(formula, index + start.length);
    const cells = Math.max(1, Number(height) || 1) * Math.max(1, Number(width) || 1);
    return { key: formula.slice(index), cells, blank: extents && cells };
  });
}

function argumentsAt(formula: string, start: number): string[] {
  const found = [''];
  for (let at = start, depth = 0; at < formula.length && depth >= 0; at++) {
    const sign = formula[at]!;
    if (sign === '(') depth++;
    else if (sign === ')') depth--;
    if (sign === ',' && depth === 0) found.push('');
    else if (depth >= 0) found[found.length - 1] += sign;
  }
  return found;
}

const span = (from: number, to: number) => Math.abs(to - from) + 1;

const columnSpan = (from: string, to: string) => span(columnNumber(from), columnNumber(to));

function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
}
