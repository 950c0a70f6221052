/** The names of the program's own sheets, and what becomes of them where the user has a sheet of that name. */
import { isMadeByProgram } from '../book/own-columns.js';
import type { WorkbookModel } from '../workbook-model.js';

const OWN_SHEETS = [
  'Summary',
  'Re-measure',
  'Matched sets',
  'Not matched',
  'Pick list',
  'To buy',
  'Left over',
  'Gauge study results',
];

/** Whether a sheet is called as one of the program's own, made beside one of the user's or not. */
export function isOwnSheet(name: string): boolean {
  return [...OWN_SHEETS, 'Fits'].some(
    (own) => name.toLowerCase().replace(' (oilgap)', '') === own.toLowerCase(),
  );
}

/** A sheet of that name that is not the program's stays the user's. */
export function freeName(name: string, { sheets }: WorkbookModel): string {
  const taken = sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  return taken && !isMadeByProgram(taken) ? `${name} (oilgap)` : name;
}
