/** Checks a book of the corpus as `oilgap check` does, and compares what is left of the user's with what was there. */

import { madeColumnsOf } from '../../src/engine/book/made-cells.js';
import { isOwnColumn } from '../../src/engine/book/own-columns.js';
import { ownHeaders } from '../../src/engine/columns/result-headers.js';
import { runBook } from '../../src/engine/run-book.js';
import { writtenWorkbook } from '../../src/engine/sheets/written-workbook.js';
import {
  type Cell,
  cellAddress,
  type WorkbookEdit,
  type WorkbookModel,
} from '../../src/engine/workbook-model.js';
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
  /** Cells that an earlier run wrote, which are made anew: `Journals!G2`. */
  readonly made: ReadonlySet<string>;
  /** The user's sheets whose results stand on a sheet of the program's own. */
  readonly apart: readonly string[];
  /** What was said of the book. */
  readonly notices: readonly string[];
  /** What was lost, in words; empty where nothing was. */
  readonly losses: readonly string[];
}

/** @param seconds that matching may take */
export async function examine(bytes: Uint8Array, name = 'book.xlsx', seconds = 5): Promise<Examined> {
  const model = await readWorkbookPackage(bytes, name);
  const { after, refused, edit, book } = await checked(bytes, name, seconds);
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
  const mayChange = new Set([...lists, ...sheetParts.values(), ...(await tableParts(bytes, edit))]);
  const changed: string[] = [];
  for (const [stored, content] of old) {
    const part = pkg.nameOf(stored);
    if (now.get(stored)?.equals(content)) continue;
    if (mayChange.has(part)) changed.push(part);
    else losses.push(`the part ${part} is another`);
  }
  const made = madeCellsOf(model);
  losses.push(...lostCells(model, made, await readWorkbookPackage(after, 'after.xlsx')));
  for (const part of sheetParts.values()) {
    losses.push(...lostElements(part, await pkg.text(part), await written.pkg.text(part)));
  }
  losses.push(...(await lostFormats(bytes, after, sheetParts, made)));
  losses.push(...(await changedAgain(after, name, seconds)));
  losses.push(...lostNames(await pkg.text(workbook), await written.pkg.text(workbook)));
  return {
    before: bytes,
    after,
    parts: old.size,
    identical: old.size - changed.length - losses.filter((loss) => loss.startsWith('the part')).length,
    written: changed,
    refused: refused.map(({ sheet }) => sheet),
    cells: model.sheets.flatMap(({ rows }) => rows.flat()).filter(Boolean).length,
    made,
    apart: [...book.places].flatMap(([sheet, { columns }]) => (columns ? [] : [sheet])),
    notices: book.notices,
    losses,
  };
}

async function writtenParts(bytes: Uint8Array, sheets: readonly string[]): Promise<Map<string, string>> {
  const { sheets: entries } = await openWorkbook(bytes, 'book.xlsx');
  const found = entries.filter(({ name, part }) => part !== undefined && sheets.includes(name));
  return new Map(found.map(({ name, part }) => [name, part!]));
}

async function checked(bytes: Uint8Array, name: string, seconds: number) {
  const assessment = await runBook(await readWorkbookPackage(bytes, name), { seconds });
  const edit = writtenWorkbook(assessment, { valuesOnly: false });
  const { bytes: after, refused } = await editWorkbookPackage(bytes, edit, name);
  return { after, refused, edit, book: assessment.book };
}

/** Parts that are others where the written book is checked once more. */
async function changedAgain(bytes: Uint8Array, name: string, seconds: number): Promise<string[]> {
  const [old, now] = [await unzip(bytes), await unzip((await checked(bytes, name, seconds)).after)];
  return [...new Set([...old.keys(), ...now.keys()])].flatMap((part) =>
    old.get(part)?.equals(now.get(part) ?? Buffer.of()) ? [] : [`written again, the part ${part} is another`],
  );
}

/** The parts of tables that are made to reach over the results. */
async function tableParts(bytes: Uint8Array, { edits }: WorkbookEdit): Promise<string[]> {
  const extended = edits.filter(({ list }) => list).map(({ sheet }) => sheet);
  const { pkg } = await openWorkbook(bytes, 'book.xlsx');
  const parts = await writtenParts(bytes, extended);
  const relationships = await Promise.all([...parts.values()].map((part) => pkg.relationships(part)));
  return relationships.flat().flatMap(({ kind, part }) => (kind === 'table' && part ? [part] : []));
}

function madeCellsOf({ sheets }: WorkbookModel): ReadonlySet<string> {
  const found = new Set<string>();
  for (const sheet of sheets) {
    const made = madeColumnsOf(sheet, ownHeaders);
    sheet.rows.forEach((cells, row) => {
      cells.forEach((_, column) => {
        if (made && isOwnColumn(made, column) && made.isMadeRow(cells))
          found.add(`${sheet.name}!${cellAddress(row, column)}`);
      });
    });
  }
  return found;
}

function lostCells(before: WorkbookModel, made: ReadonlySet<string>, after: WorkbookModel): string[] {
  const losses: string[] = [];
  for (const { name, rows } of before.sheets) {
    const others = after.sheets.find((sheet) => sheet.name === name)?.rows ?? [];
    rows.forEach((cells, row) => {
      cells.forEach((cell, column) => {
        if (made.has(`${name}!${cellAddress(row, column)}`)) return;
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
  parts: ReadonlyMap<string, string>,
  made: ReadonlySet<string>,
): Promise<string[]> {
  const [old, now] = [await formatsOf(before, parts), await formatsOf(after, parts)];
  // A book without formats gets the default one.
  if (!old || !now) return [];
  // The header of a column that was made stands in the first row.
  const columns = new Set([...made].map((cell) => cell.replace(/\d+$/, '1')));
  return [...old].flatMap(([cell, format]) =>
    now.get(cell) === format || made.has(cell) || columns.has(cell) ? [] : [`the format of ${cell}`],
  );
}

async function formatsOf(
  bytes: Uint8Array,
  parts: ReadonlyMap<string, string>,
): Promise<Map<string, string> | undefined> {
  const { pkg, workbook } = await openWorkbook(bytes, 'book.xlsx');
  const styles = await partOfKind(pkg, workbook, 'styles');
  if (styles === undefined) return undefined;
  const xml = await pkg.text(styles);
  const formats = childOf(readTree(xml), 'cellXfs')?.children ?? [];
  const found = new Map<string, string>();
  for (const [name, part] of parts) {
    const sheet = await pkg.text(part);
    for (const row of childrenOf(childOf(readTree(sheet), 'sheetData'), 'row')) {
      found.set(`${name} row ${attr(row, 'r')}`, ['ht', 'hidden', 's'].map((name) => attr(row, name)).join());
      for (const cell of row.children) {
        const format = formats[Number(attr(cell, 's') ?? 0)];
        found.set(`${name}!${attr(cell, 'r')}`, format ? xml.slice(format.start, format.end) : '');
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
