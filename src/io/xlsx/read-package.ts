/**
 * Reads an .xlsx workbook's cells straight from its parts. A general spreadsheet library is not used here: it
 * turns a number with a format such as `0.000\ \m\m` into a date and loses formula results of 0 and FALSE.
 */
import { forgetMadeCells, madeColumnsOf } from '../../engine/book/made-cells.js';
import { ownHeaders } from '../../engine/columns/result-headers.js';
import { isKnownSheet } from '../../engine/input-sheets/index.js';
import { UserError } from '../../engine/user-error.js';
import type { CellBlock, SheetModel, WorkbookModel } from '../../engine/workbook-model.js';
import { refuseWideLayout } from '../gate/sheet-layout.js';
import { listsOf } from './list-tables.js';
import { readDateStyles } from './read-date-styles.js';
import { readSheetRows } from './read-sheet.js';
import { readSharedStrings } from './read-strings.js';
import { SharedCells } from './shared-cells.js';
import { openWorkbook, partOfKind, type SheetEntry } from './workbook-package.js';

export interface ReadOptions {
  /**
   * Whether what an earlier run wrote is wanted, all of which is made anew: without it, formulas of the program's own
   * columns are left out, and their values where no formula of the user's could look at them.
   */
  readonly withMadeCells?: boolean;
}

/** What the kind of a relationship to a sheet is called. */
const OTHER_SHEETS: Readonly<Record<string, string>> = {
  chartsheet: 'a chart sheet',
  dialogsheet: 'a dialog sheet',
  xlMacrosheet: 'a sheet of macros',
  xlIntlMacrosheet: 'a sheet of macros',
};

/**
 * The cells of every worksheet, hidden ones included, in the order of the tabs; chart sheets are left out.
 *
 * Throws a UserError where the bytes are no .xlsx workbook or a damaged one; it says which, and what to do.
 */
export async function readWorkbookPackage(
  bytes: Uint8Array,
  file: string,
  { withMadeCells = true }: ReadOptions = {},
): Promise<WorkbookModel> {
  const { pkg, workbook, usesDate1904, sheets } = await openWorkbook(bytes, file);
  const context = {
    cells: new SharedCells(await readSharedStrings(pkg, await partOfKind(pkg, workbook, 'sharedStrings'))),
    dateStyles: await readDateStyles(pkg, await partOfKind(pkg, workbook, 'styles')),
    usesDate1904,
  };
  const models: SheetModel[] = [];
  for (const sheet of sheets) {
    const { name, part } = sheet;
    if (part === undefined) throw pkg.damaged(workbook, `the sheet ${name} leads to no part`);
    if (!sheet.isWorksheet) {
      refuseKnownName(sheet, file);
      continue;
    }
    try {
      const madeColumns = (rows: SheetModel['rows']) =>
        withMadeCells ? undefined : madeColumnsOf({ name, rows }, ownHeaders);
      const blocks: CellBlock[] = [];
      const onBlock = (block: CellBlock) => blocks.push(block);
      const rows = await readSheetRows(pkg.pieces(part), { ...context, madeColumns, onBlock });
      const lists = await listsOf(pkg, part);
      models.push({
        ...{ name, rows },
        ...(lists.length > 0 && { lists }),
        ...(blocks.length > 0 && { blocks }),
      });
    } catch (error) {
      if (error instanceof UserError) throw error;
      throw pkg.damaged(part, `which holds the sheet ${name}, ${(error as Error).message}`);
    }
  }
  if (models.length === 0) {
    throw new UserError(`${file}: the workbook has no worksheet. At least one sheet with a table is needed.`);
  }
  refuseWideLayout(models, file);
  if (!withMadeCells) forgetMadeCells(models, ownHeaders);
  return { file, sheets: models };
}

/** Its readings would be passed over: no cells are read of such a sheet. */
function refuseKnownName({ name, kind = '' }: SheetEntry, file: string): void {
  if (!isKnownSheet(name)) return;
  throw new UserError(
    `${file}: found that the sheet ${name} is ${OTHER_SHEETS[kind] ?? 'no worksheet'}; expected a worksheet of that name; rename the sheet, or delete it, and run again.`,
  );
}
