/**
 * Brings cell formats of one workbook into the styles of another: fonts, borders and number formats that are
 * needed go to the end of the user's lists; an entry that is already there is used again, so that a second run
 * adds nothing. No entry of the user's changes or moves.
 */
import { attributesOf, localName, openedTag, withAttribute } from './xml-scan.js';
import { escapeAttribute } from './xml-text.js';
import { attr, childOf, childrenOf, readTree, TextEdits, type XmlElement } from './xml-tree.js';

const FIRST_CUSTOM_FORMAT = 164;

/** The order of the lists in a styles part (ISO 29500-1, 18.8.39). */
const ORDER = ['numFmts', 'fonts', 'fills', 'borders', 'cellStyleXfs', 'cellXfs'];

export interface MergedStyles {
  /** The user's styles part with what was added. */
  readonly xml: string;
  /** For each cell format that was asked for: its index in the user's styles. */
  readonly indexOf: ReadonlyMap<number, number>;
}

/** Merges the cell formats with the given indices. Throws a SyntaxError where a text is no XML. */
export function mergeStyles(userXml: string, sourceXml: string, wanted: Iterable<number>): MergedStyles {
  const user = new StyleLists(userXml);
  const source = readTree(sourceXml);
  const sourceList = (name: string) => childOf(source, name)?.children ?? [];
  const sourceText = (element: XmlElement) => sourceXml.slice(element.start, element.end);

  const numberFormat = (id: number): number => {
    const code = attr(
      sourceList('numFmts').find((f) => attr(f, 'numFmtId') === String(id)),
      'formatCode',
    );
    return code === undefined ? id : user.numberFormat(code);
  };
  /** The first font is the book's default; the others here are that font with bold. */
  const font = (index: number): number => {
    const element = sourceList('fonts')[index];
    return index === 0 || !childOf(element, 'b') ? 0 : user.add('fonts', user.boldFont());
  };
  const border = (index: number): number =>
    index === 0 ? 0 : user.add('borders', sourceText(sourceList('borders')[index]!));

  const indexOf = new Map<number, number>();
  for (const index of [...new Set(wanted)].sort((a, b) => a - b)) {
    const xf = sourceList('cellXfs')[index];
    if (!xf) throw new Error(`the source has no cell format ${index}`);
    // The plain format is the user's own.
    if (index === 0) {
      indexOf.set(0, 0);
      continue;
    }
    let text = sourceText(xf);
    const set = (name: string, value: number) => {
      text = withOpenTag(text, (tag) => withAttribute(tag, name, String(value)));
    };
    set('numFmtId', numberFormat(Number(attr(xf, 'numFmtId'))));
    set('fontId', font(Number(attr(xf, 'fontId'))));
    set('borderId', border(Number(attr(xf, 'borderId'))));
    set('fillId', 0);
    set('xfId', 0);
    indexOf.set(index, user.add('cellXfs', text));
  }
  return { xml: user.apply(), indexOf };
}

function withOpenTag(xml: string, change: (tag: string) => string): string {
  const end = readTree(xml).openEnd;
  return change(xml.slice(0, end)) + xml.slice(end);
}

class StyleLists {
  private readonly root: XmlElement;
  private readonly added = new Map<string, string[]>();

  constructor(private readonly xml: string) {
    this.root = readTree(xml);
  }

  /** The id of a number format with this code. */
  numberFormat(code: string): number {
    const formats = childrenOf(childOf(this.root, 'numFmts'), 'numFmt');
    const texts = this.added.get('numFmts') ?? [];
    const all = [...formats, ...texts.map((text) => readTree(text))];
    const known = all.find((f) => attr(f, 'formatCode') === code);
    if (known) return Number(attr(known, 'numFmtId'));
    const id = Math.max(FIRST_CUSTOM_FORMAT - 1, ...all.map((f) => Number(attr(f, 'numFmtId')))) + 1;
    this.added.set('numFmts', [
      ...texts,
      this.prefixed(`<numFmt numFmtId="${id}" formatCode="${escapeAttribute(code)}"/>`),
    ]);
    return id;
  }

  /** The book's default font, bold. */
  boldFont(): string {
    const font = childOf(this.root, 'fonts')?.children[0];
    const p = this.root.prefix;
    if (!font) return `<${p}font><${p}b/></${p}font>`;
    const text = this.xml.slice(font.start, font.end);
    const bold = childOf(font, 'b');
    if (bold) return text;
    const edits = new TextEdits(text);
    const local = readTree(text);
    if (local.isEmpty) edits.append(local, `<${p}b/>`);
    else edits.insert(local.openEnd, `<${p}b/>`);
    return edits.apply();
  }

  /** The index of an entry in a list, appended where the list has none that says the same. */
  add(list: string, text: string): number {
    const entry = this.prefixed(text);
    const existing = (childOf(this.root, list)?.children ?? []).map((e) => this.xml.slice(e.start, e.end));
    const added = this.added.get(list) ?? [];
    const all = [...existing, ...added].map(canonical);
    const index = all.indexOf(canonical(entry));
    if (index >= 0) return index;
    this.added.set(list, [...added, entry]);
    return all.length;
  }

  apply(): string {
    const edits = new TextEdits(this.xml);
    for (const name of ORDER) {
      const entries = this.added.get(name);
      if (!entries) continue;
      const list = childOf(this.root, name);
      const p = this.root.prefix;
      if (list) {
        const count = list.children.length + entries.length;
        const old = this.xml.slice(list.start, list.openEnd);
        const open = openedTag(withAttribute(old, 'count', String(count)));
        edits.replace(list.start, list.openEnd, open);
        edits.insert(list.closeStart, entries.join('') + (list.isEmpty ? `</${list.name}>` : ''));
      } else {
        const before = ORDER.slice(0, ORDER.indexOf(name));
        const previous = this.root.children.filter((c) => before.includes(c.local)).at(-1);
        const xml = `<${p}${name} count="${entries.length}">${entries.join('')}</${p}${name}>`;
        edits.insert(previous?.end ?? this.root.openEnd, xml);
      }
    }
    return edits.apply();
  }

  private prefixed(xml: string): string {
    const { prefix } = this.root;
    return prefix ? xml.replace(/<(\/?)(?=\w)(?![\w.-]+:)/g, `<$1${prefix}`) : xml;
  }
}

/** One spelling for all that say the same: no white space between tags, attributes in order, no prefixes. */
function canonical(xml: string): string {
  const spell = (element: XmlElement): string => {
    const attributes = attributesOf(xml.slice(element.start, element.openEnd))
      .filter((a) => !a.name.startsWith('xmlns'))
      .map((a) => ` ${localName(a.name)}="${escapeAttribute(a.value)}"`)
      .sort();
    return `<${element.local}${attributes.join('')}>${element.children.map(spell).join('')}</>`;
  };
  return spell(readTree(xml));
}
