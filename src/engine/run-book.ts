/** From the cells of a workbook to everything that is computed of it. */
import { type Assessment, type AssessOptions, assessBook } from './assess/assess.js';
import type { Book } from './book/book.js';
import { findSheet } from './book/find-tables.js';
import { openBook } from './book/open-book.js';
import { readSetup } from './book/setup.js';
import type { BareNumber } from './book/table.js';
import { ownHeaders } from './columns/result-headers.js';
import { withFormulaValues } from './formula-values.js';
import type { WorkbookModel } from './workbook-model.js';

/**
 * Reads a workbook, its formulas evaluated where they have no value.
 * @throws UserError where the book cannot be read as measured parts.
 */
export function readBook(model: WorkbookModel): Book {
  const setup = readSetup(findSheet(model, 'Setup'), model.file);
  const { model: valued, notices } = withFormulaValues(model, setup);
  const book = openBook(valued, setup, ownHeaders);
  return { ...book, notices: [...book.notices, ...notices] };
}

export function runBook(model: WorkbookModel, options: AssessOptions): Promise<Assessment> {
  return assessBook(readBook(model), options);
}

/**
 * The same book with numbers for texts that are plain numbers, such as the decimal commas of a .csv
 * file, so that live formulas can work over them.
 */
export function withPlainNumbers(model: WorkbookModel, numbers: readonly BareNumber[]): WorkbookModel {
  const sheets = model.sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((cells) => cells && [...cells]),
  }));
  for (const { sheet, row, column, value } of numbers) {
    const cells = sheets.find(({ name }) => name === sheet)?.rows[row];
    if (cells) cells[column] = { content: { kind: 'number', value } };
  }
  return { ...model, sheets };
}
