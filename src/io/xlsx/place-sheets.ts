/** Puts the program's own sheets into a user's package, and takes those of an earlier run out. */
import type { OutputSheet } from '../../engine/workbook-model.js';
import type { Namespaces } from './namespaces.js';
import type { OpcPackage } from './opc-package.js';
import { type PackedPart, packTexts } from './packed-part.js';
import { relationshipsPart } from './part-names.js';
import { addSheetEntry, findSheetEntry, removeSheetEntries, setPrintTitles } from './workbook-edit.js';
import { listSheets, partOfKind, type SheetEntry, type WorkbookParts } from './workbook-package.js';
import { type WorksheetContext, worksheetTexts } from './worksheet-xml.js';

const WORKSHEET_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml';

export interface SheetRefusal {
  readonly sheet: string;
  readonly reason: string;
}

export interface PlacedSheets {
  readonly refused: SheetRefusal[];
  /** For each sheet that was replaced, by its id: the addresses of its formulas. */
  readonly formulas: Map<number, ReadonlySet<string>>;
}

/** Replaces sheets of the same name where they stand; the others go behind the user's, in their order. */
export async function placeSheets(
  { pkg, workbook, sheets: userSheets }: WorkbookParts,
  sheets: readonly OutputSheet[],
  styleOf: WorksheetContext['styleOf'],
  namespaces: Namespaces,
): Promise<PlacedSheets> {
  const refused: SheetRefusal[] = [];
  const formulas = new Map<number, ReadonlySet<string>>();
  const titleRows = new Map<string, number>();
  // Only the calculation chain asks where formulas stand.
  const hasChain = (await partOfKind(pkg, workbook, 'calcChain')) !== undefined;
  for (const sheet of sheets) {
    const old = findSheetEntry(userSheets, sheet.name);
    if (old && !(old.isWorksheet && old.part !== undefined)) {
      refused.push({
        sheet: sheet.name,
        reason: `a sheet of this name exists and is no worksheet. Rename it and run again.`,
      });
      continue;
    }
    const own = new Set<string>();
    const onFormula = (address: string) => hasChain && own.add(address);
    const packed = await packTexts(worksheetTexts(sheet, { styleOf, namespaces, onFormula }));
    if (old) {
      pkg.setPacked(old.part!, packed);
      await pkg.remove(relationshipsPart(old.part!));
      formulas.set(old.sheetId, own);
    } else {
      await addSheet(pkg, workbook, sheet.name, packed, namespaces);
    }
    titleRows.set(sheet.name, sheet.headerRows);
  }
  await setPrintTitles(pkg, workbook, titleRows);
  return { refused, formulas };
}

async function addSheet(
  pkg: OpcPackage,
  workbook: string,
  name: string,
  packed: PackedPart,
  namespaces: Namespaces,
): Promise<void> {
  const folder = workbook.slice(0, workbook.lastIndexOf('/') + 1);
  let number = 1;
  while (pkg.has(`${folder}worksheets/sheet${number}.xml`)) number++;
  const target = `worksheets/sheet${number}.xml`;
  pkg.setPacked(folder + target, packed);
  await pkg.addOverride(folder + target, WORKSHEET_TYPE);
  const id = await pkg.addRelationship(workbook, `${namespaces.relationships}/worksheet`, target);
  await addSheetEntry(pkg, workbook, name, id, namespaces.relationships);
}

/** Removes worksheets by name; names that the book does not have are passed over. */
export async function removeSheets(
  { pkg, workbook, sheets: userSheets }: WorkbookParts,
  names: readonly string[],
): Promise<{ refused: SheetRefusal[]; removed: SheetEntry[] }> {
  const found = [...new Set(names.map((name) => findSheetEntry(userSheets, name)))].filter(
    (s) => s !== undefined,
  );
  if (found.length === 0) return { refused: [], removed: [] };
  const refuse = (sheets: readonly SheetEntry[], reason: string) =>
    sheets.map((s) => ({ sheet: s.name, reason }));
  const removed = found.filter((s) => s.isWorksheet);
  const refused = refuse(
    found.filter((s) => !s.isWorksheet),
    'it is no worksheet, so it is not removed.',
  );
  const now = await listSheets(pkg, workbook, await pkg.tree(workbook));
  const isGone = (sheet: SheetEntry) => removed.some((r) => r.relationshipId === sheet.relationshipId);
  if (!now.some((s) => !s.isHidden && !isGone(s))) {
    const reason = 'it is not removed, because a workbook needs a sheet that is not hidden.';
    return { refused: [...refused, ...refuse(removed, reason)], removed: [] };
  }
  await removeSheetEntries(pkg, workbook, removed);
  for (const sheet of removed) await pkg.removeRelationship(workbook, sheet.relationshipId);
  return { refused, removed };
}
