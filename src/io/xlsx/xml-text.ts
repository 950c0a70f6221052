/** Text in XML: entities, the spreadsheet's own `_xHHHH_` escapes, and the bytes of a part. */

const NAMED: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Escapes text for element content and for attributes in double quotes. */
export function escapeXml(text: string): string {
  return text.replace(/[&<>"]/g, (c) =>
    c === '&' ? '&amp;' : c === '<' ? '&lt;' : c === '>' ? '&gt;' : '&quot;',
  );
}

/** Escapes text for an attribute, where line breaks and tabs would else be read as spaces. */
export function escapeAttribute(text: string): string {
  return escapeXml(text).replace(/[\t\n\r]/g, (c) => `&#${c.charCodeAt(0)};`);
}

/** Resolves the five named entities and character references; anything else stays as it is. */
export function unescapeXml(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (all, hex, decimal, name) => {
    if (name !== undefined) return NAMED[name] ?? all;
    const code = hex !== undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return code <= 0x10ffff ? String.fromCodePoint(code) : all;
  });
}

/** Printable ASCII without the underscore: most texts and all formulas of ours. */
const PLAIN = /^[ -^`-~]*$/;

/**
 * Text as a cell holds it (ST_Xstring, ISO 29500-1, 22.9.2.19): what XML cannot hold, a carriage
 * return, which XML would read as a line feed, and the delete character, which libraries drop, become `_xHHHH_`; text that looks like such an escape gets
 * its underscore escaped. A lone surrogate is no character and becomes U+FFFD.
 */
export function encodeCellText(text: string): string {
  if (PLAIN.test(text)) return text;
  return text
    .replace(/\p{Cs}/gu, '\uFFFD')
    .replace(/_(?=x[0-9a-f]{4}_)/gi, '_x005F_')
    .replace(/[^\t\n\u0020-\u007E\u0080-\uFFFD\u{10000}-\u{10FFFF}]/gu, (c) => {
      return `_x${c.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`;
    });
}

export function decodeCellText(text: string): string {
  if (!text.includes('_x')) return text;
  return text.replace(/_x([0-9a-f]{4})_/gi, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16)));
}

export type XmlEncoding = 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'utf-16be';

/** The encoding that a byte order mark names; without one, UTF-8. */
export function encodingOfBytes(bytes: Uint8Array): XmlEncoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 'utf-8-bom' : 'utf-8';
}

/** Thrown where a part says that it has another encoding than it has; the message is a clause about the part. */
export class EncodingError extends Error {}

const DECLARED = /^\s*<\?xml\s[^>]*?\bencoding\s*=\s*["']([^"']*)["']/;

/**
 * Another program would read a text by the encoding that it declares: what it says has to be what it is, and a part is
 * in UTF-8 or UTF-16 (ECMA-376-2:2006, 8.1.4).
 *
 * @throws {EncodingError}
 */
export function checkDeclaredEncoding(text: string, encoding: XmlEncoding): void {
  const declared = DECLARED.exec(text.slice(0, 1000))?.[1];
  const isWide = encoding === 'utf-16le' || encoding === 'utf-16be';
  if (declared === undefined || (isWide ? /^utf-16(le|be)?$/i : /^utf-?8$/i).test(declared)) return;
  throw new EncodingError(
    `it says that its text is in ${declared.slice(0, 40)}, and it is in ${isWide ? 'UTF-16' : 'UTF-8'}`,
  );
}

/**
 * The text of an XML part without its byte order mark.
 *
 * @throws {TypeError} on bytes that are no text
 * @throws {EncodingError} where the text declares another encoding
 */
export function decodeXmlBytes(bytes: Uint8Array): { text: string; encoding: XmlEncoding } {
  const encoding = encodingOfBytes(bytes);
  const label = encoding === 'utf-8-bom' ? 'utf-8' : encoding;
  const text = new TextDecoder(label, { fatal: true }).decode(bytes);
  checkDeclaredEncoding(text, encoding);
  return { text, encoding };
}

/** The same text as bytes again, so that an edited part keeps its encoding and its mark. */
export function encodeXmlBytes(text: string, encoding: XmlEncoding): Uint8Array {
  if (encoding === 'utf-8') return Buffer.from(text, 'utf8');
  if (encoding === 'utf-8-bom') return Buffer.from(`\uFEFF${text}`, 'utf8');
  const bytes = Buffer.from(`\uFEFF${text}`, 'utf16le');
  return encoding === 'utf-16le' ? bytes : bytes.swap16();
}
