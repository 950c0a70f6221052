/** Damage of every kind: of a file's bytes, of the text of its parts, of what its cells hold. */
import fc from 'fast-check';
import { unzip, zipOf } from '../io/xlsx/hand-made.js';

/** Numbers, names and marks that have gone wrong somewhere before. */
export const NASTY = [
  '',
  '0',
  '-1',
  '1e999',
  'NaN',
  '4294967296',
  '1048577',
  'A1:XFD1048576',
  'XFE1',
  '#REF!',
  '&#0;',
  '&lt;',
  '&bogus;',
  '&',
  '<',
  '>',
  '"',
  "'",
  '=1+1',
  '\u0000',
  '\ud800',
  '\ufeff',
  '007',
  '42,003',
  '1.234.567',
  '__proto__',
  'constructor',
  '\u2212',
  'ｘ',
  ']]>',
  '<!--',
  '<?x?>',
  '_x0000_',
  'true',
  'rId999',
  '../..',
  'x'.repeat(300),
];

export interface Damage {
  /** Where, as a share of the length. */
  readonly at: number;
  readonly kind: 'flip' | 'cut' | 'repeat' | 'nasty' | 'swap' | 'value';
  readonly length: number;
  readonly text: string;
}

export const damage: fc.Arbitrary<Damage> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  kind: fc.constantFrom('flip', 'cut', 'repeat', 'nasty', 'swap', 'value'),
  length: fc.integer({ min: 1, max: 80 }),
  text: fc.constantFrom(...NASTY),
});

export function damageBytes(bytes: Uint8Array, { at, kind, length, text }: Damage): Uint8Array {
  const start = Math.floor(at * bytes.length);
  const [head, piece, tail] = [
    bytes.subarray(0, start),
    bytes.subarray(start, start + length),
    bytes.subarray(start + length),
  ];
  switch (kind) {
    case 'flip':
      return Buffer.concat([head, piece.map((byte) => byte ^ (1 << (length % 8))), tail]);
    case 'cut':
      return Buffer.concat([head, tail]);
    case 'repeat':
      return Buffer.concat([head, piece, piece, tail]);
    case 'swap':
      return Buffer.concat([head, tail.subarray(0, length), piece, tail.subarray(length)]);
    default:
      return Buffer.concat([head, Buffer.from(text), tail]);
  }
}

/** Mostly leaves a text that is still XML: values of attributes and texts between tags are replaced whole. */
export function damageText(source: string, { at, kind, length, text }: Damage): string {
  const start = Math.floor(at * source.length);
  if (kind === 'value') {
    const value = /="[^"]*"|>[^<]+</g;
    value.lastIndex = start;
    const found = value.exec(source);
    if (!found) return source;
    const [open, close] = found[0].startsWith('=') ? ['="', '"'] : ['>', '<'];
    return source.slice(0, found.index) + open + text + close + source.slice(found.index + found[0].length);
  }
  const element = /<(\w+)[^<>]*\/>|<(\w+)[^<>]*>[^<>]*<\/\2>/g;
  element.lastIndex = start;
  const found = element.exec(source);
  if (!found || kind === 'nasty') return source.slice(0, start) + text + source.slice(start);
  const end = found.index + found[0].length;
  switch (kind) {
    case 'cut':
      return source.slice(0, found.index) + source.slice(end);
    case 'repeat':
      return source.slice(0, end) + found[0] + source.slice(end);
    case 'swap':
      return source.slice(0, found.index) + source.slice(end) + found[0];
    default:
      return (
        source.slice(0, start) +
        source.slice(start, start + length).toUpperCase() +
        source.slice(start + length)
      );
  }
}

/** A package with some of its parts damaged, and whole as a zip. */
export async function damageParts(
  bytes: Uint8Array,
  damages: readonly { readonly part: number; readonly damage: Damage }[],
): Promise<Uint8Array> {
  const parts = new Map<string, Uint8Array>(await unzip(bytes));
  const names = [...parts.keys()];
  for (const { part, damage: each } of damages) {
    const name = names[part % names.length]!;
    parts.set(name, Buffer.from(damageText(Buffer.from(parts.get(name)!).toString(), each)));
  }
  return zipOf(Object.fromEntries(parts));
}
