/** The names of the program's own sheets, and what becomes of them where the user has a sheet of that name. */
import { apartName } from '../book/placement-words.js';
import { inputSheets } from '../input-sheets/index.js';

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
  const key = name.toLowerCase();
  const apart = inputSheets().map((sheet) => apartName(sheet.name));
  return [...OWN_SHEETS, 'Fits', ...apart].some(
    (own) => key === own.toLowerCase() || key === `${own.toLowerCase()} (oilgap)`,
  );
}
