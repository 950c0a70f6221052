/**
 * Appends the formats of output to the styles of a user's workbook: fonts, borders and number formats that they need go
 * to the end of the user's lists; an entry that is already there is used again, so that a second run adds nothing. No
 * entry of the user's changes or moves.
 */
import type { OutputFormat } from '../../engine/workbook-model.js';
import { orderedFont } from './font-order.js';
import { FORMAT_LOOKS, FORMATS, type FormatLook } from './formats.js';
import { attributesOf, localName, openedTag, withAttribute } from './xml-scan.js';
import { escapeAttribute } from './xml-text.js';
import { attr, childOf, childrenOf, readTree, TextEdits, type XmlElement } from './xml-tree.js';

/** Format codes that have a number in every workbook (ISO 29500-1, 18.8.30), of those that output uses. */
const BUILT_IN: ReadonlyMap<string, number> = new Map([['0', 1]]);
const FIRST_CUSTOM_FORMAT = 164;

/** The order of the lists in a styles part (ISO 29500-1, 18.8.39). */
const ORDER = ['numFmts', 'fonts', 'fills', 'borders', 'cellStyleXfs', 'cellXfs'];

export interface AppendedStyles {
  /** The user's styles part with what was added. */
  readonly xml: string;
  /** For each format that was asked for: the index of its cell format in the user's styles. */
  readonly indexOf: ReadonlyMap<OutputFormat, number>;
}

/** @throws {SyntaxError} where the text is no XML */
export function appendStyles(userXml: string, formats: ReadonlySet<OutputFormat>): AppendedStyles {
  const lists = new StyleLists(userXml);
  const indexOf = lists.indicesOf(formats);
  return { xml: lists.apply(), indexOf };
}

/** The lists of a styles part, with what has been asked of them at their ends. */
export class StyleLists {
  private readonly root: XmlElement;
  private readonly added = new Map<string, string[]>();

  constructor(private readonly xml: string) {
    this.root = readTree(xml);
  }

  /** For each of the formats the index of its cell format. */
  indicesOf(formats: ReadonlySet<OutputFormat>): Map<OutputFormat, number> {
    const indexOf = new Map<OutputFormat, number>();
    for (const format of FORMATS) {
      if (!formats.has(format)) continue;
      // The plain format is the user's own.
      indexOf.set(format, format === 'plain' ? 0 : this.cellFormat(FORMAT_LOOKS[format]));
    }
    return indexOf;
  }

  /** The fill that a cell format of the user's has; 0 where that is none. */
  fillOf(index: number): number {
    const format = childOf(this.root, 'cellXfs')?.children[index];
    const fillId = Number(attr(format, 'fillId') ?? 0);
    const fill = childOf(this.root, 'fills')?.children[fillId];
    const pattern = childOf(fill, 'patternFill');
    const isNone = !fill || (pattern && (attr(pattern, 'patternType') ?? 'none') === 'none');
    return isNone ? 0 : fillId;
  }

  /** The index of the cell format that looks so; all that the look leaves open is the default. */
  cellFormat({ numberFormat, isBold, alignment, hasLineBelow }: FormatLook, fillId = 0): number {
    const p = this.root.prefix;
    const ids = {
      numFmtId: numberFormat === undefined ? 0 : this.numberFormat(numberFormat),
      fontId: isBold ? this.add('fonts', this.boldFont()) : 0,
      fillId,
      borderId: hasLineBelow ? this.add('borders', this.lineBelow()) : 0,
      xfId: 0,
    };
    const applied = {
      ...(numberFormat !== undefined && { applyNumberFormat: 1 }),
      ...(isBold && { applyFont: 1 }),
      ...(fillId > 0 && { applyFill: 1 }),
      ...(hasLineBelow && { applyBorder: 1 }),
      ...(alignment && { applyAlignment: 1 }),
    };
    const open = `<${p}xf${attributesXml({ ...ids, ...applied })}`;
    const within = alignment && `<${p}alignment${attributesXml({ ...alignment })}/>`;
    return this.add('cellXfs', within ? `${open}>${within}</${p}xf>` : `${open}/>`);
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

  /** The id of a number format with this code. */
  private numberFormat(code: string): number {
    const builtIn = BUILT_IN.get(code);
    if (builtIn !== undefined) return builtIn;
    const formats = childrenOf(childOf(this.root, 'numFmts'), 'numFmt');
    const texts = this.added.get('numFmts') ?? [];
    const all = [...formats, ...texts.map((text) => readTree(text))];
    const known = all.find((f) => attr(f, 'formatCode') === code);
    if (known) return Number(attr(known, 'numFmtId'));
    const id = Math.max(FIRST_CUSTOM_FORMAT - 1, ...all.map((f) => Number(attr(f, 'numFmtId')))) + 1;
    const p = this.root.prefix;
    this.added.set('numFmts', [
      ...texts,
      `<${p}numFmt${attributesXml({ numFmtId: id, formatCode: code })}/>`,
    ]);
    return id;
  }

  /** The book's default font, bold. */
  private boldFont(): string {
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
    return orderedFont(edits.apply());
  }

  private lineBelow(): string {
    const p = this.root.prefix;
    return `<${p}border><${p}left/><${p}right/><${p}top/><${p}bottom style="thin"/><${p}diagonal/></${p}border>`;
  }

  /** The index of an entry in a list, appended where the list has none that says the same. */
  private add(list: string, entry: string): number {
    const existing = (childOf(this.root, list)?.children ?? []).map((e) => this.xml.slice(e.start, e.end));
    const added = this.added.get(list) ?? [];
    const all = [...existing, ...added].map(canonical);
    const index = all.indexOf(canonical(entry));
    if (index >= 0) return index;
    this.added.set(list, [...added, entry]);
    return all.length;
  }
}

function attributesXml(values: Readonly<Record<string, string | number | boolean>>): string {
  return Object.entries(values)
    .map(([name, value]) => ` ${name}="${value === true ? 1 : escapeAttribute(String(value))}"`)
    .join('');
}

/**
 * One spelling for all that say the same: no white space between tags, attributes in order, no prefixes, what a font is
 * made of in any order.
 */
function canonical(xml: string): string {
  const spell = (element: XmlElement): string => {
    const attributes = attributesOf(xml.slice(element.start, element.openEnd))
      .filter((a) => !a.name.startsWith('xmlns'))
      .map((a) => ` ${localName(a.name)}="${escapeAttribute(a.value)}"`)
      .sort();
    const children = element.children.map(spell);
    if (element.local === 'font') children.sort();
    return `<${element.local}${attributes.join('')}>${children.join('')}</>`;
  };
  return spell(readTree(xml));
}
