/**
 * Changes cells in the text of a user's sheet. All that is not changed stays character for character: unknown
 * attributes and extensions, white space, the order of things.
 */
import { cellAddress, type SheetEdit } from '../../engine/workbook-model.js';
import { boundsOf, parseRange } from './cell-reference.js';
import type { OutputStyles, StyleOf } from './output-styles.js';
import { RowEdits } from './row-edits.js';
import { SHEET_LEAVES, type SheetPiece, wholePieces } from './sheet-pieces.js';
import { columnStyles, spliceColumns } from './splice-columns.js';
import { RowSplicer } from './splice-row.js';
import { attribute, localName, type Tag, TagScanner, withAttribute } from './xml-scan.js';
import { attr, childOf, readTree, TextEdits, type XmlElement } from './xml-tree.js';

export interface SplicedSheet {
  readonly xml: string;
  /** Addresses of cells that had a formula and have none now. */
  readonly lostFormulas: ReadonlySet<string>;
}

/** The place of the rows in a text from which they are left out: no XML holds this character. */
const ROWS = '\u0000';

/**
 * Throws an Error where a stored value is meant for a cell without formula, and a SyntaxError where the text is no
 * worksheet.
 */
export function spliceSheet(
  xml: string,
  edit: SheetEdit,
  styleOf: StyleOf,
  hasFill: OutputStyles['hasFill'] = () => false,
): SplicedSheet {
  const pieces = [...wholePieces(xml)];
  const splicer = new SheetSplicer(skeletonOf(pieces), edit, styleOf, hasFill);
  let text = splicer.head;
  for (const piece of pieces) if (piece.kind === 'rows') text += splicer.rows(piece.text);
  text += splicer.lastRows();
  return { xml: text + splicer.tail, lostFormulas: splicer.lostFormulas };
}

/** A worksheet without its rows. */
export interface Skeleton {
  readonly head: string;
  readonly tail: string;
}

export function skeletonOf(pieces: Iterable<SheetPiece>): Skeleton {
  let [head, tail] = ['', ''];
  for (const { kind, text } of pieces) {
    if (kind === 'head') head = text;
    else if (kind === 'tail') tail = text;
  }
  return { head, tail };
}

/** Makes an edit of a sheet whose rows come in pieces. */
export class SheetSplicer {
  readonly head: string;
  readonly tail: string;
  /** Whether the new text differs from the old, as far as it has been made. */
  isChanged: boolean;
  private readonly edits: RowEdits;
  private readonly splicer: RowSplicer;
  private row = -1;
  /** White space behind the last row so far: new rows go before it. */
  private rest = '';

  constructor(
    skeleton: Skeleton,
    edit: SheetEdit,
    styleOf: StyleOf,
    hasFill: OutputStyles['hasFill'] = () => false,
  ) {
    const xml = skeleton.head + skeleton.tail;
    const worksheet = readTree(xml, SHEET_LEAVES);
    const data = childOf(worksheet, 'sheetData');
    if (!data) throw new SyntaxError('the worksheet has no sheetData');
    this.edits = new RowEdits(edit);
    const edits = new TextEdits(xml);
    spliceColumns(worksheet, edits, edit.widths);
    spliceDimension(worksheet, edits, edit);
    if (!data.isEmpty || this.edits.next !== undefined) edits.append(data, ROWS);
    const [head = '', tail = ''] = edits.apply().split(ROWS);
    this.head = head;
    this.tail = tail;
    this.isChanged = head + tail !== xml;
    this.splicer = new RowSplicer(data.prefix, edit.clear, { styleOf, hasFill }, columnStyles(worksheet));
  }

  /** Addresses of cells that had a formula and have none now. */
  get lostFormulas(): ReadonlySet<string> {
    return this.splicer.lostFormulas;
  }

  /** The new text of a piece of rows. */
  rows(piece: string): string {
    const xml = this.rest + piece;
    const pieces: string[] = [];
    let at = 0;
    const scanner = new TagScanner(xml);
    for (let open = scanner.next(); open; open = scanner.next()) {
      const close: Tag = open.kind === 'open' ? scanner.closeOf(open) : open;
      if (localName(open.name) !== 'row') continue;
      const r = attribute(xml.slice(open.start, open.end), 'r');
      const row = r === undefined ? this.row + 1 : Number(r) - 1;
      // A new row goes right behind the one before it, so that white space before the next row stays there.
      pieces.push(this.missingRows(row));
      this.row = row;
      const edit = this.edits.next === row ? this.edits.take() : undefined;
      pieces.push(xml.slice(at, open.start), this.splicer.row(xml, open, close, row, edit));
      at = close.end;
    }
    this.rest = xml.slice(at);
    const text = pieces.join('');
    this.isChanged ||= text !== xml.slice(0, at);
    return text;
  }

  /** The rows that are to stand behind the last. */
  lastRows(): string {
    const text = this.missingRows(Number.POSITIVE_INFINITY);
    this.isChanged ||= text !== '';
    return text + this.rest;
  }

  private missingRows(before: number): string {
    let text = '';
    while (this.edits.next !== undefined && this.edits.next < before) {
      const missing = this.edits.next;
      const edit = this.edits.take();
      if (missing !== this.row) text += this.splicer.newRow(missing, edit);
    }
    return text;
  }
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
