import { expect, test } from 'vitest';
import { decodeText } from '../../../src/io/csv/decode-text.js';

const utf16be = (text: string) => Buffer.from(text, 'utf16le').swap16();

test.each([
  ['UTF-8', Buffer.from('36 µm'), '36 µm'],
  ['UTF-8 behind its mark', Buffer.from('\ufeff36 µm'), '36 µm'],
  ['UTF-16 LE behind its mark', Buffer.from('\ufeff36 µm', 'utf16le'), '36 µm'],
  ['UTF-16 BE behind its mark', utf16be('\ufeff36 µm'), '36 µm'],
  ['Windows-1252, where the bytes are no UTF-8', Buffer.from('36 µm', 'latin1'), '36 µm'],
  ['the signs that Windows-1252 has and Latin-1 has not', Buffer.from([0x80, 0x94, 0x9f]), '€”Ÿ'],
  ['nothing', Buffer.from(''), ''],
])('reads %s', (_, bytes, text) => {
  expect(decodeText(bytes)).toBe(text);
});

test.each([
  ['zero characters', Buffer.from('PK\x03\x04\0\0')],
  ['UTF-16 without its mark', Buffer.from('Part', 'utf16le')],
  ['half a sign of UTF-16', Buffer.from([0xff, 0xfe, 0x50])],
  ['broken UTF-8 behind its mark', Buffer.from([0xef, 0xbb, 0xbf, 0xb5])],
])('takes %s for no text', (_, bytes) => {
  expect(decodeText(bytes)).toBeUndefined();
});
