/** Takes the text of a worksheet apart: what stands before its rows, the rows in pieces, what stands behind. */

import { localName, TagScanner } from './xml-scan.js';
import { childOf, readTree } from './xml-tree.js';

/** The parts of a sheet's text that edits look into; cells are too many for a tree. */
export const SHEET_LEAVES: ReadonlySet<string> = new Set(['sheetData']);

/** Comments, CDATA and instructions, but for the declaration at the start. */
const ODD = /<!|<\?(?!xml\s)/;

/** The open tag of `sheetData`, or all of it where it is empty. */
const SHEET_DATA = /<((?:[\w.-]+:)?)sheetData(?:\s[^<>]*)?>/;

export type SheetPiece =
  /** Up to and with the open tag of `sheetData`. */
  | { readonly kind: 'head'; readonly text: string }
  /** Whole rows, one behind the other. */
  | { readonly kind: 'rows'; readonly text: string }
  /** From the close tag of `sheetData` on. */
  | { readonly kind: 'tail'; readonly text: string };

/**
 * From where the text has a comment or the like, which may hold what only looks like a tag, all further rows are one
 * piece.
 *
 * Throws a SyntaxError where there is no `sheetData`.
 */
export async function* sheetPieces(texts: AsyncIterable<string>): AsyncGenerator<SheetPiece> {
  let text = '';
  let head: string | undefined;
  let prefix = '';
  let isTail = false;
  let tail = '';
  let isOdd = false;
  for await (const more of texts) {
    if (isTail) {
      tail += more;
      continue;
    }
    text += more;
    isOdd ||= ODD.test(more);
    if (isOdd) continue;
    if (head === undefined) {
      const found = SHEET_DATA.exec(text);
      if (!found) continue;
      prefix = found[1]!;
      const end = found.index + found[0].length;
      const isEmpty = found[0].endsWith('/>');
      head = text.slice(0, end);
      text = text.slice(end);
      yield { kind: 'head', text: head };
      if (isEmpty) {
        isTail = true;
        tail = text;
        continue;
      }
    }
    const close = text.indexOf(`</${prefix}sheetData`);
    if (close >= 0) {
      if (close > 0) yield { kind: 'rows', text: text.slice(0, close) };
      isTail = true;
      tail = text.slice(close);
      continue;
    }
    const row = `</${prefix}row>`;
    const last = text.lastIndexOf(row);
    if (last < 0) continue;
    yield { kind: 'rows', text: text.slice(0, last + row.length) };
    text = text.slice(last + row.length);
  }
  if (isTail) yield { kind: 'tail', text: tail };
  else if (head === undefined) yield* wholePieces(text);
  else yield* lastPieces(text);
}

/** The pieces of a whole worksheet. */
export function* wholePieces(xml: string): Generator<SheetPiece> {
  const data = childOf(readTree(xml, SHEET_LEAVES), 'sheetData');
  if (!data) throw new SyntaxError('the worksheet has no sheetData');
  yield { kind: 'head', text: xml.slice(0, data.openEnd) };
  if (data.closeStart > data.openEnd) yield { kind: 'rows', text: xml.slice(data.openEnd, data.closeStart) };
  yield { kind: 'tail', text: xml.slice(data.closeStart) };
}

/** Rows up to the end of `sheetData`, and what stands behind. */
function* lastPieces(text: string): Generator<SheetPiece> {
  const scanner = new TagScanner(text);
  for (let tag = scanner.next(); tag; tag = scanner.next()) {
    if (tag.kind === 'open') scanner.closeOf(tag);
    if (tag.kind !== 'close') continue;
    if (localName(tag.name) !== 'sheetData') break;
    yield { kind: 'rows', text: text.slice(0, tag.start) };
    yield { kind: 'tail', text: text.slice(tag.start) };
    return;
  }
  throw new SyntaxError('<sheetData> is never closed');
}
