/**
 * Writes into a copy of a user's workbook. Only the parts that the edit concerns change; every other part stays
 * byte for byte what it was, in its place in the zip. The same edit of the result changes nothing more.
 */
import { UserError } from '../../engine/user-error.js';
import type { OutputFormat, SheetEdit, WorkbookEdit } from '../../engine/workbook-model.js';
import { dropStaleCalcChain } from './calc-chain.js';
import { extendList } from './list-tables.js';
import { namespacesOf } from './namespaces.js';
import { obstacleTo, type SheetSurvey, surveySheet } from './obstacles.js';
import type { OpcPackage } from './opc-package.js';
import { reachableParts, removeOrphans } from './orphans.js';
import { addOutputStyles, type OutputStyles } from './output-styles.js';
import { packTexts } from './packed-part.js';
import { placeSheets, removeSheets, type SheetRefusal } from './place-sheets.js';
import { sheetPieces } from './sheet-pieces.js';
import { SheetSplicer, spliceSheet } from './splice-sheet.js';
import { findSheetEntry } from './workbook-edit.js';
import { openWorkbook, type WorkbookParts } from './workbook-package.js';

export interface EditedWorkbook {
  /** The new package, one piece behind the other. */
  readonly pieces: readonly Uint8Array[];
  /** The same in one, made when it is asked for. */
  readonly bytes: Uint8Array;
  /** Sheets that could not be written and were left as they were; the reason is a sentence for the user. */
  readonly refused: readonly SheetRefusal[];
}

interface PlannedEdit {
  readonly edit: SheetEdit;
  readonly part: string;
  readonly sheetId: number;
  readonly survey: SheetSurvey;
}

/**
 * Makes an edit of a workbook; `file` is what messages call it. Of the XML only what the edit touches is checked: read
 * the workbook first.
 *
 * @throws {UserError} where the bytes are no readable workbook
 * @throws {RangeError} where a cell is to hold a number that is not finite
 * @throws {Error} where a stored value is meant for a cell that has no formula
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
  const { planned, refused } = await planEdits(parts, edit.edits);

  const styles = await addOutputStyles(parts, formatsOf(edit, planned), namespaces);
  const lost = new Map<number, ReadonlySet<string>>();
  for (const [at, plan] of planned.entries()) {
    const isAgain = planned.slice(0, at).some(({ part }) => part === plan.part);
    const survey = isAgain ? await surveySheet(pkg, plan.part) : plan.survey;
    const lostFormulas = await splicePart(pkg, { ...plan, survey }, styles);
    if (plan.edit.list) await extendList(pkg, plan.part, plan.edit.list);
    lost.set(plan.sheetId, new Set([...(lost.get(plan.sheetId) ?? []), ...lostFormulas]));
  }
  const placed = await placeSheets(parts, edit.sheets, styles.styleOf, namespaces);
  await styles.save();
  const isMade = (name: string) => edit.sheets.some((s) => s.name.toLowerCase() === name.toLowerCase());
  const removal = await removeSheets(
    parts,
    edit.remove.filter((name) => !isMade(name)),
  );

  await dropStaleCalcChain(pkg, workbook, (sheetId, address) => {
    if (removal.removed.some((s) => s.sheetId === sheetId)) return true;
    const formulas = placed.formulas.get(sheetId);
    if (formulas) return !formulas.has(address);
    return lost.get(sheetId)?.has(address) ?? false;
  });
  await removeOrphans(pkg, partsBefore);
  const pieces = pkg.toPieces();
  await refuseUnreadable(pieces, file);
  return {
    pieces,
    get bytes() {
      return Buffer.concat(pieces);
    },
    refused: [...refused, ...placed.refused, ...removal.refused],
  };
}

/**
 * A book at the edge of what is read can be beyond it with the results in it: then nothing is written, rather than a book
 * that the next run refuses.
 */
async function refuseUnreadable(pieces: readonly Uint8Array[], file: string): Promise<void> {
  try {
    await openWorkbook(Buffer.concat(pieces), '');
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    const reason = error.message.replace(/^: /, '');
    throw new UserError(
      `${file}: with the results in it, the book could not be read again, and nothing was written: ${reason}`,
    );
  }
}

/** Makes one edit; a part in which nothing changes stays as it is. */
async function splicePart(
  pkg: OpcPackage,
  { edit, part, survey }: PlannedEdit,
  { styleOf, hasFill }: OutputStyles,
): Promise<ReadonlySet<string>> {
  try {
    if ((await pkg.encodingOf(part)) !== 'utf-8') {
      const spliced = spliceSheet(await pkg.text(part), edit, styleOf, hasFill);
      await pkg.setText(part, spliced.xml);
      return spliced.lostFormulas;
    }
    const splicer = new SheetSplicer(survey, edit, styleOf, hasFill);
    const packed = await packTexts(splicedTexts(splicer, pkg.pieces(part)));
    if (splicer.isChanged) pkg.setPacked(part, packed);
    return splicer.lostFormulas;
  } catch (error) {
    if (error instanceof SyntaxError) throw pkg.damaged(part, error.message);
    throw error;
  }
}

async function* splicedTexts(splicer: SheetSplicer, texts: AsyncIterable<string>): AsyncGenerator<string> {
  yield splicer.head;
  for await (const { kind, text } of sheetPieces(texts)) if (kind === 'rows') yield splicer.rows(text);
  yield splicer.lastRows();
  yield splicer.tail;
}

/** The edits that can be made, and why the others cannot. */
async function planEdits(
  { pkg, sheets }: WorkbookParts,
  edits: readonly SheetEdit[],
): Promise<{ planned: PlannedEdit[]; refused: SheetRefusal[] }> {
  const planned: PlannedEdit[] = [];
  const refused: SheetRefusal[] = [];
  for (const edit of edits) {
    const sheet = findSheetEntry(sheets, edit.sheet);
    const part = sheet?.isWorksheet ? sheet.part : undefined;
    if (sheet === undefined || part === undefined) {
      refused.push({ sheet: edit.sheet, reason: 'the workbook has no worksheet of this name.' });
      continue;
    }
    const survey = await surveySheet(pkg, part);
    const reason = await obstacleTo(pkg, part, edit, survey);
    if (reason !== undefined) refused.push({ sheet: edit.sheet, reason });
    else planned.push({ edit, part, sheetId: sheet.sheetId, survey });
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
  for (const { rows, formats: stated } of edit.sheets) {
    if (stated) for (const format of stated) formats.add(format);
    else for (const row of rows) for (const cell of row) if (cell) formats.add(cell.format);
  }
  return formats;
}
