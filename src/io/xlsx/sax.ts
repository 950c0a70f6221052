/** One pass over a part with a checking parser. */
import { SaxesParser } from 'saxes';
import { LIMITS } from '../gate/limits.js';
import { DOCUMENT_TYPE, localName } from './xml-scan.js';
import { TOO_DEEP } from './xml-tree.js';

export interface SaxHandler {
  /** Names are without their prefix; attributes of the format's own have none. */
  open(local: string, attribute: (name: string) => string | undefined): void;
  close(local: string): void;
  text(text: string): void;
}

/** Throws an Error, with line and column, on a text that is not well-formed or that declares a document type. */
export function parseXml(xml: string, handler: SaxHandler): void {
  parserFor(handler).write(xml).close();
}

/** As parseXml, of a text that comes in pieces. */
export async function parsePieces(pieces: AsyncIterable<string>, handler: SaxHandler): Promise<void> {
  const parser = parserFor(handler);
  for await (const piece of pieces) parser.write(piece);
  parser.close();
}

function parserFor(handler: SaxHandler): SaxesParser {
  const parser = new SaxesParser({});
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('doctype', () => {
    throw new Error(DOCUMENT_TYPE);
  });
  let depth = 0;
  parser.on('opentag', ({ name, attributes }) => {
    depth += 1;
    if (depth > LIMITS.xmlDepth) throw new Error(TOO_DEEP);
    handler.open(localName(name), (attribute) => attributes[attribute]);
  });
  parser.on('closetag', ({ name }) => {
    depth -= 1;
    handler.close(localName(name));
  });
  parser.on('text', (text) => handler.text(text));
  parser.on('cdata', (text) => handler.text(text));
  return parser;
}
