/** Where two ways to a result disagree while a book is written, the file that was to be made is not there. */
import { access, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DisagreementError } from '../../src/engine/columns/agreement.js';
import { runBook } from '../../src/engine/run-book.js';
import { writtenWorkbook } from '../../src/engine/sheets/written-workbook.js';
import { openFile } from '../../src/io/open-file.js';
import { writeFileWhole } from '../../src/io/write-file.js';
import { editWorkbookPackage } from '../../src/io/xlsx/write-package.js';

test('a size that is one grain off stops the writing', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'oilgap-'));
  const target = join(folder, 'engine.checked.xlsx');
  try {
    const { model, bytes } = await openFile('workbooks/one-engine.xlsx');
    const assessment = await runBook(model, { seconds: 10 });
    const last = assessment.fits.at(-1)!;
    const wrong = { ...last, clearance: { ...last.clearance!, loosest: last.clearance!.loosest + 1 } };
    const fits = assessment.fits.with(-1, wrong);
    const write = async () => {
      const edit = writtenWorkbook({ ...assessment, fits }, { valuesOnly: false });
      const { pieces } = await editWorkbookPackage(bytes!, edit, model.file);
      await writeFileWhole(target, pieces);
    };
    await expect(write()).rejects.toThrow(DisagreementError);
    await expect(write()).rejects.toThrow(/sheet Fits, row \d+, Loosest: found .+ by the sheet engine/);
    await expect(access(target)).rejects.toThrow();
  } finally {
    await rm(folder, { recursive: true });
  }
});
