/** The elements of a small part with their offsets, and edits of its text. */
import { LIMITS } from '../gate/limits.js';
import {
  type Attribute,
  attributesOf,
  localName,
  openedTag,
  prefixOf,
  type Tag,
  TagScanner,
} from './xml-scan.js';

export interface XmlElement {
  readonly name: string;
  readonly local: string;
  /** With its colon, or nothing. */
  readonly prefix: string;
  readonly attributes: readonly Attribute[];
  readonly children: readonly XmlElement[];
  /** The whole element. */
  readonly start: number;
  readonly end: number;
  /** Behind its open tag. */
  readonly openEnd: number;
  /** Where its close tag starts; openEnd for an element without content. */
  readonly closeStart: number;
  readonly isEmpty: boolean;
}

export const TOO_DEEP = `elements stand within one another more than ${LIMITS.xmlDepth} deep`;

/**
 * Reads the tree of a part. Elements whose local name is in `leaves` get no children, which keeps the cells of
 * a large sheet out of the tree. Throws a SyntaxError on a text that is no XML.
 */
export function readTree(xml: string, leaves: ReadonlySet<string> = new Set()): XmlElement {
  const scanner = new TagScanner(xml);
  const root = scanner.next();
  if (!root || root.kind === 'close') throw new SyntaxError('there is no element');
  return elementAt(xml, scanner, root, leaves);
}

function elementAt(
  xml: string,
  scanner: TagScanner,
  open: Tag,
  leaves: ReadonlySet<string>,
  depth = 1,
): XmlElement {
  if (depth > LIMITS.xmlDepth) throw new SyntaxError(TOO_DEEP);
  const children: XmlElement[] = [];
  let close = open;
  if (open.kind === 'open') {
    if (leaves.has(localName(open.name))) close = scanner.closeOf(open);
    else {
      for (;;) {
        const tag = scanner.next();
        if (!tag) throw new SyntaxError(`<${open.name}> is never closed`);
        if (tag.kind === 'close') {
          if (tag.name !== open.name) throw new SyntaxError(`<${open.name}> is closed by </${tag.name}>`);
          close = tag;
          break;
        }
        children.push(elementAt(xml, scanner, tag, leaves, depth + 1));
      }
    }
  }
  return {
    name: open.name,
    local: localName(open.name),
    prefix: prefixOf(open.name),
    attributes: attributesOf(xml.slice(open.start, open.end)),
    children,
    start: open.start,
    end: close.end,
    openEnd: open.end,
    closeStart: open.kind === 'open' ? close.start : open.end,
    isEmpty: open.kind === 'empty',
  };
}

export function childOf(element: XmlElement | undefined, local: string): XmlElement | undefined {
  return element?.children.find((c) => c.local === local);
}

export function childrenOf(element: XmlElement | undefined, local: string): XmlElement[] {
  return element?.children.filter((c) => c.local === local) ?? [];
}

/** An attribute's value: by its name as written, or, where it has a namespace, by its local name from the colon on (`:id`). */
export function attr(element: XmlElement | undefined, name: string): string | undefined {
  return element?.attributes.find((a) => (name.startsWith(':') ? a.name.endsWith(name) : a.name === name))
    ?.value;
}

/** Replacements in one text, gathered first and made at once. */
export class TextEdits {
  private readonly edits: { start: number; end: number; text: string }[] = [];

  constructor(readonly source: string) {}

  replace(start: number, end: number, text: string): void {
    this.edits.push({ start, end, text });
  }

  insert(at: number, text: string): void {
    this.replace(at, at, text);
  }

  /** Appends to an element's content, opening it first where it is written `<a/>`. */
  append(element: XmlElement, text: string): void {
    if (!element.isEmpty) {
      this.insert(element.closeStart, text);
      return;
    }
    const open = openedTag(this.source.slice(element.start, element.openEnd));
    this.replace(element.start, element.openEnd, `${open}${text}</${element.name}>`);
  }

  /** Insertions at one place stay in the order in which they were asked for, before what is replaced there. */
  apply(): string {
    const sorted = this.edits
      .map((edit, order) => ({ ...edit, order }))
      .sort((a, b) => a.start - b.start || a.end - b.end || a.order - b.order);
    const pieces: string[] = [];
    let at = 0;
    for (const edit of sorted) {
      if (edit.start < at) throw new Error('two edits of one place');
      pieces.push(this.source.slice(at, edit.start), edit.text);
      at = edit.end;
    }
    pieces.push(this.source.slice(at));
    return pieces.join('');
  }
}
