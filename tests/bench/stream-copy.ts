/** Reads a book with a library's stream reader and writes the same cells with its stream writer: `stream-copy.js FROM TO`. */
import ExcelJS from 'exceljs';

const [from, to] = process.argv.slice(2);
const writer = new ExcelJS.stream.xlsx.WorkbookWriter({ filename: to!, useSharedStrings: true });
const reader = new ExcelJS.stream.xlsx.WorkbookReader(from!, {
  sharedStrings: 'cache',
  styles: 'cache',
  hyperlinks: 'ignore',
  worksheets: 'emit',
  entries: 'emit',
});
for await (const sheet of reader) {
  const copy = writer.addWorksheet((sheet as unknown as { name: string }).name);
  for await (const row of sheet) copy.addRow(row.values as ExcelJS.CellValue[]).commit();
  copy.commit();
}
await writer.commit();
