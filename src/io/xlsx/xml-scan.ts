/**
 * Where the tags of an XML text stand. Editing needs offsets, so that all that is not edited can stay
 * character for character; a parser that rebuilds the text would lose them.
 *
 * The text is taken to be XML; what is not recognisable as such throws a SyntaxError.
 */
import { escapeAttribute, unescapeXml } from './xml-text.js';

export interface Tag {
  readonly kind: 'open' | 'close' | 'empty';
  /** With its prefix, as written. */
  readonly name: string;
  /** Offset of `<`. */
  readonly start: number;
  /** Offset behind `>`. */
  readonly end: number;
}

/** The name without its prefix. */
export function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/** The prefix with its colon, or nothing. */
export function prefixOf(name: string): string {
  return name.slice(0, name.indexOf(':') + 1);
}

/** Entities of a document type's own are no part of the format (ECMA-376-2:2006, 8.1.4) and a known means of attack. */
export const DOCUMENT_TYPE = 'it has a document type, which no part of a workbook has';

const DOUBLE_QUOTE = 0x22;
const SINGLE_QUOTE = 0x27;
const SLASH = 0x2f;
const GREATER = 0x3e;
const SPACE = 0x20;

/** Walks over the tags of a text; comments, CDATA, declarations and instructions are skipped. */
export class TagScanner {
  constructor(
    private readonly xml: string,
    private at = 0,
    private readonly stop = xml.length,
  ) {}

  next(): Tag | undefined {
    const { xml } = this;
    for (;;) {
      const start = xml.indexOf('<', this.at);
      if (start < 0 || start >= this.stop) return undefined;
      const second = xml[start + 1];
      if (second === '!' || second === '?') {
        this.at = this.behindMarkup(start);
        continue;
      }
      const end = this.tagEnd(start);
      this.at = end;
      const isClose = second === '/';
      const nameStart = isClose ? start + 2 : start + 1;
      const nameEnd = this.nameEnd(nameStart);
      const kind = isClose ? 'close' : xml[end - 2] === '/' ? 'empty' : 'open';
      return { kind, name: xml.slice(nameStart, nameEnd), start, end };
    }
  }

  /** The end of the element whose open tag was just returned: its close tag. */
  closeOf(open: Tag): Tag {
    const near = this.nearCloseOf(open);
    if (near) {
      this.at = near.end;
      return near;
    }
    for (let depth = 1; ; ) {
      const tag = this.next();
      if (!tag) throw new SyntaxError(`<${open.name}> is never closed`);
      if (tag.kind === 'open') depth++;
      if (tag.kind === 'close' && --depth === 0) {
        if (tag.name !== open.name) throw new SyntaxError(`<${open.name}> is closed by </${tag.name}>`);
        return tag;
      }
    }
  }

  /** The next close tag of that name, where nothing between could make another one the right one. */
  private nearCloseOf(open: Tag): Tag | undefined {
    const text = `</${open.name}>`;
    const start = this.xml.indexOf(text, this.at);
    if (start < 0 || start >= this.stop) return undefined;
    const between = this.xml.slice(this.at, start);
    // Another element of that name within, or a comment that only looks like a tag.
    if (between.includes(`<${open.name}`) || between.includes(`</${open.name}`) || between.includes('<!')) {
      return undefined;
    }
    return { kind: 'close', name: open.name, start, end: start + text.length };
  }

  private nameEnd(start: number): number {
    for (let i = start; ; i++) {
      const code = this.xml.charCodeAt(i);
      if (code <= SPACE || code === SLASH || code === GREATER) return i;
    }
  }

  private behindMarkup(start: number): number {
    const [opener, closer] =
      [
        ['<!--', '-->'],
        ['<![CDATA[', ']]>'],
        ['<?', '?>'],
      ].find(([text]) => this.xml.startsWith(text!, start)) ?? [];
    if (opener === undefined) throw new SyntaxError(DOCUMENT_TYPE);
    const end = this.xml.indexOf(closer!, start + opener.length);
    if (end < 0) throw new SyntaxError(`${opener} is never closed`);
    return end + closer!.length;
  }

  /** A `>` may stand in an attribute's value. */
  private tagEnd(start: number): number {
    const { xml } = this;
    let quote = 0;
    for (let i = start; i < xml.length; i++) {
      const code = xml.charCodeAt(i);
      if (quote !== 0) {
        if (code === quote) quote = 0;
      } else if (code === DOUBLE_QUOTE || code === SINGLE_QUOTE) quote = code;
      else if (code === GREATER) return i + 1;
    }
    throw new SyntaxError('a tag is never closed');
  }
}

export interface Attribute {
  readonly name: string;
  /** With entities resolved. */
  readonly value: string;
  /** Offsets within the tag's text: from the white space before the name to behind the closing quote. */
  readonly start: number;
  readonly end: number;
}

/** Begins at a name, not at the white space before it: a tag of a million spaces would take a trillion steps. */
const ATTRIBUTE = /(?<=\s)([^\s=/>]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/** The attributes of one tag's text, such as `<c r="A1" s="2">`. */
export function attributesOf(tagText: string): Attribute[] {
  return [...tagText.matchAll(ATTRIBUTE)].map((m) => ({
    name: m[1]!,
    value: unescapeXml(m[2] ?? m[3] ?? ''),
    start: spaceBefore(tagText, m.index),
    end: m.index + m[0].length,
  }));
}

function spaceBefore(text: string, index: number): number {
  let start = index;
  while (start > 0 && text.charCodeAt(start - 1) <= SPACE) start--;
  return start;
}

/** The value of an attribute, found by its name as written. */
export function attribute(tagText: string, name: string): string | undefined {
  // Of a large sheet's cells, nearly all are asked for; most tags are plain enough to look without a pattern.
  if (!tagText.includes("'") && !tagText.includes('&')) {
    const start = tagText.indexOf(` ${name}="`);
    if (start > 0 && quotesBefore(tagText, start) % 2 === 0) {
      const valueStart = start + name.length + 3;
      return tagText.slice(valueStart, tagText.indexOf('"', valueStart));
    }
  }
  return attributesOf(tagText).find((a) => a.name === name)?.value;
}

function quotesBefore(text: string, end: number): number {
  let count = 0;
  for (let at = text.indexOf('"'); at >= 0 && at < end; at = text.indexOf('"', at + 1)) count++;
  return count;
}

/** The tag's text with one attribute set (undefined takes it away); all other characters stay. */
export function withAttribute(tagText: string, name: string, value: string | undefined): string {
  const old = attributesOf(tagText).find((a) => a.name === name);
  if (old?.value === value) return tagText;
  const text = value === undefined ? '' : ` ${name}="${escapeAttribute(value)}"`;
  if (old) return tagText.slice(0, old.start) + text + tagText.slice(old.end);
  const at = bodyOf(tagText).length;
  return tagText.slice(0, at) + text + tagText.slice(at);
}

/** `<a b="c" />` as `<a b="c">`; an open tag stays as it is. */
export function openedTag(tagText: string): string {
  return tagText.endsWith('/>') ? `${bodyOf(tagText)}>` : tagText;
}

/** A tag's text without its end and the white space before it. */
export function bodyOf(tagText: string): string {
  return tagText.slice(0, tagText.endsWith('/>') ? -2 : -1).trimEnd();
}
