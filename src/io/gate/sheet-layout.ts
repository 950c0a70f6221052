/** Whether the sheets of a book are of a size that can be laid out for evaluation. */
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
