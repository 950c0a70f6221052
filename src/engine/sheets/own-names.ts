/** The names of the program's own sheets, and what becomes of them where the user has a sheet of that name. */
import { isMadeByProgram } from '../book/own-columns.js';
import { OWN_TABLES } from '../columns/own-tables.js';
import { SUMMARY } from '../columns/summary-columns.js';
import { FITS } from '../input-sheets/fits.js';
import type { WorkbookModel } from '../workbook-model.js';

const OWN_NAMES = [SUMMARY.name, ...OWN_TABLES.map(({ table }) => table.name), FITS.name];

/** Whether a sheet is called as one of the program's own, made beside one of the user's or not. */
export function isOwnSheet(name: string): boolean {
  return OWN_NAMES.some((own) => name.toLowerCase().replace(' (oilgap)', '') === own.toLowerCase());
}

/** A sheet of that name that is not the program's stays the user's. */
export function freeName(name: string, { sheets }: WorkbookModel): string {
  const taken = sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  return taken && !isMadeByProgram(taken) ? `${name} (oilgap)` : name;
}
