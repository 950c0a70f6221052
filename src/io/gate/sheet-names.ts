/** What a sheet of a workbook can be called. */
import { UserError } from '../../engine/user-error.js';

/** Throws a UserError where a spreadsheet program would not take the name. */
export function refuseSheetName(name: string, file: string): void {
  if (name === '' || name.length > 31 || /[*?:\\/[\]]|^'|'$/.test(name) || name.toLowerCase() === 'history') {
    throw new UserError(
      `${file}: "${name}" cannot be the name of a sheet. A name of 1 to 31 characters was expected, without * ? : \\ / [ ] not in apostrophes and not "History". Rename it and run again.`,
    );
  }
}
