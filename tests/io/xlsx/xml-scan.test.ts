import { expect, test } from 'vitest';
import { attribute, TagScanner, withAttribute } from '../../../src/io/xlsx/xml-scan.js';
import { readTree, TextEdits } from '../../../src/io/xlsx/xml-tree.js';

function names(xml: string): string[] {
  const found: string[] = [];
  const scanner = new TagScanner(xml);
  for (let tag = scanner.next(); tag; tag = scanner.next()) found.push(`${tag.kind} ${tag.name}`);
  return found;
}

test.each([
  ['declaration and comment', '<?xml version="1.0"?><!-- <b/> --><a/>', ['empty a']],
  ['CDATA', '<a><![CDATA[<b>]]></a>', ['open a', 'close a']],
  ['a > in an attribute', `<a x=">" y='/>'><x:b\n/></a >`, ['open a', 'empty x:b', 'close a']],
])('tags: %s', (_, xml, expected) => {
  expect(names(xml)).toEqual(expected);
});

test.each(['<a', '<a x=">', '<a><b></a>', '<a>', '<!-- a', '', '</a>'])('no XML: %s', (xml) => {
  expect(() => readTree(xml)).toThrow(SyntaxError);
});

test('attributes', () => {
  expect(attribute(`<c r = 'A1' x:s="&quot;2"/>`, 'r')).toBe('A1');
  expect(attribute(`<c r = 'A1' s="&quot;2"/>`, 's')).toBe('"2');
  expect(attribute('<c x="a r=" r="A1"/>', 'r')).toBe('A1');
  expect(attribute('<c s="1" r="A1">', 'r')).toBe('A1');
  expect(attribute('<c xr="A1"/>', 'r')).toBeUndefined();
});

test.each([
  ['set', `<c  r='A1' s="1" />`, 's', '2', `<c  r='A1' s="2" />`],
  ['the same', `<c s='1'/>`, 's', '1', `<c s='1'/>`],
  ['added', '<c r="A1" />', 's', '2', '<c r="A1" s="2" />'],
  ['taken away', '<c r="A1" s="2">', 's', undefined, '<c r="A1">'],
])('an attribute %s', (_, tag, name, value, expected) => {
  expect(withAttribute(tag, name, value)).toBe(expected);
});

test('edits keep their order and refuse to overlap', () => {
  const edits = new TextEdits('abcdef');
  edits.replace(2, 4, 'X');
  edits.insert(2, '1');
  edits.insert(2, '2');
  edits.insert(4, '3');
  expect(edits.apply()).toBe('ab12X3ef');
  edits.replace(3, 5, 'Y');
  expect(() => edits.apply()).toThrow('two edits');
});

test.each([
  ['the next', '<a><b/></a><a></a>', '<b/>'],
  ['not that of one within', '<a><a></a>x</a>', '<a></a>x'],
  ['not that in a comment', '<a><!-- </a> -->x</a>', '<!-- </a> -->x'],
  ['with white space', '<a>x</a ><a></a>', 'x'],
  ['behind others that begin alike', '<a><ab></ab></a>', '<ab></ab>'],
])('the close tag of an element: %s', (_, xml, content) => {
  const scanner = new TagScanner(xml);
  const open = scanner.next()!;
  expect(xml.slice(open.end, scanner.closeOf(open).start)).toBe(content);
});
