/** The names of the program's own sheets, and what becomes of them where the user has a sheet of that name. */
import { apartName } from '../book/placement-words.js';
import { OWN_TABLES } from '../columns/own-tables.js';
import { SUMMARY } from '../columns/summary-columns.js';
import { FITS } from '../input-sheets/fits.js';
import { inputSheets } from '../input-sheets/index.js';

const OWN_NAMES = [SUMMARY.name, ...OWN_TABLES.map(({ table }) => table.name), FITS.name];

/** Whether a sheet is called as one of the program's own, made beside one of the user's or not. */
export function isOwnSheet(name: string): boolean {
  const key = name.toLowerCase();
  const apart = inputSheets().map((sheet) => apartName(sheet.name));
  return [...OWN_NAMES, ...apart].some(
    (own) => key === own.toLowerCase() || key === `${own.toLowerCase()} (oilgap)`,
  );
}
