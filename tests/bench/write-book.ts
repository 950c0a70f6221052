/** Writes the sheets of a book to a file row by row, as a library that streams does. */
import ExcelJS from 'exceljs';
import type { DemoSheet } from '../../scripts/demo/demo-book.js';

export async function writeBook(sheets: readonly DemoSheet[], filename: string): Promise<void> {
  const workbook = new ExcelJS.stream.xlsx.WorkbookWriter({ filename, useSharedStrings: true });
  for (const { name, headers, rows } of sheets) {
    const worksheet = workbook.addWorksheet(name);
    worksheet.addRow([...headers]).commit();
    for (const row of rows) worksheet.addRow([...row]).commit();
    worksheet.commit();
  }
  await workbook.commit();
}
