/** Makes the text of a sheet of the fresh workbook fit for the user's package, piece by piece: it may be a long one. */
import { textElement } from './cell-xml.js';
import { sheetPieces } from './sheet-pieces.js';
import { localName, TagScanner, withAttribute } from './xml-scan.js';

export const TRANSITIONAL = {
  main: 'http://schemas.openxmlformats.org/spreadsheetml/2006/main',
  relationships: 'http://schemas.openxmlformats.org/officeDocument/2006/relationships',
};
export const STRICT = {
  main: 'http://purl.oclc.org/ooxml/spreadsheetml/main',
  relationships: 'http://purl.oclc.org/ooxml/officeDocument/relationships',
};
export type Namespaces = typeof TRANSITIONAL;

/**
 * The same sheet with the user's cell formats and namespaces, and not selected: two selected sheets would be edited
 * as one.
 *
 * @param onFormula told the address of every cell with a formula
 */
export async function* graftedSheetTexts(
  texts: AsyncIterable<string>,
  styleOf: (index: number) => number,
  namespaces: Namespaces,
  onFormula: (address: string) => void,
): AsyncGenerator<string> {
  for await (const { kind, text } of sheetPieces(texts)) {
    if (kind === 'rows') yield graftedRows(text, styleOf, onFormula);
    else if (kind === 'head') yield graftedHead(text, namespaces);
    else yield text;
  }
}

function graftedHead(head: string, namespaces: Namespaces): string {
  const pieces: string[] = [];
  let at = 0;
  const scanner = new TagScanner(head);
  for (let tag = scanner.next(); tag; tag = scanner.next()) {
    if (tag.kind === 'close') continue;
    let text = head.slice(tag.start, tag.end);
    if (localName(tag.name) === 'sheetView') text = withAttribute(text, 'tabSelected', undefined);
    else if (localName(tag.name) === 'worksheet') {
      text = text
        .replace(TRANSITIONAL.main, namespaces.main)
        .replace(TRANSITIONAL.relationships, namespaces.relationships);
    }
    pieces.push(head.slice(at, tag.start), text);
    at = tag.end;
  }
  return pieces.join('') + head.slice(at);
}

/**
 * A cell as the library writes it: its address, its format, and either a text or the rest of its tag with the start of
 * its formula.
 */
const CELL = /<c r="([A-Z]+\d+)"(?: s="(\d+)")?(?: t="str"><v>([^<]*)<\/v>|([^<>]*>)(<f>)?)/g;

function graftedRows(
  rows: string,
  styleOf: (index: number) => number,
  onFormula: (address: string) => void,
): string {
  return rows.replace(CELL, (_, address: string, index?: string, text?: string, rest = '', formula = '') => {
    if (formula !== '') onFormula(address);
    const style = index === undefined ? 0 : styleOf(Number(index));
    const start = `<c r="${address}"${style === 0 ? '' : ` s="${style}"`}`;
    // The library gives a text the type of a formula's result.
    if (text !== undefined) return `${start} t="inlineStr"><is>${textElement('', text)}</is>`;
    return start + rest + formula;
  });
}
