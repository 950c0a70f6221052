import { describe, expect, test } from 'vitest';
import {
  decodeCellText,
  decodeXmlBytes,
  encodeCellText,
  encodeXmlBytes,
  escapeAttribute,
  escapeXml,
  unescapeXml,
} from '../../../src/io/xlsx/xml-text.js';

test.each([
  ['a carriage return', 'a\rb', 'a_x000D_b'],
  ['a control character', 'a\u0001b\u001f', 'a_x0001_b_x001F_'],
  ['what looks like an escape', '_x000D_ _x00e9_', '_x005F_x000D_ _x005F_x00e9_'],
  ['what only begins like one', '_x00 _xyz1_', '_x00 _xyz1_'],
  ['line feed and tab', 'a\n\tb', 'a\n\tb'],
  ['no characters', '\uffff', '_xFFFF_'],
  ['beyond the first plane', '😀', '😀'],
])('cell text with %s', (_, text, stored) => {
  expect(encodeCellText(text)).toBe(stored);
  expect(decodeCellText(stored)).toBe(text);
});

test('half of a pair is no character', () => {
  expect(encodeCellText('a\ud83d')).toBe('a\ufffd');
});

test('entities', () => {
  expect(unescapeXml('&lt;&#65;&#x42;&amp;amp;&quot;&apos;&nbsp;')).toBe('<AB&amp;"\'&nbsp;');
  expect(unescapeXml(escapeXml('<a href="x">&amp;</a>'))).toBe('<a href="x">&amp;</a>');
  expect(escapeAttribute('a\n"b"')).toBe('a&#10;&quot;b&quot;');
});

describe('bytes', () => {
  test.each(['utf-8', 'utf-8-bom', 'utf-16le', 'utf-16be'] as const)('%s there and back', (encoding) => {
    const bytes = encodeXmlBytes('<a>µ😀</a>', encoding);
    expect(decodeXmlBytes(bytes)).toEqual({ text: '<a>µ😀</a>', encoding });
  });

  test('what is no text', () => {
    expect(() => decodeXmlBytes(Uint8Array.of(0x3c, 0xff, 0xfe))).toThrow(TypeError);
  });
});
