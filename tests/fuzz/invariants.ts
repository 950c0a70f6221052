/** What holds of every book, however damaged. */
import { readBook, runBook, withPlainNumbers } from '../../src/engine/run-book.js';
import { writtenWorkbook } from '../../src/engine/sheets/written-workbook.js';
import { UserError } from '../../src/engine/user-error.js';
import type { SheetModel, WorkbookModel } from '../../src/engine/workbook-model.js';
import { newWorkbookPackage } from '../../src/io/xlsx/new-package.js';
import { readWorkbookPackage } from '../../src/io/xlsx/read-package.js';
import { editWorkbookPackage } from '../../src/io/xlsx/write-package.js';
import { inUnit } from '../../src/maths/units.js';
import { examine } from '../corpus/examine.js';

export type Outcome = 'refused' | 'checked';

const SECONDS = 0.2;

/**
 * Reads, checks and writes a package. Throws an Error that says which invariant was broken: nothing but a UserError
 * that names the file; the bytes as they were; of the user's nothing lost; every number the core's.
 */
export async function holdPackage(bytes: Uint8Array, name = 'book.xlsx'): Promise<Outcome> {
  const before = Buffer.from(bytes);
  const outcome = await refusedOr(name, async () => {
    const { losses, after } = await examine(bytes, name, SECONDS);
    if (losses.length > 0) throw new Error(`lost: ${losses.join('; ')}`);
    await holdNumbers(await readWorkbookPackage(bytes, name), await readWorkbookPackage(after, name));
  });
  if (!before.equals(bytes)) throw new Error('the input was changed');
  return outcome;
}

/** The same of cells that came from elsewhere. */
export async function holdModel(open: () => WorkbookModel, name: string): Promise<Outcome> {
  return refusedOr(name, async () => {
    const model = open();
    const plain = withPlainNumbers(model, readBook(model).bareNumbers);
    const bytes = await newWorkbookPackage(plain);
    const read = { ...(await readWorkbookPackage(bytes, name)), file: name };
    const edit = writtenWorkbook(await runBook(read, { seconds: SECONDS }), { valuesOnly: false });
    const { bytes: after } = await editWorkbookPackage(bytes, edit, name);
    await holdNumbers(read, await readWorkbookPackage(after, name));
  });
}

async function refusedOr(name: string, run: () => Promise<void>): Promise<Outcome> {
  try {
    await run();
    return 'checked';
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    if (!error.message.startsWith(name)) throw new Error(`a refusal without its file: ${error.message}`);
    return 'refused';
  }
}

/** Numbers in the written cells, which HyperFormula computed, are the core's. */
async function holdNumbers(before: WorkbookModel, after: WorkbookModel): Promise<void> {
  const { parts, fits, book } = await runBook(before, { seconds: SECONDS });
  const unit = book.setup.lengthUnit;
  const hold = (sheet: SheetModel | undefined, row: number, header: string, grain: number | undefined) => {
    const column = sheet?.rows[0]?.findLastIndex((cell) => cell?.content?.value === header) ?? -1;
    if (!sheet || column < 0 || grain === undefined) return;
    const value = sheet.rows[row]?.[column]?.content?.value;
    if (value !== inUnit(grain, unit)) {
      throw new Error(
        `${sheet.name} row ${row + 1}, ${header}: written ${value}, the core has ${inUnit(grain, unit)}`,
      );
    }
  };
  const sheetOf = (name: string) => after.sheets.find((sheet) => sheet.name === name);
  const headerRow = (name: string) =>
    book.tables.get(name as 'Journals')?.sheet.rows.findIndex((row) => row) ?? 0;
  for (const { row, form } of parts.all()) {
    const sheet = sheetOf(book.tables.get(row.sheet)?.sheet.name ?? '');
    if (headerRow(row.sheet) !== 0) continue;
    hold(sheet, row.row, row.sheet === 'Shells' ? 'Wall' : 'Size', form?.size);
    hold(sheet, row.row, 'Largest', form?.largest);
    hold(sheet, row.row, 'Smallest', form?.smallest);
  }
  const fitsSheet = sheetOf(book.tables.get('Fits')?.sheet.name ?? 'Fits');
  if (book.tables.has('Fits') && headerRow('Fits') !== 0) return;
  for (const [i, { clearance, source }] of fits.entries()) {
    const row = source?.row ?? i + 1;
    hold(fitsSheet, row, 'Clearance', clearance?.clearance);
    hold(fitsSheet, row, 'Tightest', clearance?.tightest);
    hold(fitsSheet, row, 'Loosest', clearance?.loosest);
  }
}
