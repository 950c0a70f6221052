/** Reads a page back as a browser does, by a parser that is not the project's. */
import { type DefaultTreeAdapterMap, defaultTreeAdapter, parse } from 'parse5';

export type Node = DefaultTreeAdapterMap['element'];

export interface ReadTable {
  readonly caption: string;
  /** The headings above it, nearest last. */
  readonly under: readonly string[];
  readonly headers: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface ReadPage {
  readonly errors: readonly string[];
  readonly elements: readonly Node[];
  readonly tables: readonly ReadTable[];
  readonly text: string;
}

export function readPage(html: string): ReadPage {
  const errors: string[] = [];
  const document = parse(html, {
    onParseError: ({ code, startLine, startCol }) => errors.push(`${code} at ${startLine}:${startCol}`),
  });
  const elements: Node[] = [];
  const tables: ReadTable[] = [];
  const under: string[] = [];
  const visit = (node: DefaultTreeAdapterMap['node']): void => {
    if (defaultTreeAdapter.isElementNode(node)) {
      elements.push(node);
      const level = /^h([1-6])$/.exec(node.tagName)?.[1];
      if (level) under.splice(Number(level) - 1, 9, textOf(node));
      if (node.tagName === 'table') tables.push({ ...readTable(node), under: under.filter(Boolean) });
    }
    if ('childNodes' in node) node.childNodes.forEach(visit);
  };
  visit(document);
  return { errors, elements, tables, text: textOf(elements.find(({ tagName }) => tagName === 'body')!) };
}

export function attribute(node: Node, name: string): string | undefined {
  return node.attrs.find((own) => own.name === name)?.value;
}

export function textOf(node: DefaultTreeAdapterMap['node']): string {
  if (defaultTreeAdapter.isTextNode(node)) return node.value;
  return 'childNodes' in node ? node.childNodes.map(textOf).join('') : '';
}

function descendants(node: Node, ...tags: string[]): Node[] {
  return node.childNodes.flatMap((child) =>
    defaultTreeAdapter.isElementNode(child)
      ? [...(tags.includes(child.tagName) ? [child] : []), ...descendants(child, ...tags)]
      : [],
  );
}

function readTable(table: Node): Omit<ReadTable, 'under'> {
  const [head, ...rows] = descendants(table, 'tr').map((row) => descendants(row, 'th', 'td').map(textOf));
  return { caption: descendants(table, 'caption').map(textOf).join(), headers: head ?? [], rows };
}
