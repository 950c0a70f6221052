/** The text of a .csv file, whichever program of whichever country saved it. */

/** What Windows-1252 has at 0x80 to 0x9F; TextDecoder differs there between versions of Node. */
const WINDOWS_1252 =
  '\u20ac\x81\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\x8d\u017d\x8f' +
  '\x90\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\x9d\u017e\u0178';

/**
 * A byte order mark decides between UTF-8 and UTF-16; without one the text is UTF-8, or Windows-1252 where the
 * bytes are no UTF-8.
 *
 * @returns undefined where the bytes are no text: zero characters, or broken behind their byte order mark
 */
export function decodeText(bytes: Uint8Array): string | undefined {
  const marked = markedEncoding(bytes);
  const text = decode(bytes, marked ?? 'utf-8') ?? (marked ? undefined : decodeWindows1252(bytes));
  return text?.includes('\0') ? undefined : text;
}

function markedEncoding([first, second, third]: Uint8Array): string | undefined {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  return first === 0xef && second === 0xbb && third === 0xbf ? 'utf-8' : undefined;
}

/** Without the byte order mark; undefined where the bytes are not of the encoding. */
function decode(bytes: Uint8Array, encoding: string): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function decodeWindows1252(bytes: Uint8Array): string {
  const latin = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  return latin.replaceAll(/[\u0080-\u009f]/g, (letter) => WINDOWS_1252[letter.charCodeAt(0) - 0x80]!);
}
