/** Whether the sheets of a book are of a size that can be laid out for evaluation, and written. */
import { UserError } from '../../engine/user-error.js';
import { cellAddress, type SheetModel } from '../../engine/workbook-model.js';
import { LIMITS } from './limits.js';

/** Throws a UserError that names the sheet which reaches too far. */
export function refuseWideLayout(sheets: readonly SheetModel[], file: string): void {
  let cells = 0;
  for (const { name, rows } of sheets) {
    let width = 0;
    // Skips the holes, of which a sheet may have a million.
    rows.forEach((row) => {
      width = Math.max(width, row.length);
    });
    cells += rows.length * width;
    if (cells > LIMITS.layoutCells) {
      throw new UserError(
        `${file}: found that the sheet ${name} reaches to ${cellAddress(rows.length - 1, width - 1)}, which makes more than ${LIMITS.layoutCells} cells with the blank ones; ` +
          'expected tables near the top left corner; delete what stands far to the right or below them, and run again.',
      );
    }
  }
}

/** Throws a UserError that names the sheet of a stock which has more rows than a sheet can have. */
export function refuseLongSheets(sheets: readonly SheetModel[], file: string): void {
  for (const { name, rows } of sheets) {
    if (rows.length <= LIMITS.rows) continue;
    throw new UserError(
      `${file}: found ${rows.length} rows in the sheet ${name} of all books together; expected at most ${LIMITS.rows}, as many as a sheet has; ` +
        'match fewer books at once.',
    );
  }
}
