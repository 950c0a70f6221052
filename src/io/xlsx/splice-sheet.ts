/**
 * Changes cells in the text of a user's sheet. All that is not changed stays character for character: unknown
 * attributes and extensions, white space, the order of things.
 */
import {
  type CellContent,
  cellAddress,
  type OutputCell,
  type SheetEdit,
} from '../../engine/workbook-model.js';
import { boundsOf, parseRange } from './cell-reference.js';
import { spliceColumns } from './splice-columns.js';
import { RowSplicer } from './splice-row.js';
import { attribute, localName, type Tag, TagScanner, withAttribute } from './xml-scan.js';
import { attr, childOf, readTree, TextEdits, type XmlElement } from './xml-tree.js';

/** What the cells of one row are to become, by column. */
export interface RowEdit {
  readonly cells: Map<number, OutputCell>;
  readonly storedValues: Map<number, CellContent>;
}

export interface SplicedSheet {
  readonly xml: string;
  /** Addresses of cells that had a formula and have none now. */
  readonly lostFormulas: ReadonlySet<string>;
}

/** The parts of a sheet's text that edits look into; cells are too many for a tree. */
export const SHEET_LEAVES: ReadonlySet<string> = new Set(['sheetData']);

/**
 * Throws an Error where a stored value is meant for a cell without formula, and a SyntaxError where the text is no
 * worksheet.
 */
export function spliceSheet(
  xml: string,
  edit: SheetEdit,
  styleOf: (cell: OutputCell) => number,
): SplicedSheet {
  const worksheet = readTree(xml, SHEET_LEAVES);
  const data = childOf(worksheet, 'sheetData');
  if (!data) throw new SyntaxError('the worksheet has no sheetData');
  const edits = new TextEdits(xml);
  spliceColumns(worksheet, edits, edit.widths);
  spliceDimension(worksheet, edits, edit);
  const splicer = new RowSplicer(xml, data.prefix, edit.clear, styleOf);
  const rows = spliceRows(xml, data, rowEdits(edit), splicer);
  if (data.isEmpty && rows === '') return { xml: edits.apply(), lostFormulas: splicer.lostFormulas };
  if (data.isEmpty) edits.append(data, rows);
  else edits.replace(data.openEnd, data.closeStart, rows);
  return { xml: edits.apply(), lostFormulas: splicer.lostFormulas };
}

function rowEdits(edit: SheetEdit): Map<number, RowEdit> {
  const rows = new Map<number, RowEdit>();
  const of = (row: number): RowEdit => {
    const known = rows.get(row) ?? { cells: new Map(), storedValues: new Map() };
    rows.set(row, known);
    return known;
  };
  for (const { row, column, cell } of edit.cells) of(row).cells.set(column, cell);
  for (const { row, column, content } of edit.storedValues) of(row).storedValues.set(column, content);
  return rows;
}

function spliceRows(
  xml: string,
  data: XmlElement,
  wanted: Map<number, RowEdit>,
  splicer: RowSplicer,
): string {
  const pending = [...wanted.keys()].sort((a, b) => a - b);
  const pieces: string[] = [];
  let at = data.openEnd;
  let next = 0;
  let row = -1;
  const addMissingRows = (before: number) => {
    for (; next < pending.length && pending[next]! < before; next++) {
      const missing = pending[next]!;
      if (missing !== row) pieces.push(splicer.newRow(missing, wanted.get(missing)!));
    }
  };
  const scanner = new TagScanner(xml, data.openEnd, data.closeStart);
  for (let open = scanner.next(); open; open = scanner.next()) {
    const close: Tag = open.kind === 'open' ? scanner.closeOf(open) : open;
    if (localName(open.name) !== 'row') continue;
    const r = attribute(xml.slice(open.start, open.end), 'r');
    const index = r === undefined ? row + 1 : Number(r) - 1;
    // A new row goes right behind the one before it, so that white space before the next row stays there.
    addMissingRows(index);
    row = index;
    pieces.push(xml.slice(at, open.start), splicer.row(open, close, index, wanted.get(index)));
    at = close.end;
  }
  addMissingRows(Number.POSITIVE_INFINITY);
  pieces.push(xml.slice(at, data.closeStart));
  return pieces.join('');
}

/** The used range that the sheet states grows by what is written; where it states none, none is needed. */
function spliceDimension(worksheet: XmlElement, edits: TextEdits, edit: SheetEdit): void {
  const dimension = childOf(worksheet, 'dimension');
  const old = parseRange(attr(dimension, 'ref') ?? '');
  if (!dimension || !old) return;
  const rect = boundsOf(edit.cells, old) ?? old;
  if (rect === old) return;
  const ref = `${cellAddress(rect.top, rect.left)}:${cellAddress(rect.bottom, rect.right)}`;
  const tag = edits.source.slice(dimension.start, dimension.openEnd);
  edits.replace(dimension.start, dimension.openEnd, withAttribute(tag, 'ref', ref));
}
