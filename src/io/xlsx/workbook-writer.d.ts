/** The streaming writer alone, which the library's own types name only as part of the whole. */
declare module 'exceljs/lib/stream/xlsx/workbook-writer.js' {
  import type ExcelJS from 'exceljs';

  const WorkbookWriter: typeof ExcelJS.stream.xlsx.WorkbookWriter;
  type WorkbookWriter = ExcelJS.stream.xlsx.WorkbookWriter;
  export default WorkbookWriter;
}
