/** Makes the XML of a sheet of the fresh workbook fit for the user's package. */

import { textXml } from './cell-xml.js';
import { attribute, localName, TagScanner, withAttribute } from './xml-scan.js';

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
 * The same sheet with the user's styles and namespaces, its shared strings as strings in the cells, and not
 * selected: two selected sheets would be edited as one.
 */
export function graftSheetXml(
  xml: string,
  strings: readonly string[],
  styleOf: (index: number) => number,
  namespaces: Namespaces,
): { xml: string; formulas: Set<string> } {
  const formulas = new Set<string>();
  const pieces: string[] = [];
  let at = 0;
  let address = '';
  const scanner = new TagScanner(xml);
  for (let tag = scanner.next(); tag; tag = scanner.next()) {
    if (tag.kind === 'close') continue;
    const text = xml.slice(tag.start, tag.end);
    const local = localName(tag.name);
    let changed = text;
    let end = tag.end;
    if (local === 'c') {
      address = attribute(text, 'r') ?? '';
      const style = styleOf(Number(attribute(text, 's') ?? 0));
      changed = withAttribute(text, 's', style === 0 ? undefined : String(style));
      if (attribute(text, 't') === 's') {
        const close = scanner.closeOf(tag);
        const index = Number(/<v>(\d+)<\/v>/.exec(xml.slice(tag.end, close.start))?.[1]);
        const open = withAttribute(changed, 't', 'inlineStr');
        changed = `${open}<is>${textXml('', strings[index]!)}</is></c>`;
        end = close.end;
      }
    } else if (local === 'f') formulas.add(address);
    else if (local === 'sheetView') changed = withAttribute(text, 'tabSelected', undefined);
    else if (local === 'worksheet') {
      changed = text
        .replace(TRANSITIONAL.main, namespaces.main)
        .replace(TRANSITIONAL.relationships, namespaces.relationships);
    }
    if (changed === text) continue;
    pieces.push(xml.slice(at, tag.start), changed);
    at = end;
  }
  pieces.push(xml.slice(at));
  return { xml: pieces.join(''), formulas };
}
