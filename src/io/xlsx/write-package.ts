/**
 * Writes into a copy of a user's workbook. Only the parts that the edit concerns change; every other part stays
 * byte for byte what it was, in its place in the zip. The same edit of the result changes nothing more.
 */
import type { OutputFormat, SheetEdit, WorkbookEdit } from '../../engine/workbook-model.js';
import { dropStaleCalcChain } from './calc-chain.js';
import { type Namespaces, STRICT, TRANSITIONAL } from './graft-sheet.js';
import { graftSheets, type Refusal, removeSheets } from './graft-sheets.js';
import { obstacleTo } from './obstacles.js';
import type { OpcPackage } from './opc-package.js';
import { reachableParts, removeOrphans } from './orphans.js';
import { addOutputStyles, type OutputStyles } from './output-styles.js';
import { buildOutputWorkbook } from './output-workbook.js';
import { spliceSheet } from './splice-sheet.js';
import { findSheet } from './workbook-edit.js';
import { openWorkbook, type WorkbookParts } from './workbook-package.js';

export interface EditedWorkbook {
  readonly bytes: Uint8Array;
  /** Sheets that could not be written and were left as they were; the reason is a sentence for the user. */
  readonly refused: readonly Refusal[];
}

interface PlannedEdit {
  readonly edit: SheetEdit;
  readonly part: string;
  readonly sheetId: number;
}

/**
 * Makes an edit of a workbook; `file` is what messages call it. Of the XML only what the edit touches is checked: read
 * the workbook first.
 *
 * Throws a UserError where the bytes are no readable workbook, a RangeError where a cell is to hold a number that is
 * not finite, and an Error where a stored value is meant for a cell that has no formula.
 */
export async function editWorkbookPackage(
  bytes: Uint8Array,
  edit: WorkbookEdit,
  file = 'the workbook',
): Promise<EditedWorkbook> {
  const parts = await openWorkbook(bytes, file);
  const { pkg, workbook } = parts;
  const partsBefore = await reachableParts(pkg);
  const namespaces = await namespacesOf(parts);
  const output = await buildOutputWorkbook(edit.sheets);
  const { planned, refused } = await planEdits(parts, edit.edits);

  const styles = await addOutputStyles(parts, output, formatsOf(edit, planned), namespaces);
  const lost = new Map<number, ReadonlySet<string>>();
  for (const { edit: sheetEdit, part, sheetId } of planned) {
    const spliced = splicePart(pkg, part, await pkg.text(part), sheetEdit, styles);
    await pkg.setText(part, spliced.xml);
    lost.set(sheetId, new Set([...(lost.get(sheetId) ?? []), ...spliced.lostFormulas]));
  }
  const grafted = await graftSheets(parts, edit.sheets, output, styles, namespaces);
  const isMade = (name: string) => edit.sheets.some((s) => s.name.toLowerCase() === name.toLowerCase());
  const removal = await removeSheets(
    parts,
    edit.remove.filter((name) => !isMade(name)),
  );

  await dropStaleCalcChain(pkg, workbook, (sheetId, address) => {
    if (removal.removed.some((s) => s.sheetId === sheetId)) return true;
    const formulas = grafted.formulas.get(sheetId);
    if (formulas) return !formulas.has(address);
    return lost.get(sheetId)?.has(address) ?? false;
  });
  await removeOrphans(pkg, partsBefore);
  return { bytes: await pkg.toBytes(), refused: [...refused, ...grafted.refused, ...removal.refused] };
}

function splicePart(pkg: OpcPackage, part: string, xml: string, edit: SheetEdit, styles: OutputStyles) {
  try {
    return spliceSheet(xml, edit, (cell) => styles.ofFormat(cell.format));
  } catch (error) {
    if (error instanceof SyntaxError) throw pkg.damaged(part, error.message);
    throw error;
  }
}

/** The edits that can be made, and why the others cannot. */
async function planEdits(
  { pkg, sheets }: WorkbookParts,
  edits: readonly SheetEdit[],
): Promise<{ planned: PlannedEdit[]; refused: Refusal[] }> {
  const planned: PlannedEdit[] = [];
  const refused: Refusal[] = [];
  for (const edit of edits) {
    const sheet = findSheet(sheets, edit.sheet);
    const part = sheet?.isWorksheet ? sheet.part : undefined;
    const reason =
      part === undefined ? 'the workbook has no worksheet of this name.' : await obstacleTo(pkg, part, edit);
    if (reason !== undefined) refused.push({ sheet: edit.sheet, reason });
    else planned.push({ edit, part: part!, sheetId: sheet!.sheetId });
  }
  return { planned, refused };
}

function formatsOf(edit: WorkbookEdit, planned: readonly PlannedEdit[]): Set<OutputFormat> {
  const formats = new Set<OutputFormat>();
  for (const {
    edit: { cells },
  } of planned) {
    if ('formats' in cells) for (const format of cells.formats) formats.add(format);
    else for (const { cell } of cells) formats.add(cell.format);
  }
  for (const { rows } of edit.sheets)
    for (const row of rows) for (const c of row) if (c) formats.add(c.format);
  return formats;
}

/** Strict packages (ISO 29500-1) and transitional ones (29500-4) name the same elements in other namespaces. */
async function namespacesOf({ pkg, workbook }: WorkbookParts): Promise<Namespaces> {
  const root = await pkg.tree(workbook);
  return root.attributes.some((a) => a.value === STRICT.main) ? STRICT : TRANSITIONAL;
}
