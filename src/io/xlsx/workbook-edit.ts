/** Changes of the workbook part: its list of sheets, its defined names, its active tab. */
import type { OpcPackage } from './opc-package.js';
import { listSheets, type SheetEntry } from './workbook-package.js';
import { prefixOf, withAttribute } from './xml-scan.js';
import { escapeAttribute, escapeXml, unescapeXml } from './xml-text.js';
import { attr, childOf, childrenOf, TextEdits, type XmlElement } from './xml-tree.js';

const RELATIONSHIPS = /\/officeDocument\/(2006\/)?relationships$/;

export function findSheetEntry(sheets: readonly SheetEntry[], name: string): SheetEntry | undefined {
  return sheets.find((s) => s.name.toLowerCase() === name.toLowerCase());
}

/** Adds an entry for a new sheet behind the others. */
export async function addSheetEntry(
  pkg: OpcPackage,
  workbook: string,
  name: string,
  relationshipId: string,
  relationshipsNamespace: string,
): Promise<void> {
  const tree = await pkg.tree(workbook);
  const sheets = childOf(tree, 'sheets');
  if (!sheets) throw pkg.damaged(workbook, 'the list of sheets is missing');
  const ids = sheets.children.map((s) => Number(attr(s, 'sheetId')));
  const sheetId = Math.max(0, ...ids.filter(Number.isFinite)) + 1;
  const bound = tree.attributes.find((a) => a.name.startsWith('xmlns:') && RELATIONSHIPS.test(a.value));
  const id = bound
    ? `${bound.name.slice('xmlns:'.length)}:id="${relationshipId}"`
    : `xmlns:r="${relationshipsNamespace}" r:id="${relationshipId}"`;
  const edits = new TextEdits(await pkg.text(workbook));
  const escaped = escapeAttribute(name);
  edits.append(sheets, `<${prefixOf(sheets.name)}sheet name="${escaped}" sheetId="${sheetId}" ${id}/>`);
  await pkg.setText(workbook, edits.apply());
}

/** Takes sheets out of the list, with their defined names; the tabs and names of the others are counted anew. */
export async function removeSheetEntries(
  pkg: OpcPackage,
  workbook: string,
  removed: readonly SheetEntry[],
): Promise<void> {
  const tree = await pkg.tree(workbook);
  const sheets = await listSheets(pkg, workbook, tree);
  const isRemoved = sheets.map((s) => removed.some((r) => r.relationshipId === s.relationshipId));
  const kept = sheets.filter((_, i) => !isRemoved[i]);
  const newIndex = (old: number) => old - isRemoved.slice(0, old).filter(Boolean).length;
  const edits = new TextEdits(await pkg.text(workbook));
  const setAttribute = (element: XmlElement, name: string, value: string) => {
    const tag = edits.source.slice(element.start, element.openEnd);
    edits.replace(element.start, element.openEnd, withAttribute(tag, name, value));
  };
  sheets.forEach((sheet, i) => {
    if (isRemoved[i]) edits.replace(sheet.element.start, sheet.element.end, '');
  });

  const names = childOf(tree, 'definedNames');
  const isLocalToRemoved = (name: XmlElement) => isRemoved[Number(attr(name, 'localSheetId') ?? -1)] === true;
  if (names && names.children.length > 0 && names.children.every(isLocalToRemoved)) {
    edits.replace(names.start, names.end, '');
  } else {
    for (const name of childrenOf(names, 'definedName')) {
      const local = attr(name, 'localSheetId');
      if (isLocalToRemoved(name)) {
        edits.replace(name.start, name.end, '');
        continue;
      }
      if (local !== undefined) setAttribute(name, 'localSheetId', String(newIndex(Number(local))));
      const text = edits.source.slice(name.openEnd, name.closeStart);
      const broken = removed.reduce((t, { name: gone }) => withoutSheet(t, gone), unescapeXml(text));
      if (broken !== unescapeXml(text)) edits.replace(name.openEnd, name.closeStart, escapeXml(broken));
    }
  }

  for (const view of childrenOf(childOf(tree, 'bookViews'), 'workbookView')) {
    let tag = edits.source.slice(view.start, view.openEnd);
    for (const which of ['firstSheet', 'activeTab']) {
      const old = attr(view, which);
      const moved = Math.min(newIndex(Number(old ?? 0)), kept.length - 1);
      const visible = kept[moved]?.isHidden ? kept.findIndex((s) => !s.isHidden) : moved;
      if (visible !== Number(old ?? 0)) tag = withAttribute(tag, which, String(visible));
    }
    edits.replace(view.start, view.openEnd, tag);
  }
  await pkg.setText(workbook, edits.apply());
}

/** References to a sheet that is gone become what a spreadsheet program makes of them. */
function withoutSheet(formula: string, sheet: string): string {
  const literal = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const quoted = `'${literal(sheet.replaceAll("'", "''"))}'!`;
  const plain = `(?<![\\p{L}\\p{N}_.'\\]])${literal(sheet)}!`;
  return formula.replace(new RegExp(`${quoted}|${plain}`, 'giu'), '#REF!');
}

/**
 * Gives each of the program's own sheets the rows that are repeated on each printed page (none for 0), and takes
 * away what else a spreadsheet program has noted for the sheet as it was: print areas, filters.
 */
export async function setPrintTitles(
  pkg: OpcPackage,
  workbook: string,
  titleRows: ReadonlyMap<string, number>,
): Promise<void> {
  const tree = await pkg.tree(workbook);
  const sheets = await listSheets(pkg, workbook, tree);
  const names = childOf(tree, 'definedNames');
  const p = tree.prefix;
  const edits = new TextEdits(await pkg.text(workbook));
  let added = '';
  for (const [sheetName, rows] of titleRows) {
    const index = sheets.findIndex((s) => s.name.toLowerCase() === sheetName.toLowerCase());
    const area = `'${sheets[index]!.name.replaceAll("'", "''")}'!$1:$${rows}`;
    let isThere = rows === 0;
    for (const name of childrenOf(names, 'definedName')) {
      if (attr(name, 'localSheetId') !== String(index) || !attr(name, 'name')?.startsWith('_xlnm.')) continue;
      const isTitles = attr(name, 'name') === '_xlnm.Print_Titles' && !isThere;
      if (isTitles) {
        isThere = true;
        const old = edits.source.slice(name.openEnd, name.closeStart);
        if (unescapeXml(old) !== area) edits.replace(name.openEnd, name.closeStart, escapeXml(area));
      } else edits.replace(name.start, name.end, '');
    }
    if (!isThere) {
      added += `<${p}definedName name="_xlnm.Print_Titles" localSheetId="${index}">${escapeXml(area)}</${p}definedName>`;
    }
  }
  if (added !== '') {
    if (names) edits.append(names, added);
    else {
      const before = ['sheets', 'functionGroups', 'externalReferences'];
      const previous = tree.children.filter((c) => before.includes(c.local)).at(-1)!;
      edits.insert(previous.end, `<${p}definedNames>${added}</${p}definedNames>`);
    }
  }
  await pkg.setText(workbook, edits.apply());
}
