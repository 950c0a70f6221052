/** Checks a book of the corpus as `oilgap check` does, and compares what is left of the user's with what was there. */
import { runBook } from '../../src/engine/run-book.js';
import { writtenWorkbook } from '../../src/engine/sheets/written-workbook.js';
import { type Cell, cellAddress, type WorkbookModel } from '../../src/engine/workbook-model.js';
import { relationshipsPart } from '../../src/io/xlsx/part-names.js';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { openWorkbook, partOfKind } from '../../src/io/xlsx/workbook-package.js';
import { editWorkbookPackage } from '../../src/io/xlsx/write-package.js';
import { attr, childOf, childrenOf, readTree } from '../../src/io/xlsx/xml-tree.js';
import { unzip } from '../io/xlsx/hand-made.js';

/** What a written sheet may have changed in, besides its cells. */
const CHANGED_ELEMENTS = ['sheetData', 'cols', 'dimension'];

export interface Examined {
  readonly before: Uint8Array;
  readonly after: Uint8Array;
  /** How many parts the user's package had. */
  readonly parts: number;
  /** Parts that are byte for byte as they were. */
  readonly identical: number;
  /** The user's parts that were written into. */
  readonly written: readonly string[];
  readonly refused: readonly string[];
  /** The user's cells that were compared in written sheets. */
  readonly cells: number;
  /** What was lost, in words; empty where nothing was. */
  readonly losses: readonly string[];
}

/** @param seconds that matching may take */
export async function examine(bytes: Uint8Array, name = 'book.xlsx', seconds = 5): Promise<Examined> {
  const model = await readWorkbookPackage(bytes, name);
  const edit = writtenWorkbook(await runBook(model, { seconds }), { valuesOnly: false });
  const { bytes: after, refused } = await editWorkbookPackage(bytes, edit, name);
  const losses: string[] = [];
  const [old, now] = [await unzip(bytes), await unzip(after)];
  const sheetParts = await writtenParts(
    bytes,
    edit.edits.map(({ sheet }) => sheet),
  );
  for (const { sheet } of refused) sheetParts.delete(sheet);
  const { pkg, workbook } = await openWorkbook(bytes, name);
  const written = await openWorkbook(after, 'after.xlsx');
  // The lists of parts, sheets and formats.
  const lists = [
    '[Content_Types].xml',
    workbook,
    pkg.nameOf(relationshipsPart(workbook)),
    await partOfKind(pkg, workbook, 'styles'),
  ];
  const mayChange = new Set([...lists, ...sheetParts.values()]);
  const changed: string[] = [];
  for (const [stored, content] of old) {
    const part = pkg.nameOf(stored);
    if (now.get(stored)?.equals(content)) continue;
    if (mayChange.has(part)) changed.push(part);
    else losses.push(`the part ${part} is another`);
  }
  losses.push(...lostCells(model, await readWorkbookPackage(after, 'after.xlsx')));
  for (const part of sheetParts.values()) {
    losses.push(...lostElements(part, await pkg.text(part), await written.pkg.text(part)));
  }
  losses.push(...(await lostFormats(bytes, after, [...sheetParts.values()])));
  losses.push(...lostNames(await pkg.text(workbook), await written.pkg.text(workbook)));
  return {
    before: bytes,
    after,
    parts: old.size,
    identical: old.size - changed.length - losses.filter((loss) => loss.startsWith('the part')).length,
    written: changed,
    refused: refused.map(({ sheet }) => sheet),
    cells: model.sheets.flatMap(({ rows }) => rows.flat()).filter(Boolean).length,
    losses,
  };
}

async function writtenParts(bytes: Uint8Array, sheets: readonly string[]): Promise<Map<string, string>> {
  const { sheets: entries } = await openWorkbook(bytes, 'book.xlsx');
  const found = entries.filter(({ name, part }) => part !== undefined && sheets.includes(name));
  return new Map(found.map(({ name, part }) => [name, part!]));
}

function lostCells(before: WorkbookModel, after: WorkbookModel): string[] {
  const losses: string[] = [];
  for (const { name, rows } of before.sheets) {
    const others = after.sheets.find((sheet) => sheet.name === name)?.rows ?? [];
    rows.forEach((cells, row) => {
      cells.forEach((cell, column) => {
        if (cell && !isSame(cell, others[row]?.[column])) {
          losses.push(`${name}!${cellAddress(row, column)} was ${JSON.stringify(cell).slice(0, 80)}`);
        }
      });
    });
  }
  return losses;
}

function isSame(cell: Cell, other: Cell | undefined): boolean {
  return JSON.stringify(cell) === JSON.stringify(other);
}

/** Everything around the cells stands in the sheet as it stood, in its order. */
function lostElements(part: string, before: string, after: string): string[] {
  const elements = (xml: string) =>
    readTree(xml, new Set(['sheetData']))
      .children.filter(({ local }) => !CHANGED_ELEMENTS.includes(local))
      .map(({ start, end }) => xml.slice(start, end));
  const [old, now] = [elements(before), elements(after)];
  return old.join('\n') === now.join('\n')
    ? []
    : [`${part}: ${old.find((text) => !now.includes(text)) ?? 'order'}`];
}

/** Each cell of the user's has the format that it had: its entry in the list of formats, letter for letter. */
async function lostFormats(
  before: Uint8Array,
  after: Uint8Array,
  parts: readonly string[],
): Promise<string[]> {
  const [old, now] = [await formatsOf(before, parts), await formatsOf(after, parts)];
  // A book without formats gets the default one.
  if (!old || !now) return [];
  return [...old].flatMap(([cell, format]) => (now.get(cell) === format ? [] : [`the format of ${cell}`]));
}

async function formatsOf(
  bytes: Uint8Array,
  parts: readonly string[],
): Promise<Map<string, string> | undefined> {
  const { pkg, workbook } = await openWorkbook(bytes, 'book.xlsx');
  const styles = await partOfKind(pkg, workbook, 'styles');
  if (styles === undefined) return undefined;
  const xml = await pkg.text(styles);
  const formats = childOf(readTree(xml), 'cellXfs')?.children ?? [];
  const found = new Map<string, string>();
  for (const part of parts) {
    const sheet = await pkg.text(part);
    for (const row of childrenOf(childOf(readTree(sheet), 'sheetData'), 'row')) {
      found.set(`${part} row ${attr(row, 'r')}`, ['ht', 'hidden', 's'].map((name) => attr(row, name)).join());
      for (const cell of row.children) {
        const format = formats[Number(attr(cell, 's') ?? 0)];
        found.set(`${part} ${attr(cell, 'r')}`, format ? xml.slice(format.start, format.end) : '');
      }
    }
  }
  return found;
}

function lostNames(before: string, after: string): string[] {
  const around = (xml: string) => {
    const { children } = readTree(xml);
    const names = childrenOf(
      children.find(({ local }) => local === 'definedNames'),
      'definedName',
    );
    const rest = children.filter(({ local }) => local !== 'definedNames' && local !== 'sheets');
    return [...names, ...rest].map(({ start, end }) => xml.slice(start, end));
  };
  const now = around(after);
  return around(before).flatMap((text) =>
    now.includes(text) ? [] : [`the workbook's ${text.slice(0, 80)}`],
  );
}
