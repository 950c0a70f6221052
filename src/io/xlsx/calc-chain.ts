/**
 * The calculation chain lists the cells that have formulas (ISO 29500-1, 18.6). A spreadsheet program takes a
 * listed cell without formula for damage; it makes the chain anew where there is none.
 */
import type { OpcPackage } from './opc-package.js';
import { attr } from './xml-tree.js';

/** Says for a sheet, by its id, and an address whether the formula that stood there is gone. */
export type IsFormulaGone = (sheetId: number, address: string) => boolean;

/** Drops the chain where it lists a cell whose formula is gone; else leaves it as it is. */
export async function dropStaleCalcChain(
  pkg: OpcPackage,
  workbook: string,
  isGone: IsFormulaGone,
): Promise<void> {
  const relationship = (await pkg.relationships(workbook)).find((r) => r.kind === 'calcChain');
  const part = relationship?.part;
  if (!relationship || part === undefined || !pkg.has(part)) return;
  let sheetId = 0;
  const isStale = (await pkg.tree(part)).children.some((cell) => {
    // A cell without the sheet's id is of the sheet of the one before.
    sheetId = Number(attr(cell, 'i') ?? sheetId);
    return isGone(sheetId, attr(cell, 'r') ?? '');
  });
  if (!isStale) return;
  await pkg.removeRelationship(workbook, relationship.id);
  await pkg.remove(part);
}
