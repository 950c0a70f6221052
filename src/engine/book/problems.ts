/** What is said about a cell that cannot be used: where it is, what was found, expected, and to do. */
import { roundToWhole } from '../../maths/grain.js';
import type { Cell } from '../workbook-model.js';

export interface BadCell {
  readonly sheet: string;
  /** Address, e.g. `D7`. */
  readonly cell: string;
  /** The header or item that the cell stands under. */
  readonly header: string;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

/** The whole sentence, for a message that stands alone. */
export function sentenceOf(file: string, bad: BadCell): string {
  return `${file}: ${bad.sheet}!${bad.cell} (${bad.header}): found ${bad.found}; expected ${bad.expected}; ${bad.remedy}.`;
}

/** The short form for a Why cell. */
export function reasonOf(bad: BadCell): string {
  return `${bad.sheet}!${bad.cell} (${bad.header}): found ${bad.found}, expected ${bad.expected}`;
}

const LONGEST_QUOTE = 40;

/** A user's text as a message shows it: cut short, without control characters. */
export function shortened(text: string): string {
  const visible = text.replaceAll(/\p{C}+/gu, ' ');
  return visible.length > LONGEST_QUOTE ? `${visible.slice(0, LONGEST_QUOTE)}…` : visible;
}

/** A user's text as a message shows it in quotes. */
export function quoted(text: string): string {
  return `"${shortened(text)}"`;
}

/** What stands in a cell, in words. */
export function describe({ content, formula }: Cell): string {
  if (!content) return `the formula ${quoted(`=${formula ?? ''}`)} without a value`;
  switch (content.kind) {
    case 'number':
      return `the number ${content.value}`;
    case 'text':
      return `the text ${quoted(content.value)}`;
    case 'boolean':
      return content.value ? 'TRUE' : 'FALSE';
    case 'date':
      return `a date or time (serial number ${roundToWhole(content.value * 1e5) / 1e5})`;
    case 'error':
      return `the error ${content.value}`;
  }
}

export function listOf(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}
