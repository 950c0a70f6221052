/**
 * The order of what a font is made of (ISO 29500-1, 18.8.22, as spreadsheet programs write it). The standard's first
 * edition has a sequence where later ones have a choice; ExcelJS writes another order, which validators refuse.
 */
import { childOf, childrenOf, readTree, TextEdits } from './xml-tree.js';

const ORDER = [
  ...['b', 'i', 'strike', 'condense', 'extend', 'outline', 'shadow', 'u', 'vertAlign'],
  ...['sz', 'color', 'name', 'family', 'charset', 'scheme'],
];

/** One `<font>` with its elements in that order; what the order does not name goes behind. */
export function orderedFont(xml: string): string {
  const font = readTree(xml);
  const rank = (local: string) => (ORDER.includes(local) ? ORDER.indexOf(local) : ORDER.length);
  const sorted = font.children.toSorted((a, b) => rank(a.local) - rank(b.local));
  if (sorted.every((child, i) => child === font.children[i])) return xml;
  const children = sorted.map(({ start, end }) => xml.slice(start, end));
  return xml.slice(0, font.openEnd) + children.join('') + xml.slice(font.closeStart);
}

/** A styles part with all its fonts so. */
export function withOrderedFonts(xml: string): string {
  const edits = new TextEdits(xml);
  for (const { start, end } of childrenOf(childOf(readTree(xml), 'fonts'), 'font')) {
    edits.replace(start, end, orderedFont(xml.slice(start, end)));
  }
  return edits.apply();
}
