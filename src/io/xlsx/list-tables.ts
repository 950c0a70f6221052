/** Tables over cells of a sheet (ListObjects; ISO 29500-1, 18.5): what they cover, and how one is made wider. */
import { type ListExtension, type ListTable, rangeText } from '../../engine/workbook-model.js';
import { parseRange, type Rect } from './cell-reference.js';
import type { OpcPackage } from './opc-package.js';
import { withAttribute } from './xml-scan.js';
import { escapeAttribute } from './xml-text.js';
import { attr, childOf, childrenOf, readTree, TextEdits, type XmlElement } from './xml-tree.js';

/** The tables of a sheet's part. */
export async function listsOf(pkg: OpcPackage, sheetPart: string): Promise<ListTable[]> {
  const lists: ListTable[] = [];
  for (const part of await listParts(pkg, sheetPart)) {
    const list = listOf(await pkg.tree(part));
    if (list) lists.push(list);
  }
  return lists;
}

async function listParts(pkg: OpcPackage, sheetPart: string): Promise<string[]> {
  const relationships = await pkg.relationships(sheetPart);
  return relationships.flatMap(({ kind, part }) =>
    kind === 'table' && part !== undefined && pkg.has(part) ? [part] : [],
  );
}

function listOf(table: XmlElement): ListTable | undefined {
  const bounds = parseRange(attr(table, 'ref') ?? '');
  if (!bounds) return undefined;
  return {
    name: attr(table, 'displayName') ?? attr(table, 'name') ?? '',
    bounds,
    hasHeader: (attr(table, 'headerRowCount') ?? '1') !== '0',
    totalsRows: Number(attr(table, 'totalsRowCount') ?? 0),
    columns: columnsOf(table).map((column) => attr(column, 'name') ?? ''),
    isPlain: (attr(table, 'tableType') ?? 'worksheet') === 'worksheet' && columnsOf(table).length > 0,
  };
}

const columnsOf = (table: XmlElement) => childrenOf(childOf(table, 'tableColumns'), 'tableColumn');

/** Makes a table of a sheet reach over the headers; one that does so already stays as it is. */
export async function extendList(pkg: OpcPackage, sheetPart: string, list: ListExtension): Promise<void> {
  for (const part of await listParts(pkg, sheetPart)) {
    const bounds = parseRange(attr(await pkg.tree(part), 'ref') ?? '');
    if (bounds && isSameRange(bounds, list.bounds)) {
      const text = await pkg.text(part);
      const extended = extendedXml(text, list);
      if (extended !== text) await pkg.setText(part, extended);
    }
  }
}

export function isSameRange(a: Rect, b: Rect): boolean {
  return rangeText(a) === rangeText(b);
}

/** The text of a table that reaches over the headers: each column is named as its header cell, as programs demand. */
export function extendedXml(xml: string, { bounds, first, headers }: ListExtension): string {
  const table = readTree(xml);
  const edits = new TextEdits(xml);
  const right = Math.max(bounds.right, first + headers.length - 1);
  const widen = (element: XmlElement | undefined, more: (tag: string) => string = (tag) => tag) => {
    if (!element) return;
    const range = parseRange(attr(element, 'ref') ?? '');
    const tag = xml.slice(element.start, element.openEnd);
    const isWhole = range?.right === bounds.right && range.right < right;
    const text = more(isWhole ? withAttribute(tag, 'ref', rangeText({ ...range, right })) : tag);
    if (text !== tag) edits.replace(element.start, element.openEnd, text);
  };
  const list = childOf(table, 'tableColumns')!;
  const columns = columnsOf(table);
  const ids = columns.map((column) => Number(attr(column, 'id')));
  let id = Math.max(0, ...ids.filter(Number.isFinite));
  let added = '';
  headers.forEach((header, place) => {
    const column = columns[first + place - bounds.left];
    if (!column) {
      id += 1;
      added += `<${table.prefix}tableColumn id="${id}" name="${escapeAttribute(header)}"/>`;
      return;
    }
    const tag = xml.slice(column.start, column.openEnd);
    const named = withAttribute(tag, 'name', header);
    if (named !== tag) edits.replace(column.start, column.openEnd, named);
  });
  widen(table);
  widen(childOf(table, 'autoFilter'));
  for (const sort of [childOf(table, 'sortState'), childOf(childOf(table, 'autoFilter'), 'sortState')])
    widen(sort);
  if (added !== '') {
    const count = String(right - bounds.left + 1);
    const tag = xml.slice(list.start, list.openEnd);
    edits.replace(list.start, list.openEnd, withAttribute(tag, 'count', count));
    edits.insert(list.closeStart, added);
  }
  return edits.apply();
}
