/** What stands in the way of writing into a user's sheet: then the sheet is left as it is. */
import {
  type CellBounds,
  type ClearedCells,
  cellAddress,
  columnLetters,
  rangeText,
  type SheetEdit,
} from '../../engine/workbook-model.js';
import { boundsOf, contains, overlap, parseRange, type Rect } from './cell-reference.js';
import { isSameRange, listsOf } from './list-tables.js';
import type { OpcPackage } from './opc-package.js';
import { sheetPieces } from './sheet-pieces.js';
import type { Skeleton } from './splice-sheet.js';
import { attribute } from './xml-scan.js';
import { attr, childOf, childrenOf, readTree } from './xml-tree.js';

/** The open tags of formulas that belong to a whole range. */
const RANGE_FORMULA = /<(?:[\w.-]+:)?f\s[^>]*\bt\s*=\s*["'](?:array|dataTable)["'][^>]*>/g;

/** What of a worksheet can stand in the way. */
export interface SheetSurvey extends Skeleton {
  /** Open tags of formulas that belong to more than one cell. */
  readonly rangeFormulas: readonly string[];
}

/** Goes through a worksheet once. Throws a UserError where it is none. */
export async function surveySheet(pkg: OpcPackage, part: string): Promise<SheetSurvey> {
  let [head, tail] = ['', ''];
  const rangeFormulas: string[] = [];
  try {
    for await (const { kind, text } of sheetPieces(pkg.pieces(part))) {
      if (kind === 'head') head = text;
      else if (kind === 'tail') tail = text;
      else for (const [tag] of text.matchAll(RANGE_FORMULA)) rangeFormulas.push(tag);
    }
  } catch (error) {
    if (error instanceof SyntaxError) throw pkg.damaged(part, error.message);
    throw error;
  }
  return { head, tail, rangeFormulas };
}

/**
 * Why an edit cannot be made, as a sentence that ends in what the user can do; undefined where it can.
 * @param known the sheet's survey, where it has been made
 */
export async function obstacleTo(
  pkg: OpcPackage,
  part: string,
  edit: SheetEdit,
  known?: SheetSurvey,
): Promise<string | undefined> {
  const survey = known ?? (await surveySheet(pkg, part));
  const worksheet = readTree(survey.head + survey.tail);
  const written = boundsOf(edit.cells);
  for (const merge of childrenOf(childOf(worksheet, 'mergeCells'), 'mergeCell')) {
    const ref = attr(merge, 'ref') ?? '';
    const where = whereOverlapped(ref, edit, written);
    if (where) return `the merged cells ${ref} are in the way of ${where}. Unmerge them and run again.`;
  }
  for (const { bounds, ref } of await tableRanges(pkg, part)) {
    // The table whose columns the written ones become is no obstacle.
    if (edit.list && isSameRange(edit.list.bounds, bounds)) continue;
    const where = whereOverlapped(ref, edit, written);
    if (where) {
      return `the table over ${ref} is in the way of ${where}. Make it narrower or turn it into a plain range, and run again.`;
    }
  }
  for (const tag of survey.rangeFormulas) {
    const ref = attribute(tag, 'ref') ?? '';
    // An array formula of one cell can be replaced like any other.
    if (!ref.includes(':')) continue;
    const where = whereOverlapped(ref, edit, written);
    if (where) return `the array formula over ${ref} is in the way of ${where}. Remove it and run again.`;
  }
  return undefined;
}

async function tableRanges(
  pkg: OpcPackage,
  part: string,
): Promise<{ readonly bounds: CellBounds; readonly ref: string }[]> {
  return (await listsOf(pkg, part)).map(({ bounds }) => ({ bounds, ref: rangeText(bounds) }));
}

/** The written cell or column that a range covers; `written` bounds the cells of the edit. */
function whereOverlapped(ref: string, edit: SheetEdit, written: Rect | undefined): string | undefined {
  const rect: Rect | undefined = parseRange(ref);
  if (!rect) return undefined;
  const isNear = written !== undefined && overlap(written, rect);
  const cell = isNear && [...edit.cells].find(({ row, column }) => contains(rect, row, column));
  if (cell) return `cell ${cellAddress(cell.row, cell.column)}, which is to be written`;
  const { clear } = edit;
  if (!clear || rect.right < clear.first || rect.left > clear.last) return undefined;
  const column = clearedColumn(clear, rect);
  if (column === undefined || clear.rows?.hasBetween(rect.top, rect.bottom) === false) return undefined;
  return `column ${columnLetters(column)}, which is to be made anew`;
}

function clearedColumn({ first, last, columns }: ClearedCells, { left, right }: Rect): number | undefined {
  for (let column = Math.max(first, left); column <= Math.min(last, right); column++) {
    if (columns?.has(column) ?? true) return column;
  }
  return undefined;
}
