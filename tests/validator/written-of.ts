/** What `check` writes of a package. */
import { runBook } from '../../src/engine/run-book.js';
import { writtenWorkbook } from '../../src/engine/sheets/written-workbook.js';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../../src/io/xlsx/write-package.js';

/** @throws {UserError} where the package is refused */
export async function writtenOf(bytes: Uint8Array, file = 'book.xlsx'): Promise<Uint8Array> {
  const model = await readWorkbookPackage(bytes, file, { withMadeCells: false });
  const edit = writtenWorkbook(await runBook(model, { seconds: 1 }), { valuesOnly: false });
  return (await editWorkbookPackage(bytes, edit, file)).bytes;
}
